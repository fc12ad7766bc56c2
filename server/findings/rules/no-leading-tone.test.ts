import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function contested(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'no leading tone');
}

/** Strips side by side on 100 x 50 cm, from the left, each so wide and on such a step of five. */
function strips(...all: readonly (readonly [cm: number, step: number])[]): string {
  let x = 0;
  const objects = all.map(([cm, step], index) => {
    const left = x;
    x += cm;
    return `object  strip-${index}\n  shape   rectangle (${left}, 0) to (${x}, 50)\n  value   ${step}`;
  });
  return ['canvas  100 x 50 cm', ...objects].join('\n');
}

// Common practice, no source: 5 % and 80 %.
describe('a leading tone', () => {
  it.each([
    ['46 to 54', strips([46, 1], [54, 5]), 0],
    ['47.4 to 52.6', strips([47.4, 1], [52.6, 5]), 0],
    ['47.5 to 52.5, exactly 5 % apart', strips([47.5, 1], [52.5, 5]), 0],
    ['47.6 to 52.4', strips([47.6, 1], [52.4, 5]), 1],
    ['41 to 41 with 18 between', strips([41, 1], [18, 3], [41, 5]), 1],
    ['40 to 40 with 20 between', strips([40, 1], [20, 3], [40, 5]), 0],
  ])('%s: %i', (_, text, found) => {
    expect(contested(text)).toHaveLength(found);
  });

  it('is there in a picture of two thirds light and one third dark (Speed, The Practice and Science of Drawing, 1913)', () => {
    expect(contested(strips([33.3, 1], [66.7, 4]))).toEqual([]);
  });

  it('is found by one step of an object that keeps the budget, and is then told as advised', () => {
    const text = strips([38, 2], [12, 2], [50, 4]);
    const [finding] = contested(text);
    expect(finding?.message).toBe(
      'The darks hold 50 % of the picture and the lights 50 %: neither leads. One should be ahead by 5 % or more.',
    );
    expect(finding?.advice).toBe(
      'Take `strip-1` one step up, to step 3: then the lights lead with 50 % to 38 %.',
    );
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(contested(after)).toEqual([]);
    expect(checked(after).measures.values.groups.map(({ share }) => Math.round(share * 100))).toEqual([
      38, 12, 50,
    ]);
  });

  it('is not bought with the value budget', () => {
    const text = strips([38, 2], [12, 2], [50, 4]).replace('cm', 'cm\nbudget  value middle 0% within 2%');
    const [finding] = contested(text);
    expect([finding?.advice, finding?.fix]).toEqual([
      'Take 2.5 % of the picture from the lights to the darks, or let the two have less of it.',
      undefined,
    ]);
  });

  it('is not asked for where the budget sets two tones side by side', () => {
    const text = strips([50, 1], [50, 5]).replace('cm', 'cm\nbudget  value dark 50%, light 50%');
    expect(contested(text)).toEqual([]);
  });

  it('is not asked of an empty canvas, or of what has no value yet', () => {
    expect(contested('canvas  100 x 50 cm')).toEqual([]);
    expect(contested(strips([50, 1], [50, 5]).replaceAll(/ {2}value.*\n?/g, ''))).toEqual([]);
  });

  it('knows the painter’s own groups and limit', () => {
    const text = `${strips([45, 1], [55, 2])}\nscale   2\n  group   night 1, snow 2`;
    expect(contested(text)).toEqual([]);
    const [finding] = contested(`${text}\nrule    no leading tone limit 15%`);
    expect(finding?.message).toContain('`snow` holds 55 % of the picture and `night` 45 %');
  });
});
