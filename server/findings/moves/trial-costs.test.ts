import { describe, expect, it } from 'vitest';
import { combText } from '../../../tests/support/combs.js';
import { planOf } from '../../../tests/support/plan.js';
import { remembered } from './remembered.js';
import { triesWithin } from './trial-costs.js';

/** A zigzag of so many points, as a band across the canvas. */
function zigzag(points: number, shift: number): string {
  const half = points / 2;
  const along = Array.from({ length: half }, (_, at) => ({
    x: 2 + shift + (30 * at) / half,
    y: at % 2 === 0 ? 4 : 20,
  }));
  const back = along.map(({ x, y }) => ({ x, y: y + 4 })).reverse();
  return [...along, ...back].map(({ x, y }) => `(${x.toFixed(3)}, ${y})`).join(' ');
}

const pair = (one: string, other: string) =>
  planOf(
    `canvas  40 x 30 cm\nobject  reeds\n  shape   outline ${one}\nobject  rain\n  shape   outline ${other}\nobject  pot\n  shape   circle 1 at (38, 28)`,
  );

describe('trials of a move', () => {
  it('are as many as asked for where outlines can cross seldom', () => {
    const plan = pair(zigzag(60, 0), zigzag(60, 0.1));
    expect(triesWithin(plan, 0, 12)).toBe(12);
    expect(triesWithin(plan, 2, 12)).toBe(12);
  });

  it('are few where outlines of many points zigzag beside each other, though they hardly cross', () => {
    const plan = pair(zigzag(340, 0), zigzag(340, 0.05));
    expect(triesWithin(plan, 1, 12)).toBe(3);
    // What lies apart costs what it did.
    expect(triesWithin(plan, 2, 12)).toBe(12);
  });

  it('are none where one alone takes too long', () => {
    const plan = pair(combText(158, 'upright'), combText(158, 'level'));
    expect(triesWithin(plan, 0, 12)).toBe(1);
    const finer = pair(zigzag(700, 0), zigzag(700, 0.05));
    expect(triesWithin(finer, 0, 12)).toBe(0);
    let tried = 0;
    expect(remembered(finer, 0, 'a trial', 0.1, () => ++tried)).toBeUndefined();
    expect(tried).toBe(0);
    expect(remembered(finer, 2, 'a trial', 0.1, () => ++tried)).toBe(1);
  });
});
