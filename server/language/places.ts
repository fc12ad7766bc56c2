import type { Node, SyntaxTree } from '../../grammar/index.js';

/** The node whose statement stands on the line. */
export function nodeAt({ nodes }: SyntaxTree, line: number): Node | undefined {
  return pathTo(nodes, line).findLast((node) => node.line === line);
}

/** The nodes whose block holds the line, outermost first. */
export function pathTo(nodes: readonly Node[], line: number): readonly Node[] {
  const path: Node[] = [];
  let level = nodes;
  for (;;) {
    const node = level.findLast((candidate) => candidate.line <= line);
    if (node === undefined || node.lastLine < line) return path;
    path.push(node);
    level = node.children;
  }
}
