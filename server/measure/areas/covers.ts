import { type Piece, mostShared, plainlyCovers } from '../../plan/geometry/piece.js';
import { boxesOverlap } from '../../plan/geometry/point.js';
import { type Way, sharedArea } from '../../plan/geometry/subtract.js';
import { inSteps } from './place-order.js';

/** A layer in front, by its index among the layers, and what it covers; squares of the grid. */
export interface Cover {
  readonly index: number;
  readonly area: number;
}

const MOST_NAMED = 3;
/** So many cuts are made to find those that cover most; further ones hardly change the answer. */
const MOST_TRIED = 12;

/**
 * All pieces in front of the one at `index` that share some area with it, the most covering first; none that cross
 * it too often to be cut. Should they not fit the area `hidden` of it within `slack`, all are cut again with a second
 * opinion.
 */
export function allCovers(
  pieces: readonly Piece[],
  index: number,
  { hidden, slack }: { readonly hidden: number; readonly slack: number },
  way: Way,
): readonly Cover[] {
  const covers = coversFound(pieces, index, way);
  const most = covers.reduce((total, { area }) => total + area, 0);
  const fits = hidden <= most + slack && hidden >= (covers[0]?.area ?? 0) - slack;
  return fits || way.careful ? covers : coversFound(pieces, index, { ...way, careful: true });
}

function coversFound(pieces: readonly Piece[], index: number, way: Way): readonly Cover[] {
  const piece = pieces[index];
  if (!piece) return [];
  const covers: Cover[] = [];
  for (let other = index + 1; other < pieces.length; other++) {
    const cover = pieces[other];
    const area = cover ? sharedArea(piece, cover, way) : 0;
    if (area > 0) covers.push({ index: other, area });
  }
  return covers.sort(mostFirst(piece));
}

/**
 * Up to three pieces in front of the one at `index` that cover most of it, the most covering first. Among many that
 * cover about as much as each other, one that covers a little more may be passed over.
 */
export function firstCovers(pieces: readonly Piece[], index: number, way: Way): readonly Cover[] {
  const piece = pieces[index];
  if (!piece || piece.area === 0) return [];
  const others: { readonly other: number; readonly cover: Piece; readonly most: number }[] = [];
  const whole: Cover[] = [];
  for (let other = index + 1; other < pieces.length && whole.length < MOST_NAMED; other++) {
    const cover = pieces[other];
    if (!cover || cover.area === 0 || !boxesOverlap(cover.box, piece.box)) continue;
    if (plainlyCovers(cover, piece)) whole.push({ index: other, area: piece.area });
    else others.push({ other, cover, most: mostShared(piece, cover) });
  }
  if (whole.length === MOST_NAMED) return whole;
  others.sort((a, b) => b.most - a.most);
  let first: readonly Cover[] = whole;
  for (const { other, cover, most } of others.slice(0, MOST_TRIED)) {
    if (most <= (first[MOST_NAMED - 1]?.area ?? 0)) break;
    const area = sharedArea(piece, cover, way);
    if (area > 0) first = [...first, { index: other, area }].sort(mostFirst(piece)).slice(0, MOST_NAMED);
  }
  return first;
}

function mostFirst({ area }: Piece): (a: Cover, b: Cover) => number {
  return (a, b) => inSteps(b.area, area) - inSteps(a.area, area) || a.index - b.index;
}
