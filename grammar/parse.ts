import { DocumentReader, type PlacedLine } from './document.js';
import type { SourceLine } from './lines.js';
import type { SyntaxTree } from './syntax.js';

interface Made {
  readonly known: ReadonlyMap<string, SourceLine>;
  readonly lines: readonly PlacedLine[];
}

/** What each tree was made from. Held beside the tree, so that trees stay plain and comparable data. */
const makings = new WeakMap<SyntaxTree, Made>();

/**
 * Reads a plan. Any text has a tree; what could not be read is in its `problems`.
 *
 * With the tree of an earlier state of the text, lines that did not change are not read again, and their
 * statements are the same objects as before. The result is the same as without.
 */
export function parse(text: string, previous?: SyntaxTree): SyntaxTree {
  const { tree, lines, known } = new DocumentReader(text, previous && makings.get(previous)?.known);
  makings.set(tree, { known, lines });
  return tree;
}

/** The lines a tree was made from. Only trees that `parse` gave have them. */
export function linesOf(tree: SyntaxTree): readonly PlacedLine[] {
  const making = makings.get(tree);
  if (making === undefined) throw new Error('this tree was not made by parse');
  return making.lines;
}
