import { describe, expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { measureProportion } from './proportion.js';

function isOneOf(canvas: string): boolean {
  return measureProportion(planOf(`canvas  ${canvas}`).canvas).named.some(({ sameSize }) => sameSize);
}

/** Stretchers and sheets are cut no truer than that: common practice, no source. */
describe('a canvas is of a size that is sold', () => {
  it('within 2 mm where the size is metric', () => {
    // The French figure 8 is 46 x 38 cm.
    expect(['461.9 x 380 mm', '462.1 x 380 mm'].map(isOneOf)).toEqual([true, false]);
  });

  it('within a sixteenth of an inch where it is in inches', () => {
    expect(['24.058 x 18 in', '24.067 x 18 in'].map(isOneOf)).toEqual([true, false]);
  });
});
