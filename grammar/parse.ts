import { readAgain, readDocument, type Reading } from './document.js';
import type { PlacedLine } from './lines.js';
import type { SyntaxTree } from './syntax.js';

/** A tree with what it was made from, which is no part of it: trees are plain and comparable data. */
class ReadTree implements SyntaxTree {
  readonly nodes: SyntaxTree['nodes'];
  readonly detached: SyntaxTree['detached'];
  readonly problems: SyntaxTree['problems'];
  readonly lostNames: SyntaxTree['lostNames'];
  readonly lostKinds: SyntaxTree['lostKinds'];
  readonly comments: SyntaxTree['comments'];
  readonly lineCount: number;
  readonly #reading: Reading;

  constructor(reading: Reading) {
    this.nodes = reading.nodes;
    this.detached = reading.detached;
    this.problems = reading.problems;
    this.lostNames = reading.losses.flatMap(({ name }) => name ?? []);
    this.lostKinds = new Set(reading.losses.flatMap(({ kind }) => kind ?? []));
    this.comments = reading.comments;
    this.lineCount = reading.lines.length;
    this.#reading = reading;
  }

  /** What a tree was made from; nothing for one that is not of this class. */
  static readingOf(tree: SyntaxTree): Reading | undefined {
    return #reading in tree ? tree.#reading : undefined;
  }
}

/** A plan with the statements that plans are full of. */
const USUAL = `plan    "A street"
concept "Everything leans towards one window."
mood    quiet
cue     "bread" carried by tower, wall
avoid   "a postcard"
canvas  80 x 60 cm
  support linen
  ground  #8a7a66, complement
  medium  oil
divide  golden
focus   upper right
  win by  value, edges
scale   5
  group   dark 1-2, middle 3, light 4-5
  planes  lighten with distance
budget  value dark 30%, middle 45%, light 25% within 8%
budget  colour dominant 60%, complement 28%, discord 12% within 8%
colour  slate #44525e dominant
colour  mist #9fb0bb complement  // from afar
colour  straw #d9b46a
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
object  tree
  shape   rectangle 3 x 4 at focus
  colour  mist
  edges   lost against moon
lead    lane from lower left corner through (24, 48) to focus
lead    wire along moon from top edge at 12% to tower
path    tower, moon
allow   even count because "They are twins."
// The end.
`;

/**
 * The tree of the usual plan, which stays: whatever is compiled for objects of a kind is thrown away when memory is
 * collected while there is none of that kind, as between two edits.
 */
let usual: ReadTree | undefined;

/** The tree of a plan with the statements that plans are full of; always the same. */
export function usualTree(): SyntaxTree {
  return (usual ??= new ReadTree(readDocument(USUAL)));
}

/**
 * Reads a plan. Any text has a tree; what could not be read is in its `problems`.
 *
 * With the tree of an earlier state of the text, lines that did not change are not read again, and the statements of
 * those that are read as one kind of statement only are the same objects as before, and so are nodes at the left
 * margin that stand on the same lines with the same lines under them. The result is the same as without.
 */
export function parse(text: string, previous?: SyntaxTree): SyntaxTree {
  usualTree();
  const before = previous && ReadTree.readingOf(previous);
  return new ReadTree(before ? readAgain(text, before) : readDocument(text));
}

/** The lines a tree was made from. Only trees that `parse` gave have them. */
export function linesOf(tree: SyntaxTree): readonly PlacedLine[] {
  const reading = ReadTree.readingOf(tree);
  if (reading === undefined) throw new Error('this tree was not made by parse');
  return reading.lines;
}
