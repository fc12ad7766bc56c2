import { GROUND } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import { Groups } from '../../plan/geometry/groups.js';
import type { Tone, TonePiece } from '../../measure/notan/notan.js';
import { wholeOf } from '../../measure/areas/parts.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { type Box, boxRound, boxesOverlap, distance } from '../../plan/geometry/point.js';
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
  const together = TOGETHER * plan.canvas.diagonal;
  const boxes = small.map((piece) => boxRoundPiece(plan, piece));
  small.forEach((piece, one) => {
    const near = reachOf(boxes[one], together + BESIDE_ITS_BOX * plan.canvas.diagonal);
    for (let other = 0; other < one; other++) {
      const before = small[other];
      const box = boxes[other];
      if (!before || !box || groups.firstOf(one) === groups.firstOf(other)) continue;
      if (piece.areas[0] === before.areas[0]) groups.join(one, other);
      // A place in a piece is only looked for where it may be close: that takes long.
      else if (near && boxesOverlap(near, box) && distance(piece.at, before.at) <= together)
        groups.join(one, other);
    }
  });
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

/** A box that holds all of a piece. */
function boxRoundPiece({ canvas, objects }: Plan, { areas }: TonePiece): Box {
  const all = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  return areas.map((area) => objects[area]?.outline.box ?? all).reduce(boxRound, undefined) ?? all;
}

function reachOf(box: Box | undefined, far: number): Box | undefined {
  return (
    box && { left: box.left - far, top: box.top - far, right: box.right + far, bottom: box.bottom + far }
  );
}
