import type { ObjectShare } from '../../measure/objects/objects.js';
import type { Plan } from '../../plan/plan.js';
import { hexOf } from '../picture/ink.js';
import type { Hex } from '../scene.js';
import { paintOf } from '../views/reading.js';

export interface Tone {
  readonly hex: Hex;
  /** Part of the picture. */
  readonly share: number;
}

/** What objects are painted in; see `addedUp`. */
export function tonesOf(objects: readonly ObjectShare[], plan: Plan): readonly Tone[] {
  return addedUp(
    objects.flatMap(({ object, share }): Tone[] => {
      const painted = plan.objects[object];
      return painted === undefined ? [] : [{ hex: hexOf(paintOf(painted, plan)), share }];
    }),
  );
}

/** Each tone once, with all that is seen of it, largest first. */
export function addedUp(tones: readonly Tone[]): readonly Tone[] {
  const shares = new Map<Hex, number>();
  for (const { hex, share } of tones) shares.set(hex, (shares.get(hex) ?? 0) + share);
  return [...shares].map(([hex, share]) => ({ hex, share })).sort((a, b) => b.share - a.share);
}
