import { GROUND } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import { Groups } from '../../plan/geometry/groups.js';
import type { Tone, TonePiece } from '../../measure/notan/notan.js';
import { wholeOf } from '../../measure/areas/parts.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { type Box, boxRound, distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** Part of the picture under which a piece is a touch of the brush, which nobody sees from afar. */
const TOUCH = 0.001;
/** Part of the diagonal within which two pieces read as one place. */
const TOGETHER = 0.1;
/** Part of the diagonal by which the place that stands for a piece may lie beside the box round its objects. */
const BESIDE_ITS_BOX = 0.02;

/** What reads as one spot: pieces of one object, or pieces close to each other. */
export interface Spot {
  /** Largest first. */
  readonly pieces: readonly TonePiece[];
  /** The objects they are seen in, or `GROUND`; the one of the largest piece first. */
  readonly areas: readonly number[];
  /** Part of the picture, all pieces together. */
  readonly share: number;
}

/**
 * The spots of a tone, largest first: pieces smaller than `limit` of the picture and larger than a touch. What an
 * object shows of itself in several places is one decision, as a row of posts is; glimpses of what forms a larger
 * piece elsewhere are none; and what belongs to a principal object is not scattered but drawn.
 */
export function spotsOf(plan: Plan, measures: Measures, { pieces }: Tone, limit: number): readonly Spot[] {
  const drawn = new Set(
    plan.objects.flatMap(({ role, index }) =>
      role === 'dominant' || role === 'secondary' ? wholeOf(measures.parts, index) : [],
    ),
  );
  const massed = new Set(pieces.filter(({ share }) => !exceeds(limit, share)).flatMap(({ areas }) => areas));
  const small = pieces.filter(
    ({ share, areas: [area = GROUND] }) =>
      exceeds(limit, share) && share >= TOUCH && !massed.has(area) && !drawn.has(area),
  );
  const groups = new Groups(small.length);
  joinByArea(groups, small);
  joinNear(groups, plan, small);
  const spots = new Map<number, TonePiece[]>();
  small.forEach((piece, one) => {
    const first = groups.firstOf(one);
    spots.set(first, [...(spots.get(first) ?? []), piece]);
  });
  return [...spots.values()]
    .map((own) => ({
      pieces: own,
      areas: [...new Set(own.flatMap(({ areas }) => areas.slice(0, 1)))],
      share: own.reduce((sum, { share }) => sum + share, 0),
    }))
    .sort((a, b) => inBillionths(b.share) - inBillionths(a.share));
}

/** Pieces of which most lies on the same area are joined. */
function joinByArea(groups: Groups, pieces: readonly TonePiece[]): void {
  const firsts = new Map<number | undefined, number>();
  pieces.forEach(({ areas: [area] }, index) => {
    const first = firsts.get(area);
    if (first === undefined) firsts.set(area, index);
    else groups.join(first, index);
  });
}

/** Pieces close to each other are joined, looked through from left to right. */
function joinNear(groups: Groups, plan: Plan, pieces: readonly TonePiece[]): void {
  const together = TOGETHER * plan.canvas.diagonal;
  const far = together + BESIDE_ITS_BOX * plan.canvas.diagonal;
  const placed = pieces
    .map((piece, index) => ({ piece, index, box: boxRoundPiece(plan, piece) }))
    .sort((one, other) => one.box.left - other.box.left);
  placed.forEach(({ piece, index, box }, place) => {
    for (let next = place + 1; next < placed.length; next++) {
      const other = placed[next] as (typeof placed)[number];
      if (other.box.left >= box.right + far) break;
      if (other.box.top >= box.bottom + far || other.box.bottom <= box.top - far) continue;
      if (groups.firstOf(index) === groups.firstOf(other.index)) continue;
      // A place in a piece is only looked for where it may be close: that takes long.
      if (distance(piece.at, other.piece.at) <= together) groups.join(index, other.index);
    }
  });
}

/** A box that holds all of a piece. */
function boxRoundPiece({ canvas, objects }: Plan, { areas }: TonePiece): Box {
  const all = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  return areas.map((area) => objects[area]?.outline.box ?? all).reduce(boxRound, undefined) ?? all;
}
