import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function against(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'value against colour');
}

const jar = (colour: string, value: number, more = ''): string =>
  `canvas  40 x 30 cm\n${more}object  jar\n  shape   circle 9\n  colour  ${colour}\n  value   ${value}`;

describe('a colour written at an object', () => {
  // Step k of five is Munsell value 2 k - 1, so that a notation says its step outright.
  it.each([
    ['5R 5/6', 3, 0],
    ['5R 5.9/6', 3, 0],
    ['5R 6/6', 3, 0],
    ['5R 6.1/6', 3, 1],
    ['5R 4.1/6', 3, 0],
    ['5R 3.9/6', 3, 1],
    ['N 9.5/', 5, 0],
    ['tomato', 1, 1],
  ])('%s at value %i: %i', (colour, value, found) => {
    expect(against(jar(colour, value))).toHaveLength(found);
  });

  it('is told with its own place on the scale, and the value that fits is put in', () => {
    const text = jar('5R 7/6', 3);
    const [finding] = against(text);
    expect(finding?.message).toBe(
      'The colour written at `jar` lies at 4 on the value scale (Munsell value 7), lighter than the `value 3` beside it, which is what counts; up to 0.5 of a step is let pass.',
    );
    expect(mended(text, finding?.fix ?? { edits: [] })).toBe(jar('5R 7/6', 4));
    expect(finding?.related.map(({ location }) => location.line)).toEqual([3]);
  });

  it('is to give way where the value keeps the budget', () => {
    const [finding] = against(`${jar('5R 7/6', 3)}\nbudget  value middle 5% within 1%`);
    expect(finding?.fix).toBeUndefined();
    expect(finding?.advice).toBe(
      'Write a darker colour: `value 4`, the step nearest to this one, would break what the plan says of light and dark elsewhere.',
    );
  });

  it('is held to a narrower limit where the plan sets one', () => {
    const [finding] = against(`${jar('5R 5.8/6', 3)}\nrule    value against colour limit 0.3`);
    expect([finding?.advice, finding?.fix]).toEqual(['Write a darker colour.', undefined]);
  });

  it('is left alone when it goes by a name or is a paint: those are taken lighter and darker', () => {
    expect(against(jar('brick', 1, 'colour  brick 5R 8/4\n'))).toEqual([]);
    expect(against(jar('lime', 1, 'palette\n  paint   lime full #e0e0c0\n'))).toEqual([]);
  });
});
