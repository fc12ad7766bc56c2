import type { Node, Sentence, Statement } from '../../grammar/index.js';
import type { ObjectIndex } from './objects.js';
import type { FileReference } from './plan.js';
import { locate } from './problems.js';

/** The file that a statement names, and what it is. */
export function fileNamedBy(
  statement: Statement,
): { readonly kind: FileReference['kind']; readonly file: Sentence } | undefined {
  switch (statement.kind) {
    case 'based on':
      return { kind: 'plan', file: statement.file };
    case 'photo':
      return { kind: 'photograph', file: statement.file };
    case 'sketch':
      return { kind: 'sketch', file: statement.file };
    case 'shape':
      return statement.shape.form === 'file' ? { kind: 'drawing', file: statement.shape.file } : undefined;
    default:
      return undefined;
  }
}

/** Every file that statements name, in the order of the text; `objects` are those among them. */
export function filesNamed(nodes: readonly Node[], objects: ObjectIndex): readonly FileReference[] {
  const files: FileReference[] = [];
  let next = 0;
  for (const node of nodes) {
    const isNext = objects.nodes[next] === node;
    if (!isNext || !objects.isKnownWithoutFile(next)) gather(node, files);
    if (isNext) next++;
  }
  return files;
}

function gather(node: Node, files: FileReference[]): void {
  const named = fileNamedBy(node.statement);
  if (named) files.push({ path: named.file.value, kind: named.kind, location: locate(node, named.file) });
  for (const child of node.children) gather(child, files);
}
