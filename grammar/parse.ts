import { DocumentReader, sourceLines } from './document.js';
import type { SourceLine } from './lines.js';
import type { SyntaxTree } from './syntax.js';

/** The lines each tree was made from. Held beside the tree, so that trees stay plain and comparable data. */
const linesOfTree = new WeakMap<SyntaxTree, ReadonlyMap<string, SourceLine>>();

/**
 * Reads a plan. Any text has a tree; what could not be read is in its `problems`.
 *
 * With the tree of an earlier state of the text, lines that did not change are not read again, and their
 * statements are the same objects as before. The result is the same as without.
 */
export function parse(text: string, previous?: SyntaxTree): SyntaxTree {
  const sources = sourceLines(text, previous && linesOfTree.get(previous));
  const { tree } = new DocumentReader(sources);
  linesOfTree.set(tree, new Map(sources.map((source) => [source.text, source])));
  return tree;
}
