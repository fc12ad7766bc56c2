import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { type ObjectPoints, transferOf } from './key-points.js';

function objects(...lines: readonly string[]): readonly ObjectPoints[] {
  return transferOf(planOf(['canvas 60 x 40 cm', ...lines].join('\n'))).objects;
}

function places({ pieces }: ObjectPoints | { readonly pieces: ObjectPoints['pieces'] } = { pieces: [] }) {
  return pieces.flatMap(({ points }) =>
    points.map(({ at, kind }) => `${kind} (${Number(at.x.toFixed(3))}, ${Number(at.y.toFixed(3))})`),
  );
}

describe('key points', () => {
  it('of a polygon are its corners, clockwise from the topmost, whichever way it is written', () => {
    const wanted = ['corner (30, 5)', 'corner (40, 30)', 'corner (10, 25)'];
    expect(places(objects('object roof', '  shape outline (10, 25) (30, 5) (40, 30)')[0])).toEqual(wanted);
    expect(places(objects('object roof', '  shape outline (40, 30) (30, 5) (10, 25)')[0])).toEqual(wanted);
  });

  it('leave out what lies along a straight side', () => {
    const [shelf] = objects('object shelf', '  shape outline (10, 10) (20, 10) (30, 10) (30, 20) (10, 20)');
    expect(places(shelf)).toEqual([
      'corner (10, 10)',
      'corner (30, 10)',
      'corner (30, 20)',
      'corner (10, 20)',
    ]);
  });

  it('of a circle are its centre and its outermost points, with its radius', () => {
    const [plate] = objects('object plate', '  shape circle 12 at (30, 20)');
    expect(plate?.pieces[0]).toMatchObject({ form: 'circle' });
    expect(plate?.pieces[0]?.radius).toBeCloseTo(6, 9);
    expect(places(plate)).toEqual([
      'centre (30, 20)',
      'topmost (30, 14)',
      'rightmost (36, 20)',
      'lowest (30, 26)',
      'leftmost (24, 20)',
    ]);
  });

  it('of an ellipse are its centre and the ends of its axes, also turned', () => {
    const [dish] = objects('object dish', '  shape ellipse 20 x 8 at (30, 20)', '  turn 90');
    expect(dish?.pieces[0]).toMatchObject({ form: 'ellipse' });
    expect(dish?.pieces[0]?.axes?.map((axis) => Number(axis.toFixed(6)))).toEqual([20, 8]);
    expect(Math.abs(dish?.pieces[0]?.turn ?? NaN)).toBeCloseTo(90, 6);
    expect(places(dish).slice(0, 2)).toEqual(['centre (30, 20)', 'end of an axis (30, 10)']);
    const [tilted] = objects('object dish', '  shape ellipse 20 x 8 at (30, 20)', '  turn 30');
    expect(tilted?.pieces[0]?.turn).toBeCloseTo(30, 6);
    const [first] = tilted?.pieces[0]?.points.filter(({ at }) => at.x > 35) ?? [];
    expect([first?.at.x, first?.at.y]).toEqual([
      expect.closeTo(30 + 10 * Math.cos(Math.PI / 6), 6),
      expect.closeTo(20 + 10 * Math.sin(Math.PI / 6), 6),
    ]);
  });

  it('of a curve are few, its outermost points and corners among them, and its border keeps near their lines', () => {
    const [leaf] = objects(
      'object leaf',
      '  shape smooth (10, 20) (20, 8) (34, 12) (50, 20) (36, 30) (22, 28)',
    );
    const points = leaf?.pieces[0]?.points ?? [];
    expect(points.length).toBeGreaterThan(5);
    expect(points.length).toBeLessThanOrEqual(12);
    const xs = points.map(({ at }) => at.x);
    const box = planOf(
      'canvas 60 x 40 cm\nobject leaf\n  shape smooth (10, 20) (20, 8) (34, 12) (50, 20) (36, 30) (22, 28)',
    ).objects[0]?.outline.box;
    expect(Math.min(...xs)).toBeCloseTo(box?.left ?? NaN, 1);
    expect(Math.max(...xs)).toBeCloseTo(box?.right ?? NaN, 1);
    const [drop] = objects('object drop', '  shape path "M20 10 C40 10 40 30 20 30 C10 30 10 24 20 10 Z"');
    expect(places(drop)[0]).toBe('corner (20, 10)');
  });

  it('of a polygon of many corners are the twelve that carry it most', () => {
    const corners = Array.from({ length: 60 }, (_, index) => {
      const angle = (2 * Math.PI * index) / 60;
      const radius = index % 15 === 0 ? 18 : 8;
      return `(${(30 + radius * Math.sin(angle)).toFixed(4)}, ${(20 - radius * Math.cos(angle)).toFixed(4)})`;
    });
    const [star] = objects('object star', `  shape outline ${corners.join(' ')}`);
    const told = places(star);
    expect(told).toHaveLength(12);
    for (const tip of ['(30, 2)', '(48, 20)', '(30, 38)', '(12, 20)'])
      expect(told).toContain(`corner ${tip}`);
  });

  it('off the canvas are told by where the border crosses its edges', () => {
    const [post] = objects('object post', '  shape rectangle (20, 10) to (30, 50)');
    expect(post?.pieces[0]?.offCanvas).toBe(2);
    expect(places(post)).toEqual([
      'corner (20, 10)',
      'corner (30, 10)',
      'crosses the edge (30, 40)',
      'crosses the edge (20, 40)',
    ]);
    expect(post?.pieces[0]?.points.map(({ edge }) => edge)).toEqual([
      undefined,
      undefined,
      'bottom',
      'bottom',
    ]);
  });

  it('along the edges of the canvas cross nothing, and a shape over all of it or beyond has none', () => {
    const [wall, ...others] = objects(
      'object wall',
      '  shape rectangle (0, 0) to (60, 40)',
      'object sky',
      '  shape rectangle (-10, -10) to (80, 50)',
      'object moon',
      '  shape circle 5 at (-20, 10)',
    );
    expect(places(wall)).toEqual(['corner (0, 0)', 'corner (60, 0)', 'corner (60, 40)', 'corner (0, 40)']);
    expect(others).toEqual([]);
  });

  it('say what lies under something in front', () => {
    const [table] = objects(
      'object table',
      '  shape rectangle (10, 20) to (50, 30)',
      'object jug',
      '  shape rectangle (45, 10) to (55, 25)',
    );
    expect(table?.pieces[0]?.points.map(({ isCovered }) => isCovered)).toEqual([false, true, false, false]);
  });

  it('are numbered on through the shapes of an object, which are given whole as long as there is room', () => {
    const [fence] = objects(
      'object fence',
      '  shape rectangle (2, 10) to (4, 30)',
      '  repeat 14 every (4, 0)',
    );
    const numbers = fence?.pieces.flatMap(({ points }) => points.map(({ number }) => number)) ?? [];
    expect(numbers).toEqual(Array.from({ length: 24 }, (_, index) => index + 1));
    expect([fence?.pieces.length, fence?.more]).toEqual([6, 8]);
  });

  it('of the plan itself are the horizon, the focal point and where leads begin, turn and end', () => {
    const { places: named, divisions } = transferOf(
      planOf(
        'canvas 60 x 40 cm\ndivide thirds, diagonals\nfocus upper right\nhorizon 15\nlead kerb from (0, 40) through (20, 30) to focus',
      ),
    );
    expect(named.map(({ name, at }) => `${name} (${at.x}, ${Number(at.y.toFixed(2))})`)).toEqual([
      'horizon, left end (0, 15)',
      'horizon, right end (60, 15)',
      'focal point (40, 13.33)',
      'kerb, its beginning (0, 40)',
      'kerb, on its way (20, 30)',
      'kerb, its end (40, 13.33)',
    ]);
    expect(divisions.map(({ system }) => system)).toEqual(['thirds', 'diagonals']);
    expect(divisions[0]?.uprights).toEqual([20, 40]);
    expect(divisions[1]?.slopes.length).toBe(6);
  });
});
