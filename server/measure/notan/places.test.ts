import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import type { Plan } from '../../plan/plan.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';

type Place = readonly [x: number, y: number];

function planOf(lefts: readonly Place[]): Plan {
  const objects = lefts.map(
    ([x, y], at) =>
      `object  box-${'abcdef'[at]}\n  shape   rectangle (${x}, ${y}) to (${x + 9 + at}, ${y + 7})\n  value   ${1 + (at % 3) * 3}`,
  );
  return checked(['canvas  100 x 50 cm\n  ground  N 9/', ...objects].join('\n')).plan;
}

function placesOf(plan: Plan, memory: Memory) {
  return measure(plan, memory).notan.tones.map(({ pieces }) => pieces.map(({ at }) => at));
}

it('places in the tones stay what they would be from scratch while one thing after the other is moved', () => {
  const place = fc.tuple(fc.integer({ min: -5, max: 90 }), fc.integer({ min: -5, max: 45 }));
  const start = fc.array(place, { minLength: 6, maxLength: 6 });
  const moves = fc.array(fc.tuple(fc.nat({ max: 5 }), place), { minLength: 2, maxLength: 4 });
  fc.assert(
    fc.property(start, moves, (first, moved) => {
      const memory = new Memory();
      let boxes = first;
      placesOf(planOf(boxes), memory);
      for (const [which, to] of moved) {
        boxes = boxes.with(which, to);
        const plan = planOf(boxes);
        expect(placesOf(plan, memory)).toEqual(placesOf(plan, new Memory()));
      }
    }),
    { numRuns: 25 },
  );
});
