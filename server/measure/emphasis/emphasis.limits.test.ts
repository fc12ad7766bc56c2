import { describe, expect, it } from 'vitest';
import type { Means } from '../../../grammar/index.js';
import { planOf } from '../../../tests/support/plan.js';
import { ROOM } from '../../../tests/support/room.js';
import { measure } from '../measure.js';
import type { EmphasisMeasure } from './emphasis.js';
import { counted } from './grid.js';

/** Pictures just within and just beyond each limit of emphasis. The limits are a heuristic, without a source. */
const LAMP = `object  lamp, dominant
  shape   circle 6 at focus
  colour  N 9/
  edges   hard
`;

/** How far apart two places are from whose cells the grid looks alike: thirty of its cells. */
const APART = 25;

/**
 * A moon as large as the lamp; its contrast is a part of the lamp's, which lies 4 steps of Munsell value off the
 * ground.
 */
function moon(part: number, x = 60 - APART): string {
  return `object  moon\n  shape   circle 6 at (${x}, 45)\n  colour  N ${5 + 4 * part}/\n  edges   hard\n`;
}

function emphasis(...lines: readonly string[]): EmphasisMeasure {
  return measure(planOf(ROOM + lines.join(''))).emphasis;
}

function means(name: Means, ...lines: readonly string[]) {
  return emphasis(...lines).focal?.means.find((one) => one.means === name);
}

describe('a place elsewhere', () => {
  it('is a rival from nine tenths of the strength of the focal point', () => {
    const rivals = (part: number) => emphasis(LAMP, moon(part)).focal?.rivals.length;
    expect([0.93, 0.87].map(rivals)).toEqual([1, 0]);
  });

  it('is told from a tenth of the strength of the strongest', () => {
    const places = (part: number) => emphasis(LAMP, moon(part)).places.length;
    expect([0.11, 0.09].map(places)).toEqual([2, 1]);
  });

  it('is strong at the edge from three quarters of the strength of the focal point', () => {
    const atEdge = (part: number) => emphasis(LAMP, moon(part, 60 - (68 / 30) * APART)).nearEdge.length;
    expect([0.8, 0.7].map(atEdge)).toEqual([1, 0]);
  });

  it('is at the edge up to 5 % of the diagonal', () => {
    const atEdge = (x: number) => emphasis(LAMP, moon(1, x)).nearEdge.length;
    expect([4.5, 5.5].map(atEdge)).toEqual([1, 0]);
  });

  it('is not on the edges of a dominant object within 5 % of the diagonal of the focal point', () => {
    const elsewhere = (away: number) =>
      emphasis(
        `object  tower, dominant\n  shape   rectangle (${60 + away}, 36) to (76, 54)\n  colour  N 9/\n  edges   hard\n`,
      ).focal?.elsewhere.length;
    expect(elsewhere(4.5)).toBe(0);
    expect(elsewhere(5.5)).toBeGreaterThan(0);
  });
});

describe('a border', () => {
  it('counts for a place within 8 % of the diagonal, less and less over half a per cent there', () => {
    const parts = [7.7, 7.9, 8, 8.1, 8.3].map((away) => counted(away, 100));
    [1, 0.7, 0.5, 0.3, 0].forEach((part, index) => expect(parts[index]).toBeCloseTo(part, 9));
  });
});

describe('the focal point has', () => {
  it('the contrast of value as long as it is no more than a tenth stronger elsewhere', () => {
    const holds = (part: number) => means('value', LAMP.replace('N 9/', 'N 8/'), moon(part * 0.75))?.holds;
    expect([1.09, 1.11].map(holds)).toEqual([true, false]);
  });

  it('half of the detail there is where some is painted', () => {
    const table = `object  table\n  shape   rectangle (40, 30) to (80, 60)\n  colour  N 3/\n  detail  some\n`;
    expect(means('detail', table)?.there).toBeCloseTo(0.5, 9);
  });

  it('isolation from what others show between 8 and 20 % of the diagonal', () => {
    const crumb = (away: number) =>
      `object  crumb\n  shape   rectangle 0.4 x 0.4 at (${60 - away}, 45)\n  colour  N 2/\n`;
    const isBusy = (away: number) => (means('isolation', LAMP, crumb(away))?.there ?? NaN) > 0;
    expect([7.5, 8.6, 19.2, 20.9].map(isBusy)).toEqual([false, true, true, false]);
  });
});
