import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Plan } from '../../plan/plan.js';
import { visibleAreas } from '../areas/areas.js';
import type { LeadMeasure } from './eye-path.js';
import { anglesBetween, measureLeads, sidesOfLeads, turnBetween } from './leads.js';

/** Sides 3 : 4, so that the diagonal is 50 cm. */
const CANVAS = 'canvas  40 x 30 cm';

function leadsOf(plan: Plan): readonly LeadMeasure[] {
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureLeads(plan, visibleAreas(plan.canvas, layers));
}

function measured(text: string): readonly LeadMeasure[] {
  return leadsOf(planOf(text));
}

function only(text: string): LeadMeasure {
  const [lead] = measured(text);
  if (!lead) throw new Error('no lead');
  return lead;
}

describe('a lead', () => {
  it('from a corner along the diagonal of a 3-4-5 canvas', () => {
    const lead = only(`${CANVAS}\nfocus   (20, 15)\nlead    road from upper left corner to focus`);
    expect(lead.from).toEqual({ kind: 'corner', corner: 'upper left' });
    expect(lead.length).toBeCloseTo(25, 9);
    // The angle whose tangent is 3/4.
    expect(lead.heading).toBeCloseTo(36.8699, 4);
    expect(lead.miss).toBe(0);
    expect(lead.leaves).toMatchObject({ side: 'right', corner: 'lower right' });
    expect(lead.leaves?.at.x).toBeCloseTo(40, 9);
    expect(lead.leaves?.at.y).toBeCloseTo(30, 9);
  });

  it('that passes the focal point by, as far as that is from its line', () => {
    // The line from (0, 0) towards (40, 30) passes (20, 25) at |3 x 20 - 4 x 25| / 5 = 8, beside 0.8 x 20 + 0.6 x 25 =
    // 31 along.
    const lead = only(`${CANVAS}\nfocus   (20, 25)\nlead    road from upper left corner to (8, 6)`);
    expect(lead.miss).toBeCloseTo(8, 9);
    expect(lead.missShare).toBeCloseTo(0.16, 9);
    expect(lead.nearest?.x).toBeCloseTo(0.8 * 31, 9);
    expect(lead.nearest?.y).toBeCloseTo(0.6 * 31, 9);
  });

  it('is not carried on backwards', () => {
    const lead = only(`${CANVAS}\nfocus   (10, 15)\nlead    road from (20, 15) to (30, 15)`);
    expect(lead.miss).toBeCloseTo(10, 9);
    expect(lead.nearest).toEqual({ x: 20, y: 15 });
  });

  it.each([
    ['left', '(0, 27) (20, 17) (20, 30) (0, 30)', '(26, 14)'],
    ['right', '(40, 27) (20, 17) (20, 30) (40, 30)', '(14, 14)'],
  ] as const)('along an edge that comes from the %s of the canvas comes from there', (side, road, focus) => {
    const text = `${CANVAS}\nfocus   ${focus}\nobject  road\n  shape   outline ${road}\nlead    kerb along top edge of road to focus`;
    const [lead] = measured(text);
    expect(lead?.from).toEqual({ kind: 'edge', side });
    expect(lead?.miss).toBeCloseTo(0, 9);
    expect(sidesOfLeads(measured(text))).toMatchObject({ left: 0, right: 0, [side]: 1 });
  });

  it('that an edge carries ends, to the eye, where it leaves that edge', () => {
    const shelf = 'object  shelf\n  shape   rectangle (0, 20) to (20, 22)';
    const lead = only(`${CANVAS}\nfocus   (30, 14)\n${shelf}\nlead    edge along top edge of shelf to focus`);
    expect(lead.end).toEqual({ x: 20, y: 20 });
    expect(lead.heading).toBe(0);
    expect(lead.miss).toBeCloseTo(6, 9);
    expect(lead.nearest).toEqual({ x: 30, y: 20 });
    expect(lead.leaves).toEqual({ at: { x: 40, y: 20 }, side: 'right' });
    expect(lead.arrival).toBeCloseTo(360 - 30.9638, 3); // atan(6 / 10)
    const bridged = only(
      `${CANVAS}\nfocus   (30, 14)\n${shelf}\nlead    edge along top edge of shelf through (25, 17) to focus`,
    );
    expect(bridged.miss).toBe(0);
  });

  it('runs into what it aims at, or passes it', () => {
    const ball = 'object  ball, dominant\n  shape   circle 8 at (30, 15)';
    const scene = `${CANVAS}\nfocus   (30, 15)\n${ball}\n`;
    const aimed = (line: string) => only(`${scene}lead    road from ${line}`);
    expect(aimed('left edge to focus')).toMatchObject({ aim: { kind: 'focus' }, passes: 0 });
    // 3.9 off the focal point, but within the ball.
    expect(aimed('(0, 18.9) to (10, 18.9)')).toMatchObject({ aim: { kind: 'focus' }, passes: 0 });
    expect(aimed('(0, 19.1) to (10, 19.1)').passes).toBeCloseTo(4.1, 9);
    expect(aimed('(0, 5) to ball')).toMatchObject({ aim: { kind: 'object', object: 0 }, passes: 0 });
    const jug = 'object  jug, secondary\n  shape   rectangle (8, 22) to (12, 26)\n';
    const toJug = only(`${scene}${jug}lead    road from bottom edge at 25% to (10, 24)`);
    expect(toJug).toMatchObject({ aim: { kind: 'object', object: 1 }, passes: 0 });
    const shelf = 'object  shelf\n  shape   rectangle (0, 2) to (20, 4)\n';
    const carried = only(`${scene}${jug}${shelf}lead    edge along bottom edge of shelf to jug`);
    expect(carried).toMatchObject({ aim: { kind: 'object', object: 1 } });
    // Carried on it runs level, 18 above the jug.
    expect(carried.passes).toBeCloseTo(18, 6);
    const screen = 'object  screen\n  plane   foreground\n  shape   rectangle (5, 20) to (15, 28)\n';
    const hidden = only(`${scene}${jug}${screen}${shelf}lead    edge along bottom edge of shelf to jug`);
    expect(hidden.aim).toEqual({ kind: 'object', object: 1 });
    expect(hidden).not.toHaveProperty('passes');
  });

  it.each([
    ['left edge at 50%', { kind: 'edge', side: 'left' }],
    ['(0.5, 15)', { kind: 'edge', side: 'left' }],
    ['(0.51, 15)', { kind: 'inside' }],
    ['(20, 29.5)', { kind: 'edge', side: 'bottom' }],
    ['(0.3, 0.4)', { kind: 'corner', corner: 'upper left' }],
    ['(40.2, 30.2)', { kind: 'corner', corner: 'lower right' }],
    ['(60, 15)', { kind: 'edge', side: 'right' }],
    ['ball', { kind: 'object', object: 0 }],
    ['lower right of ball', { kind: 'object', object: 0 }],
  ])('from %s', (place, from) => {
    const ball = 'object  ball\n  shape   circle 4 at (12, 12)';
    expect(only(`${CANVAS}\nfocus   (20, 15)\n${ball}\nlead    road from ${place} to focus`).from).toEqual(
      from,
    );
  });
});

describe('leads together', () => {
  const THREE = `${CANVAS}\nfocus   (20, 15)
lead    one from left edge at 50% to focus
lead    other from lower left corner to focus
lead    third from top edge to focus`;

  it('arrive at angles to the next one round', () => {
    const plan = planOf(THREE);
    const angles = anglesBetween(plan, leadsOf(plan));
    expect(angles).toEqual([
      { one: 0, other: 1, degrees: expect.closeTo(36.8699, 4) },
      { one: 0, other: 2, degrees: expect.closeTo(90, 9) },
      { one: 1, other: 2, degrees: expect.closeTo(90 + 36.8699, 4) },
    ]);
  });

  it('come in from sides, one from a corner over both', () => {
    expect(sidesOfLeads(measured(THREE))).toEqual({ left: 2, right: 0, top: 1, bottom: 1 });
  });

  it('are not compared when they aim at different places', () => {
    const plan = planOf(
      `${CANVAS}\nfocus   (20, 15)\nlead    one from left edge to (5, 5)\nlead    other from left edge to focus`,
    );
    expect(anglesBetween(plan, leadsOf(plan))).toEqual([]);
  });

  it('turn by the smaller of two angles', () => {
    expect(turnBetween(350, 10)).toBe(20);
    expect(turnBetween(0, 180)).toBe(180);
    expect(turnBetween(90, 300)).toBe(150);
  });
});

describe('whatever the lead', () => {
  const tenth = (most: number) => fc.integer({ min: 0, max: most * 10 }).map((n) => n / 10);
  const places = fc.record({ x: tenth(40), y: tenth(30) });
  const scene = (size: number, flip: boolean, focus: Place, line: readonly Place[]): string => {
    const written = ({ x, y }: Place): string => `(${(flip ? 40 - x : x) * size}, ${y * size})`;
    const [start, ...rest] = line;
    const last = rest.pop();
    const through = rest.length > 0 ? ` through ${rest.map(written).join(' ')}` : '';
    return `canvas  ${40 * size} x ${30 * size} cm\nfocus   ${written(focus)}\nlead    road from ${written(start ?? focus)}${through} to ${written(last ?? focus)}`;
  };
  interface Place {
    readonly x: number;
    readonly y: number;
  }
  const lines = fc
    .array(places, { minLength: 2, maxLength: 4 })
    .filter((line) => line.some(({ x, y }) => x !== line[0]?.x || y !== line[0].y));

  it('measures the same in parts of the diagonal at any size', () => {
    fc.assert(
      fc.property(places, lines, (focus, line) => {
        const [small, large] = [only(scene(1, false, focus, line)), only(scene(4, false, focus, line))];
        expect(large.missShare).toBeCloseTo(small.missShare ?? NaN, 6);
        expect(large.length / 4).toBeCloseTo(small.length, 6);
        expect(turnBetween(large.heading, small.heading)).toBeCloseTo(0, 5);
        expect(large.from).toEqual(small.from);
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  it('is mirrored in a mirror', () => {
    const mirrored = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;
    fc.assert(
      fc.property(places, lines, (focus, line) => {
        const [plain, other] = [only(scene(1, false, focus, line)), only(scene(1, true, focus, line))];
        expect(other.missShare).toBeCloseTo(plain.missShare ?? NaN, 6);
        expect(turnBetween(other.heading, 180 - plain.heading)).toBeCloseTo(0, 5);
        expect(other.leaves?.at.y).toBeCloseTo(plain.leaves?.at.y ?? NaN, 5);
        if (plain.from.kind === 'edge' && other.from.kind === 'edge') {
          const toSide = Math.min(line[0]?.x ?? 0, 40 - (line[0]?.x ?? 0));
          const toLevel = Math.min(line[0]?.y ?? 0, 30 - (line[0]?.y ?? 0));
          if (Math.abs(toSide - toLevel) > 1e-6) expect(other.from.side).toBe(mirrored[plain.from.side]);
        }
      }),
      { seed: 12, numRuns: 150 },
    );
  });
});
