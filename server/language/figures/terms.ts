import { marked, said, type StatementKind } from '../../../grammar/index.js';

/**
 * What the fixed words of the language mean to a painter, where a word by itself does not say it. The same word may
 * mean another thing in another statement: `of` says in which.
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
    { of: colourStatements, meaning: marked('The colour that is to hold most of the picture.') },
    { of: ['object'], meaning: marked('The principal of the picture: nothing else is to outweigh it.') },
  ],
  complement: [{ meaning: marked('The colour opposite the dominant on the wheel, in a smaller share.') }],
  discord: [
    {
      meaning: marked(
        'A colour about a quarter turn from the dominant, in the smallest share, as an accent.',
      ),
    },
  ],
  neutral: [{ meaning: marked('A grey, or near it: it takes no side on the wheel.') }],
  secondary: [{ meaning: marked('It supports the principal and stands back behind it.') }],
  minor: [{ meaning: marked('It belongs to the picture and asks for no attention.') }],
  background: [{ meaning: marked('The farthest of the three planes; the others cover it.') }],
  foreground: [{ meaning: marked('The nearest of the three planes; it covers the others.') }],
  middle: [
    { of: ['plane'], meaning: marked('The plane between background and foreground.') },
    { meaning: marked('Half way down, or half way across.') },
  ],
  hard: [{ meaning: marked('The border is cut sharp all along.') }],
  firm: [{ meaning: marked('The border is plain without being cut.') }],
  soft: [{ meaning: marked('The border goes over within a small breadth.') }],
  lost: [{ meaning: marked('The border cannot be seen; the two run into each other.') }],
  value: [
    { of: ofBudget, meaning: marked('How much of the picture each group of steps is to hold.') },
    { of: ofMeans, meaning: marked('Light against dark.') },
  ],
  colour: [
    { of: ofBudget, meaning: marked('How much of the picture the colours of each role are to hold.') },
    { of: ['layer'], meaning: marked('Body colour: opaque paint, the main layer.') },
    { of: ofMeans, meaning: marked('Hue and chroma against what lies around.') },
  ],
  edges: [{ of: ofMeans, meaning: marked('Sharper borders than elsewhere.') }],
  detail: [
    { of: ['layer'], meaning: marked('The last touches, over what has dried.') },
    { of: ofMeans, meaning: marked('More drawing in it than elsewhere.') },
  ],
  scale: [{ of: ofMeans, meaning: marked('Larger than what lies around, or smaller.') }],
  isolation: [{ of: ofMeans, meaning: marked('Room around it, with nothing like it near.') }],
  imprimatura: [{ meaning: marked('A thin first tone over the whole ground.') }],
  underpainting: [{ meaning: marked('The picture laid in by tone, to be painted over.') }],
  'block-in': [{ meaning: marked('The large flat areas, without detail.') }],
  body: [{ meaning: marked('Body colour: opaque paint, the main layer.') }],
  scumble: [{ meaning: marked('Thin opaque paint, lighter than what it is dragged over.') }],
  glaze: [{ meaning: marked('Thin transparent paint, darker than what it lies on.') }],
  varnish: [{ meaning: marked('The clear coat over the dry picture.') }],
  lean: [{ meaning: marked('With little oil. Leaner layers go below fatter ones.') }],
  fat: [{ meaning: marked('With more oil. Fatter layers go over leaner ones.') }],
  golden: [{ meaning: marked('Lines at 0.618 of each side from each edge: the golden section.') }],
  thirds: [{ meaning: marked('Lines at 1/3 and 2/3 of each side.') }],
  two: [{ meaning: marked('Lines at 2/5 and 3/5 of each side.') }],
  three: [{ meaning: marked('Lines at 2/5 and 3/5 of each side.') }],
  quarters: [{ meaning: marked('Lines at 1/4, 1/2 and 3/4 of each side.') }],
  rabatment: [{ meaning: marked('The short side laid along the long one from each end.') }],
  diagonals: [{ meaning: marked('Both diagonals, and the perpendicular to them from each corner.') }],
  armature: [
    { meaning: marked('Diagonals of the canvas, of its halves and of its quarters: fourteen lines.') },
  ],
  root: [
    {
      meaning: marked(
        'The lines of a root rectangle: its sides are as one to the square root of the number.',
      ),
    },
  ],
  own: [{ meaning: marked('Lines that you give yourself, as uprights and levels.') }],
  painters: [
    {
      meaning: marked(
        'The painters’ wheel: yellow opposite violet, red opposite green, blue opposite orange.',
      ),
    },
  ],
  munsell: [{ meaning: marked('Munsell’s hue circle: ten hues, evenly spaced to the eye.') }],
  lighten: [{ meaning: marked('The farther a plane, the lighter.') }],
  darken: [{ meaning: marked('The farther a plane, the darker.') }],
  distance: [{ meaning: marked('From the foreground back.') }],
  wide: [{ meaning: marked('The length is that of the width; the height keeps its proportion to it.') }],
  high: [{ meaning: marked('The length is that of the height; the width keeps its proportion to it.') }],
  fine: [{ meaning: marked('Drawn out in full.') }],
  some: [{ meaning: marked('Drawn as far as it tells.') }],
  little: [{ meaning: marked('Left as a plain area.') }],
  warm: [{ meaning: marked('On the side of red and yellow among paints of its hue.') }],
  cool: [{ meaning: marked('On the side of blue and green among paints of its hue.') }],
  upright: [{ meaning: marked('The long side stands.') }],
  landscape: [{ meaning: marked('The long side lies.') }],
  warning: [{ meaning: marked('Breaking the rule is told as a warning.') }],
  hint: [{ meaning: marked('Breaking the rule is told as a hint.') }],
  edge: [{ meaning: marked('A side of the canvas or of an object; `at` says how far along it.') }],
  side: [{ meaning: marked('A side of the canvas or of an object; `at` says how far along it.') }],
  corner: [{ meaning: marked('A corner of the canvas itself, not a crossing of its division.') }],
  crossing: [
    { meaning: marked('Where lines of the division cross, counted from the left and from the top.') },
  ],
  focus: [{ meaning: marked('The focal point.') }],
  rectangle: [{ meaning: marked('By two corners, or by its width and height.') }],
  ellipse: [{ meaning: marked('By its width and height.') }],
  circle: [{ meaning: marked('By how far it is across.') }],
  outline: [{ meaning: marked('Straight from point to point, and back to the first.') }],
  smooth: [{ meaning: marked('A curve through the points, and back to the first.') }],
  path: [{ meaning: marked('An outline as SVG files have it, in canvas units.') }],
  through: [{ meaning: marked('Places that the lead passes on its way.') }],
  along: [{ meaning: marked('The lead runs along the edge of an object.') }],
  against: [{ meaning: marked('Where it meets these objects alone.') }],
  every: [
    { of: ['grid'], meaning: marked('How long each side of a square is.') },
    { meaning: marked('How far across and down the next one stands.') },
  ],
  turning: [{ meaning: marked('By how much each is turned from the one before.') }],
  resized: [{ meaning: marked('The size of each as a part of the one before.') }],
  full: [{ meaning: marked('The colour of the paint as it comes from the tube.') }],
  tint: [{ meaning: marked('The colour of the paint let down with white, as so many parts to so many.') }],
  within: [{ meaning: marked('By how much of the picture a share may miss what is wanted.') }],
  limit: [{ meaning: marked('Where the rule begins to be broken, instead of where it usually does.') }],
  carried: [{ meaning: marked('The objects that show it in the picture.') }],
  because: [{ meaning: marked('The reason, which is kept beside what was found.') }],
  part: [{ meaning: marked('The id of one shape or group in the file.') }],
  upper: [{ meaning: marked('The one nearest to the top.') }],
  lower: [{ meaning: marked('The one nearest to the bottom.') }],
  left: [{ meaning: marked('On the left, or towards it.') }],
  right: [{ meaning: marked('On the right, or towards it.') }],
  top: [{ meaning: marked('At the top.') }],
  bottom: [{ meaning: marked('At the bottom.') }],
  up: [{ meaning: marked('Towards the top.') }],
  down: [{ meaning: marked('Towards the bottom.') }],
  centre: [{ meaning: marked('The middle.') }],
};

/** What a fixed word means in a statement; nothing for one that only holds the statement together. */
export function termMeaning(word: string, kind: StatementKind): string | undefined {
  const own = Object.hasOwn(terms, word) ? terms[word] : undefined;
  const meaning = own?.find(({ of }) => of === undefined || of.includes(kind))?.meaning;
  return meaning === undefined ? undefined : said(meaning);
}
