import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { ROOM } from '../../../tests/support/room.js';
import { measure } from '../measure.js';
import type { EyePathMeasure } from './eye-path.js';

/** Leads and stops just within and just beyond each limit. The limits are common practice, no source. */
function eyePath(...lines: readonly string[]): EyePathMeasure {
  return measure(planOf(`${ROOM}${lines.join('\n')}\n`)).eyePath;
}

describe('a lead', () => {
  it('goes the way of its last 5 % of the diagonal', () => {
    // Level, and straight down for the last 4 cm.
    const { leads } = eyePath('lead    sill from (0, 41) through (60, 41) to focus');
    expect(leads[0]?.heading).toBeCloseTo((Math.atan2(4, 1) * 180) / Math.PI, 6);
  });

  it('comes in over the edge from 1 % of the diagonal of it', () => {
    const from = (x: number) => eyePath(`lead    sill from (${x}, 30) to focus`).leads[0]?.from.kind;
    expect([0.9, 1.1].map(from)).toEqual(['edge', 'inside']);
  });

  it('meets another that arrives within 5 % of the diagonal of the focal point', () => {
    const meetings = (away: number) =>
      eyePath(
        'lead    sill from left edge at 50% to focus',
        `lead    beam from top edge at 50% to (${60 + away}, 45)`,
      ).angles.length;
    expect([4.5, 5.5].map(meetings)).toEqual([1, 0]);
  });

  it('runs to the focal point where it runs into the dominant object within 5 % of the diagonal of it', () => {
    const passes = (away: number) => {
      const level = 45 - away - 3;
      return eyePath(
        'object  lamp, dominant',
        `  shape   circle 6 at (60, ${level})`,
        '  colour  N 8/',
        `lead    sill from (0, ${level}) to (75, ${level})`,
      ).leads[0]?.passes;
    };
    expect(passes(4.5)).toBe(0);
    expect(passes(5.5)).toBeCloseTo(8.5, 6);
  });

  it('runs out at a corner from 3 % of the diagonal of it', () => {
    const corner = (height: number) =>
      eyePath(`lead    beam from (60, ${height}) to (30, ${height})`).leads[0]?.leaves?.corner;
    expect([2.9, 3.1].map(corner)).toEqual(['upper left', undefined]);
  });
});

describe('a stop of the path', () => {
  it('is at the focal point when its border is within 5 % of the diagonal of it', () => {
    const isAtFocus = (away: number) =>
      eyePath(
        'object  jug',
        `  shape   rectangle (20, 30) to (${60 - away}, 50)`,
        '  colour  N 2/',
        'path    jug',
      ).stops[0]?.isAtFocus;
    expect([4.5, 5.5].map(isAtFocus)).toEqual([true, false]);
  });
});
