import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { meetingAreas } from '../borders/borders.js';
import { Memory } from '../memory.js';
import { visibleAreas } from './areas.js';
import { ringPieces } from './ring-pieces.js';

/** Discs in rows and columns, so large that gaps are left between every four of them, one pushed a little aside. */
function discs(aside: number): string {
  const shapes = Array.from({ length: 80 }, (_, index) => {
    const x = 5 + (index % 10) * 8 + (index === 44 ? aside : 0);
    const y = 5 + Math.floor(index / 10) * 7.5;
    return `object  disc${index}\n  shape   circle 9 at (${x}, ${y})\n  value   ${1 + (index % 5)}`;
  });
  return ['canvas  80 x 60 cm', ...shapes].join('\n');
}

function versions(outlines = new OutlineCache(), memory = new Memory()) {
  return (aside: number) => {
    const plan = planOf(discs(aside), { outlines });
    memory.turnOver();
    const areas = visibleAreas(
      plan.canvas,
      plan.coveringOrder.flatMap((object) => plan.objects[object] ?? []),
    );
    return { areas, ...meetingAreas(plan, areas, memory) };
  };
}

describe('the bare ground between many things', () => {
  it('stays ring by ring where nothing moved, and is as from scratch', () => {
    const version = versions();
    const before = version(0);
    const after = version(0.3);
    const known = new Set(before.areas.bare);
    const others = after.areas.bare.filter((ring) => !known.has(ring));
    expect(after.areas.bare.length).toBeGreaterThan(50);
    expect(others.length).toBeGreaterThan(0);
    expect(others.length).toBeLessThan(30);
    const fresh = versions()(0.3);
    expect(after.areas.bare).toEqual(fresh.areas.bare);
    expect(ringPieces(after.areas.bare)).toEqual(ringPieces(fresh.areas.bare));
  });

  it('is compared only with what lies near its rings that changed', () => {
    const version = versions();
    const before = version(0);
    const after = version(0.3);
    const others = after.meetings.filter(({ met }, area) => met !== before.meetings[area]?.met);
    expect(after.meetings).toHaveLength(81);
    expect(others.length).toBeGreaterThan(0);
    expect(others.length).toBeLessThan(12);
    expect(after.meetings).toEqual(versions()(0.3).meetings);
  });
});
