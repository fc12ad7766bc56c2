import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';
import type { SpacingMeasure } from './spacing.js';

/** On a canvas whose diagonal is 100 cm, so that a centimetre is one per cent of it; common practice, no source. */
function spacing(...objects: readonly string[]): SpacingMeasure {
  return measure(planOf(`canvas  80 x 60 cm\n${objects.join('')}`)).spacing;
}

function jar(name: string, left: number, wide = 10): string {
  return `object  ${name}, secondary\n  shape   rectangle (${left}, 20) to (${left + wide}, 40)\n  value   2\n`;
}

describe('an interval', () => {
  it('is one from 1 % of the diagonal; what stands closer stands together', () => {
    const gaps = (wide: number) => spacing(jar('jar', 10), jar('jug', 20 + wide)).gaps.length;
    expect([0.95, 1.05].map(gaps)).toEqual([0, 1]);
  });
});

describe('of a crowd of principals', () => {
  it('the hundred largest are looked at', () => {
    const crowd = (count: number) =>
      spacing(...Array.from({ length: count }, (_, i) => jar(`jar-${i}`, (80 * i) / count, 40 / count)))
        .principals.length;
    expect([95, 110].map(crowd)).toEqual([95, 100]);
  });
});
