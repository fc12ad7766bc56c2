import { GROUND } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import { Groups } from '../../measure/notan/runs.js';
import type { Tone, TonePiece } from '../../measure/notan/notan.js';
import { wholeOf } from '../../measure/areas/parts.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** Part of the picture under which a piece is a touch of the brush, which nobody sees from afar. */
const TOUCH = 0.001;
/** Part of the diagonal within which two pieces read as one place. */
const TOGETHER = 0.1;

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
  small.forEach((piece, one) => {
    for (let other = 0; other < one; other++) {
      const before = small[other];
      if (!before) continue;
      const close = distance(piece.at, before.at) <= TOGETHER * plan.canvas.diagonal;
      if (close || piece.areas[0] === before.areas[0]) groups.join(one, other);
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
