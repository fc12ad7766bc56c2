import { describe, expect, it } from 'vitest';
import { files, planOf } from '../../tests/support/plan.js';
import type { Lead } from './plan.js';
import { toldBy } from './test-support.js';

const SCENE = `canvas  80 x 60 cm
focus   (60, 20)
object  shelf
  shape   rectangle (0, 30) to (40, 34)
object  door
  shape   rectangle (50, 10) to (70, 40)`;

function lead(line: string, scene = SCENE): Lead {
  const [only] = planOf(`${scene}\n${line}`).leads;
  if (!only) throw new Error('no lead');
  return only;
}

function pointsOf({ points }: Lead): readonly (readonly [number, number])[] {
  return points.map(({ x, y }) => [Math.round(x * 100) / 100, Math.round(y * 100) / 100]);
}

describe('a lead', () => {
  it('goes from place to place', () => {
    const kerb = lead('lead    kerb from lower left corner through (30, 50) (45, 30) to focus');
    expect(pointsOf(kerb)).toEqual([
      [0, 60],
      [30, 50],
      [45, 30],
      [60, 20],
    ]);
    expect(kerb.along).toBeUndefined();
    expect(kerb.to).toMatchObject({ names: 'focus', location: { line: 6, start: 65, end: 70 } });
  });

  it('runs along the edge of an object and leaves it for its aim', () => {
    const edge = lead('lead    edge along top edge of shelf from left edge at 50% to door');
    expect(pointsOf(edge)).toEqual([
      [0, 30],
      [40, 30],
      [60, 25],
    ]);
    expect(edge.along).toEqual({ object: 0, side: 'top', stretch: { first: 0, last: 1 } });
    expect(edge.to).toMatchObject({ names: 'object', object: 1 });
  });

  it('begins at the farther end of the edge when it does not say where', () => {
    expect(pointsOf(lead('lead    edge along bottom edge of shelf to focus'))).toEqual([
      [0, 34],
      [40, 34],
      [60, 20],
    ]);
  });

  it('comes to the outline at its nearest place, and goes on through places', () => {
    const edge = lead('lead    edge along shelf from lower left corner through (60, 34) to focus');
    expect(pointsOf(edge)).toEqual([
      [0, 60],
      [0, 34],
      [40, 34],
      [60, 34],
      [60, 20],
    ]);
    expect(edge.along?.stretch).toEqual({ first: 1, last: 2 });
  });

  it.each([
    ['has no shape yet', 'object  bench'],
    ['encloses nothing, so it has no edge', 'object  bench\n  shape   outline (0, 0) (9, 9)'],
  ])('cannot run along what %s', (lack, bench) => {
    const plan = planOf(`${SCENE}\n${bench}\nlead    edge along bench from left edge to focus`);
    expect(toldBy(plan)).toContain(
      `\`bench\` ${lack}: no lead can run along it. Give it a \`shape\` with an area, or say \`from\` a place instead of \`along\`.`,
    );
    expect(plan.leads[0]?.points).toHaveLength(2);
  });

  it('is drawn straight, without a word, while the file of the shape is on its way', () => {
    const bench = 'object  bench\n  shape   from "bench.svg" part "seat"';
    const line = 'lead    edge along bench from left edge to focus';
    expect(toldBy(planOf(`${SCENE}\n${bench}\n${line}`))).toEqual([]);
    const svg = '<svg viewBox="0 0 80 60"><path id="seat" d="M0 40H30V44H0Z"/></svg>';
    const there = planOf(`${SCENE}\n${bench}\n${line}`, files({ 'bench.svg': svg }));
    expect(toldBy(there)).toEqual([]);
    expect(there.leads[0]?.along?.stretch).toBeDefined();
  });
});

describe('a lead without length', () => {
  const told = (where: string): string =>
    `\`beam\` starts ${where}, so it leads nowhere. Let it come \`from\` a place farther off.`;

  it.each([
    ['from focus to focus', 'at the focal point'],
    ['from (60, 20) to focus', 'at the focal point'],
    ['from (30, 10) to (30, 10)', 'where it aims'],
    ['from door to door', 'where it aims'],
    ['from focus through focus to (60, 20)', 'where it aims'],
  ])('`%s` is told at its name and left out', (places, where) => {
    const plan = planOf(`${SCENE}\nlead    beam ${places}`);
    expect(plan.problems.map(({ code, severity, message }) => [code, severity, message])).toEqual([
      ['lead without length', 'warning', told(where)],
    ]);
    expect(plan.problems[0]?.location).toEqual({ line: 6, start: 8, end: 12 });
    expect(plan.leads).toEqual([]);
  });

  it.each(['from (30, 10) to (30.001, 10)', 'from focus through (50, 20) to focus'])(
    '`%s` is none',
    (places) => {
      const plan = planOf(`${SCENE}\nlead    beam ${places}`);
      expect(plan.problems).toEqual([]);
      expect(plan.leads).toHaveLength(1);
    },
  );

  it('leaves its name to one that has some', () => {
    const plan = planOf(`${SCENE}\nlead    beam from focus to focus\nlead    beam from left edge to focus`);
    expect(toldBy(plan)).toEqual([told('at the focal point')]);
    expect(plan.leads.map(({ lines }) => lines?.first)).toEqual([7]);
  });
});

describe('a path', () => {
  it('keeps the stops in their order and where they stand', () => {
    const { path } = planOf(`${SCENE}\npath    door, shelf`);
    expect(path).toMatchObject({ value: [1, 0], stopsLocation: { line: 6, start: 8, end: 19 } });
  });
});
