import { DocumentReader, type PlacedLine } from './document.js';
import type { SourceLine } from './lines.js';
import type { SyntaxTree } from './syntax.js';

interface Made {
  readonly known: ReadonlyMap<string, SourceLine>;
  readonly lines: readonly PlacedLine[];
}

/** What each tree was made from. Held beside the tree, so that trees stay plain and comparable data. */
const makings = new WeakMap<SyntaxTree, Made>();

/** A plan with the statements that plans are full of. */
const USUAL = `canvas  80 x 60 cm
  support linen
  ground  #8a7a66
  medium  oil
focus   upper right
scale   5
  group   dark 1-2, middle 3, light 4-5
  planes  lighten with distance
colour  slate #44525e dominant
object  tower, dominant
  plane   background
  shape   smooth (1, 2) (3, -4) (5, 10%)
  colour  slate
  value   2.5
  edges   soft
object  wall
  shape   outline (1, 2) (3, 4)
    (5, 6)
  colour  slate
  value   2
  detail  fine
  note    "Wet into wet."
object  sky
  shape   rectangle (0, 0) to (3, 4)
  colour  #44525e
object  roof
  shape   rectangle 3 x 4 at (5, 6)
  value   3
object  moon
  shape   ellipse 3 x 4 at (5, 6)
// The end.
`;

/**
 * The reading of the usual plan, which stays: whatever is compiled for objects of a kind is thrown away when memory is
 * collected while there is none of that kind, as between two edits.
 */
let usual: DocumentReader | undefined;

/** The tree of a plan with the statements that plans are full of; always the same. */
export function usualTree(): SyntaxTree {
  return (usual ??= new DocumentReader(USUAL)).tree;
}

/**
 * Reads a plan. Any text has a tree; what could not be read is in its `problems`.
 *
 * With the tree of an earlier state of the text, lines that did not change are not read again, and the statements of
 * those that are read as one kind of statement only are the same objects as before, and so are nodes at the left
 * margin that stand on the same lines with the same lines under them. The result is the same as without.
 */
export function parse(text: string, previous?: SyntaxTree): SyntaxTree {
  usual ??= new DocumentReader(USUAL);
  const { tree, lines, known } = new DocumentReader(
    text,
    previous && makings.get(previous)?.known,
    previous?.nodes,
  );
  makings.set(tree, { known, lines });
  return tree;
}

/** The lines a tree was made from. Only trees that `parse` gave have them. */
export function linesOf(tree: SyntaxTree): readonly PlacedLine[] {
  const making = makings.get(tree);
  if (making === undefined) throw new Error('this tree was not made by parse');
  return making.lines;
}
