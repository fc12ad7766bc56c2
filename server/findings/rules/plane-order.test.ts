import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function disordered(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'plane order');
}

/** Hills, a wall and a gate, a third of the canvas each, on such steps of five. */
function lane(trend: string, hills: number, wall: number, gate: number, more = ''): string {
  const band = (name: string, plane: string, left: number, step: number): string =>
    `object  ${name}\n  plane   ${plane}\n  shape   rectangle (${left}, 0) to (${left + 30}, 50)\n  value   ${step}`;
  return [
    `canvas  90 x 50 cm\nscale   5\n  planes  ${trend} with distance${more}`,
    band('hills', 'background', 0, hills),
    band('wall', 'middle', 30, wall),
    band('gate', 'foreground', 60, gate),
  ].join('\n');
}

describe('planes in order', () => {
  it.each([
    ['lighten', 5, 3, 1, []],
    ['lighten', 3, 5, 1, ['background']],
    ['lighten', 3, 3, 1, ['background']],
    ['lighten', 1, 3, 5, ['background', 'middle ground']],
    ['darken', 1, 3, 5, []],
    ['darken', 1, 5, 3, ['middle ground']],
  ])('%s with distance: %i, %i, %i', (trend, hills, wall, gate, told) => {
    const findings = disordered(lane(trend, hills, wall, gate));
    expect(findings.map(({ message }) => /^The ([a-z ]+?) is to be/.exec(message)?.[1])).toEqual(told);
    expect(findings.every(({ severity }) => severity === 'warning')).toBe(true);
  });

  it('are told with their means, and with the object and the steps that set them right', () => {
    const text = lane('lighten', 4, 4, 1);
    const [finding] = disordered(text);
    expect(finding?.message).toBe(
      'The background is to be lighter than the middle ground and is not: their mean values are 7 and 7 (Munsell value, 0 to 10).',
    );
    expect(finding?.advice).toBe(
      'Take `hills`, in the background, one step up, to step 5: then they are in order.',
    );
    expect(disordered(mended(text, finding?.fix ?? { edits: [] }))).toEqual([]);
  });

  it('are set right within the value budget, or it is said by how many steps a plane is off', () => {
    const budget = '\nbudget  value dark 33%, middle 67% within 2%';
    const [finding] = disordered(lane('lighten', 3, 3, 1, budget));
    expect([finding?.advice, finding?.fix]).toEqual([
      'No single object sets it right within the value budget. The background as a whole would have to be one step lighter, or the middle ground as much darker.',
      undefined,
    ]);
  });

  it('are passed over where nothing is seen of one, and not asked for where the plan says nothing', () => {
    const text = lane('lighten', 5, 3, 1);
    expect(disordered(text.replace('rectangle (30, 0) to (60, 50)', 'circle 2 at (-9, 9)'))).toEqual([]);
    expect(disordered(lane('lighten', 1, 3, 5).replace(/scale.*\n.*distance\n/, ''))).toEqual([]);
  });
});
