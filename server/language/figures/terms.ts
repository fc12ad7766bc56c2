import type { StatementKind } from '../../../grammar/index.js';

/**
 * What the fixed words of the language mean to a painter, where a word by itself does not say it. The same word may mean
 * another thing in another statement: `of` says in which.
 */
interface Term {
  readonly of?: readonly StatementKind[];
  readonly meaning: string;
}

const colourStatements: readonly StatementKind[] = ['colour definition', 'ground', 'budget'];
const ofBudget: readonly StatementKind[] = ['budget'];
const ofMeans: readonly StatementKind[] = ['win by'];

const terms: Readonly<Record<string, readonly Term[]>> = {
  dominant: [
    { of: colourStatements, meaning: 'The colour that is to hold most of the picture.' },
    { of: ['object'], meaning: 'The principal of the picture: nothing else is to outweigh it.' },
  ],
  complement: [{ meaning: 'The colour opposite the dominant on the wheel, in a smaller share.' }],
  discord: [
    { meaning: 'A colour about a quarter turn from the dominant, in the smallest share, as an accent.' },
  ],
  neutral: [{ meaning: 'A grey, or near it: it takes no side on the wheel.' }],
  secondary: [{ meaning: 'It supports the principal and stands back behind it.' }],
  minor: [{ meaning: 'It belongs to the picture and asks for no attention.' }],
  background: [{ meaning: 'The farthest of the three planes; the others cover it.' }],
  foreground: [{ meaning: 'The nearest of the three planes; it covers the others.' }],
  middle: [
    { of: ['plane'], meaning: 'The plane between background and foreground.' },
    { meaning: 'Half way down, or half way across.' },
  ],
  hard: [{ meaning: 'The border is cut sharp all along.' }],
  firm: [{ meaning: 'The border is plain without being cut.' }],
  soft: [{ meaning: 'The border goes over within a small breadth.' }],
  lost: [{ meaning: 'The border cannot be seen; the two run into each other.' }],
  value: [
    { of: ofBudget, meaning: 'How much of the picture each group of steps is to hold.' },
    { of: ofMeans, meaning: 'Light against dark.' },
  ],
  colour: [
    { of: ofBudget, meaning: 'How much of the picture the colours of each role are to hold.' },
    { of: ['layer'], meaning: 'Body colour: opaque paint, the main layer.' },
    { of: ofMeans, meaning: 'Hue and chroma against what lies around.' },
  ],
  edges: [{ of: ofMeans, meaning: 'Sharper borders than elsewhere.' }],
  detail: [
    { of: ['layer'], meaning: 'The last touches, over what has dried.' },
    { of: ofMeans, meaning: 'More drawing in it than elsewhere.' },
  ],
  scale: [{ of: ofMeans, meaning: 'Larger than what lies around, or smaller.' }],
  isolation: [{ of: ofMeans, meaning: 'Room around it, with nothing like it near.' }],
  imprimatura: [{ meaning: 'A thin first tone over the whole ground.' }],
  underpainting: [{ meaning: 'The picture laid in by tone, to be painted over.' }],
  'block-in': [{ meaning: 'The large flat areas, without detail.' }],
  body: [{ meaning: 'Body colour: opaque paint, the main layer.' }],
  scumble: [{ meaning: 'Thin opaque paint, lighter than what it is dragged over.' }],
  glaze: [{ meaning: 'Thin transparent paint, darker than what it lies on.' }],
  varnish: [{ meaning: 'The clear coat over the dry picture.' }],
  lean: [{ meaning: 'With little oil. Leaner layers go below fatter ones.' }],
  fat: [{ meaning: 'With more oil. Fatter layers go over leaner ones.' }],
  golden: [{ meaning: 'Lines at 0.618 of each side from each edge: the golden section.' }],
  thirds: [{ meaning: 'Lines at 1/3 and 2/3 of each side.' }],
  two: [{ meaning: 'Lines at 2/5 and 3/5 of each side.' }],
  three: [{ meaning: 'Lines at 2/5 and 3/5 of each side.' }],
  quarters: [{ meaning: 'Lines at 1/4, 1/2 and 3/4 of each side.' }],
  rabatment: [{ meaning: 'The short side laid along the long one from each end.' }],
  diagonals: [{ meaning: 'Both diagonals, and the perpendicular to them from each corner.' }],
  armature: [{ meaning: 'Diagonals of the canvas, of its halves and of its quarters: fourteen lines.' }],
  root: [
    { meaning: 'The lines of a root rectangle: its sides are as one to the square root of the number.' },
  ],
  own: [{ meaning: 'Lines that you give yourself, as uprights and levels.' }],
  painters: [
    { meaning: 'The painters’ wheel: yellow opposite violet, red opposite green, blue opposite orange.' },
  ],
  munsell: [{ meaning: 'Munsell’s hue circle: ten hues, evenly spaced to the eye.' }],
  lighten: [{ meaning: 'The farther a plane, the lighter.' }],
  darken: [{ meaning: 'The farther a plane, the darker.' }],
  distance: [{ meaning: 'From the foreground back.' }],
  wide: [{ meaning: 'The length is that of the width; the height keeps its proportion to it.' }],
  high: [{ meaning: 'The length is that of the height; the width keeps its proportion to it.' }],
  fine: [{ meaning: 'Drawn out in full.' }],
  some: [{ meaning: 'Drawn as far as it tells.' }],
  little: [{ meaning: 'Left as a plain area.' }],
  warm: [{ meaning: 'On the side of red and yellow among paints of its hue.' }],
  cool: [{ meaning: 'On the side of blue and green among paints of its hue.' }],
  upright: [{ meaning: 'The long side stands.' }],
  landscape: [{ meaning: 'The long side lies.' }],
  warning: [{ meaning: 'Breaking the rule is told as a warning.' }],
  hint: [{ meaning: 'Breaking the rule is told as a hint.' }],
  edge: [{ meaning: 'A side of the canvas or of an object; `at` says how far along it.' }],
  side: [{ meaning: 'A side of the canvas or of an object; `at` says how far along it.' }],
  corner: [{ meaning: 'A corner of the canvas itself, not a crossing of its division.' }],
  crossing: [{ meaning: 'Where lines of the division cross, counted from the left and from the top.' }],
  focus: [{ meaning: 'The focal point.' }],
  rectangle: [{ meaning: 'By two corners, or by its width and height.' }],
  ellipse: [{ meaning: 'By its width and height.' }],
  circle: [{ meaning: 'By how far it is across.' }],
  outline: [{ meaning: 'Straight from point to point, and back to the first.' }],
  smooth: [{ meaning: 'A curve through the points, and back to the first.' }],
  path: [{ meaning: 'An outline as SVG files have it, in canvas units.' }],
  through: [{ meaning: 'Places that the lead passes on its way.' }],
  along: [{ meaning: 'The lead runs along the edge of an object.' }],
  against: [{ meaning: 'Where it meets these objects alone.' }],
  every: [
    { of: ['grid'], meaning: 'How long each side of a square is.' },
    { meaning: 'How far across and down the next one stands.' },
  ],
  turning: [{ meaning: 'By how much each is turned from the one before.' }],
  resized: [{ meaning: 'The size of each as a part of the one before.' }],
  full: [{ meaning: 'The colour of the paint as it comes from the tube.' }],
  tint: [{ meaning: 'The colour of the paint let down with white, as so many parts to so many.' }],
  within: [{ meaning: 'By how much of the picture a share may miss what is wanted.' }],
  limit: [{ meaning: 'Where the rule begins to be broken, instead of where it usually does.' }],
  carried: [{ meaning: 'The objects that show it in the picture.' }],
  because: [{ meaning: 'The reason, which is kept beside what was found.' }],
  part: [{ meaning: 'The id of one shape or group in the file.' }],
  upper: [{ meaning: 'The one nearest to the top.' }],
  lower: [{ meaning: 'The one nearest to the bottom.' }],
  left: [{ meaning: 'On the left, or towards it.' }],
  right: [{ meaning: 'On the right, or towards it.' }],
  top: [{ meaning: 'At the top.' }],
  bottom: [{ meaning: 'At the bottom.' }],
  up: [{ meaning: 'Towards the top.' }],
  down: [{ meaning: 'Towards the bottom.' }],
  centre: [{ meaning: 'The middle.' }],
};

/** What a fixed word means in a statement; nothing for one that only holds the statement together. */
export function termMeaning(word: string, kind: StatementKind): string | undefined {
  const own = Object.hasOwn(terms, word) ? terms[word] : undefined;
  return own?.find(({ of }) => of === undefined || of.includes(kind))?.meaning;
}
