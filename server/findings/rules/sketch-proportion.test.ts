import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(canvas: string, pixels: string, ...more: readonly string[]): readonly Finding[] {
  const text = [`canvas  ${canvas}`, `sketch  "idea, ${pixels}.png"`, ...more].join('\n');
  return checked(text).findings.filter(({ rule }) => rule === 'sketch proportion');
}

describe('sketch proportion', () => {
  it('says how far the sketch is stretched, and what to crop or which canvas would do', () => {
    const [finding, ...others] = told('50 x 40 cm', '1600 x 1200');
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      'The sketch is 4 : 3, the canvas 5 : 4: carried over square by square, everything would become 6.7 % taller than it is drawn.',
    );
    expect(finding?.advice).toBe(
      'Leave off 6.3 % of its width, half of it at either side, with `corners (3.1%, 0%) (96.9%, 0%) (96.9%, 100%) (3.1%, 100%)` under it, or work on 50 x 37.5 cm, which is in its proportion.',
    );
    expect(finding?.location).toEqual({ line: 1, start: 8, end: expect.any(Number) as number });
  });

  it('says the same of one that is too high', () => {
    const [finding] = told('16 x 20 in', '900 x 1200');
    expect(finding?.message).toMatch(/^The sketch is 3 : 4, the canvas 4 : 5: .* 6\.7 % wider than/u);
    expect(finding?.advice).toMatch(/ of its height, half of it at the top .* or work on 15 x 20 in, /u);
  });

  it('tells proportions that no small numbers have, and near ones, in figures', () => {
    expect(told('50 x 40 cm', '1413 x 1000')[0]?.message).toContain(
      'The sketch is 1.41 : 1, the canvas 1.25 : 1:',
    );
    expect(told('50 x 40 cm', '1252 x 1000', 'rule sketch proportion limit 0.1%')[0]?.message).toContain(
      'The sketch is 1.252 : 1, the canvas 1.25 : 1:',
    );
  });

  it('takes a sketch across an upright canvas for one that lies on its side', () => {
    expect(told('40 x 50 cm', '1500 x 1200')[0]?.advice).toBe(
      'One of the two lies on its side: write `canvas 50 x 40 cm`, or turn the sketch.',
    );
  });

  it('says nothing of a sketch whose size is not known or whose corners are stated, but of corners that no sheet has', () => {
    expect(told('50 x 40 cm', 'of unknown size')).toEqual([]);
    expect(told('50 x 40 cm', '1600 x 1200', '  corners (3%, 4%) (97%, 3%) (98%, 96%) (2%, 97%)')).toEqual(
      [],
    );
    const [finding] = told('50 x 40 cm', '1600 x 1200', '  corners (3%, 4%) (98%, 96%) (97%, 3%) (2%, 97%)');
    expect(finding?.message).toMatch(/^The corners of the sketch are those of no sheet/u);
  });

  it('ends with the advice taken', () => {
    expect(told('50 x 37.5 cm', '1600 x 1200')).toEqual([]);
    expect(
      told('50 x 40 cm', '1600 x 1200', '  corners (3.1%, 0%) (96.9%, 0%) (96.9%, 100%) (3.1%, 100%)'),
    ).toEqual([]);
  });
});
