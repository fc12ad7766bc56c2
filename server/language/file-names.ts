import { walk, type Node, type Sentence } from '../../grammar/index.js';
import type { FileReference, OwnLocation } from '../plan/plan.js';
import type { KnownPlan } from './library.js';
import { withinQuotes } from './quotes.js';

/** A file that a plan names. */
export interface NamedFile {
  readonly path: string;
  readonly kind: FileReference['kind'];
  /** Of the path, without its quotes. */
  readonly location: OwnLocation;
}

/** Every file that a plan names, in the order of the text. */
export function filesNamedIn({
  tree: { nodes, detached },
  lines,
}: Pick<KnownPlan, 'tree' | 'lines'>): readonly NamedFile[] {
  const found: NamedFile[] = [];
  walk([...nodes, ...detached], (node) => {
    const named = fileOf(node);
    if (named === undefined) return;
    const { line } = node;
    const { kind, sentence } = named;
    const location = { line, ...withinQuotes(lines[line] ?? '', sentence) };
    found.push({ path: sentence.value, kind, location });
  });
  return found;
}

function fileOf({
  statement,
}: Node): { readonly kind: FileReference['kind']; readonly sentence: Sentence } | undefined {
  switch (statement.kind) {
    case 'based on':
      return { kind: 'plan', sentence: statement.file };
    case 'photo':
      return { kind: 'photograph', sentence: statement.file };
    case 'sketch':
      return { kind: 'sketch', sentence: statement.file };
    case 'shape':
      return statement.shape.form === 'file'
        ? { kind: 'drawing', sentence: statement.shape.file }
        : undefined;
    default:
      return undefined;
  }
}
