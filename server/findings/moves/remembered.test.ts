import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/index.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { resolvePlan } from '../../plan/resolve.js';
import { remembered } from './remembered.js';

const outlines = new OutlineCache();
const version = (jug: string, note: string) =>
  resolvePlan(
    parse(
      `canvas  40 x 30 cm\nnote    "${note}"\nobject  jug\n  shape   circle ${jug} at (10, 10)\nobject  cup\n  shape   circle 4 at (30, 20)`,
    ),
    { outlines },
  );

describe('what was tried', () => {
  it('is used again while other lines are typed, and tried anew when a shape or a limit changes', () => {
    let tried = 0;
    const ask = (jug: string, note: string, limit = 0.1) =>
      remembered(version(jug, note), 1, 'a trial', limit, () => ++tried);
    expect(ask('4', 'a')).toBe(1);
    expect(ask('4', 'b')).toBe(1);
    expect(ask('5', 'b')).toBe(2);
    expect(ask('5', 'b', 0.2)).toBe(3);
  });

  it('is nothing for an object that there is not', () => {
    expect(remembered(version('4', 'a'), 7, 'a trial', 0.1, () => 1)).toBeUndefined();
  });
});
