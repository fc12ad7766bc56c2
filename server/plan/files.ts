import type { Node, Sentence, Statement } from '../../grammar/index.js';
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

/** Every file that statements name, in the order of the text. */
export function filesNamed(nodes: readonly Node[]): readonly FileReference[] {
  const files: FileReference[] = [];
  gather(nodes, files);
  return files;
}

function gather(nodes: readonly Node[], files: FileReference[]): void {
  for (const node of nodes) {
    const named = fileNamedBy(node.statement);
    if (named) files.push({ path: named.file.value, kind: named.kind, location: locate(node, named.file) });
    if (node.children.length > 0) gather(node.children, files);
  }
}
