import { walk } from '../../grammar/index.js';
import { fileNamedBy } from '../plan/files.js';
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
    const named = fileNamedBy(node.statement);
    if (named === undefined) return;
    const { line } = node;
    const { kind, file } = named;
    const location = { line, ...withinQuotes(lines[line] ?? '', file) };
    found.push({ path: file.value, kind, location });
  });
  return found;
}
