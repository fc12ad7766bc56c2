import { describe, expect, it } from 'vitest';
import { combText } from '../../../tests/support/combs.js';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';

describe('what lies in front of a thing', () => {
  it('is named where it crosses it as often as outlines may that are seen', () => {
    const combs = (teeth: number) =>
      planOf(
        [
          'canvas  40 x 30 cm',
          `object  reeds secondary\n  shape   outline ${combText(teeth, 'upright')}\n  value   2`,
          'object  sheet\n  shape   rectangle (0, 0) to (40, 30)\n  value   3',
          `object  rain\n  shape   outline ${combText(teeth, 'level')}\n  value   4`,
        ].join('\n'),
      );
    for (const [teeth, covers] of [
      [158, [1, 2]],
      [159, [1]],
    ] as const) {
      const plan = combs(teeth);
      const [reeds] = measure(plan).objects;
      expect(plan.problems).toEqual([]);
      expect(reeds?.mostCovering).toEqual(covers);
      expect(reeds?.coveredBy).toEqual(covers);
    }
  });

  it('is named as far as the three that cover most of it', () => {
    const slats = [1, 2, 3, 4, 5].map(
      (wide, i) =>
        `object  slat-${i}\n  shape   rectangle (${10 + 6 * i}, 5) to (${10 + 6 * i + wide}, 45)\n  value   3\n`,
    );
    const plan = planOf(
      `canvas  80 x 60 cm\nobject  chest\n  shape   rectangle (10, 10) to (45, 40)\n  value   2\n${slats.join('')}`,
    );
    const [chest] = measure(plan).objects;
    const names = (indices: readonly number[] = []) => indices.map((index) => plan.objects[index]?.name);
    expect(names(chest?.mostCovering)).toEqual(['slat-4', 'slat-3', 'slat-2']);
    expect(names(chest?.coveredBy)).toEqual(['slat-4', 'slat-3', 'slat-2', 'slat-1', 'slat-0']);
  });
});
