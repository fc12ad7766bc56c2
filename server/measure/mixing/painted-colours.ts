import type { Colour } from '../../plan/colour/model.js';
import type { Plan } from '../../plan/plan.js';

/** A colour of the picture as it will be painted, and where. */
export interface PaintedColour {
  readonly colour: Colour;
  /** Indices into `plan.objects`, the largest first. */
  readonly objects: readonly number[];
  readonly isGround: boolean;
  /** Some object has a colour that comes to it, or the ground; else it is the grey of those that have a value only. */
  readonly isStated: boolean;
  /** Part of the picture that shows it. */
  readonly share: number;
}

/**
 * Every distinct colour of the picture, the largest share first; the ground's too where the plan tones it.
 *
 * @param shares visible shares in the order of `plan.objects`
 */
export function paintedColours(
  plan: Plan,
  shares: readonly number[],
  bareShare: number,
): readonly PaintedColour[] {
  const byColour = new Map<string, Gathered>();
  const add = (colour: Colour) => {
    const key = colour.lab.join(' ');
    const known = byColour.get(key) ?? { colour, objects: [], isGround: false, isStated: false, share: 0 };
    byColour.set(key, known);
    return known;
  };
  plan.objects.forEach(({ painted, colour }, object) => {
    if (!painted) return;
    const known = add(painted);
    known.objects.push(object);
    known.isStated ||= colour !== undefined;
    known.share += shares[object] ?? 0;
  });
  if (plan.canvas.ground.location) {
    const known = add(plan.canvas.ground.colour);
    known.isGround = true;
    known.isStated = true;
    known.share += bareShare;
  }
  const all = [...byColour.values()];
  for (const { objects } of all) {
    objects.sort((one, other) => (shares[other] ?? 0) - (shares[one] ?? 0));
  }
  return all.sort(
    (one, other) => other.share - one.share || one.colour.lab[0] - other.colour.lab[0] || compare(one, other),
  );
}

interface Gathered {
  readonly colour: Colour;
  readonly objects: number[];
  isGround: boolean;
  isStated: boolean;
  share: number;
}

/** Colours of one share and lightness, in an order that does not depend on that of the text. */
function compare({ colour: { lab: one } }: PaintedColour, { colour: { lab: other } }: PaintedColour): number {
  return one[1] - other[1] || one[2] - other[2];
}
