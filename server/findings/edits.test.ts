import { describe, expect, it } from 'vitest';
import { mended, objectNamed, planOf } from '../../tests/support/plan.js';
import { boxCentre, boxHeight, boxWidth } from '../plan/geometry/point.js';
import type { Plan, PlanObject } from '../plan/plan.js';
import {
  focusEdit,
  moveEdit,
  placeEdit,
  planeEdit,
  roleEdit,
  type Rounding,
  sizeEdit,
  stepEdit,
} from './edits.js';
import type { FixEdit } from './finding.js';

const CANVAS = 'canvas  80 x 60 cm';

type Edit = (plan: Plan, object: PlanObject) => readonly FixEdit[] | undefined;

/** The plan with an object `jug` made of the lines, and what the edit makes of those lines. */
function edited(lines: string, edit: Edit, heading = 'object  jug', canvas = CANVAS) {
  const text = `${canvas}\n${heading}\n${lines}`;
  const before = planOf(text);
  const edits = edit(before, objectNamed(before, 'jug'));
  if (!edits) return undefined;
  const after = mended(text, { edits });
  return {
    lines: after.split('\n').slice(1).join('\n'),
    before: objectNamed(before, 'jug'),
    after: objectNamed(planOf(after), 'jug'),
  };
}

describe('a step, a plane and a role', () => {
  it.each([
    ['  value   4', '  value   3'],
    ['  value   4 1/2  // the rim', '  value   3  // the rim'],
    ['  plane   middle', '  plane   middle\n  value   3'],
    ['  value   1\n  value   2', '  value   1\n  value   3'],
  ])('%j on step 3 is %j', (lines, expected) => {
    const result = edited(lines, (_, object) => stepEdit(object, 3));
    expect(result?.lines).toBe(`object  jug\n${expected}`);
    expect(result?.after.step).toBe(3);
  });

  it('gives a plane, and changes the one that is given', () => {
    const nearer: Edit = (_, object) => planeEdit(object, 'foreground');
    expect(edited('  value   4', nearer)?.lines).toBe('object  jug\n  value   4\n  plane   foreground');
    expect(edited('  plane   background', nearer)?.lines).toBe('object  jug\n  plane   foreground');
  });

  it.each([
    ['object  jug', 'secondary', 'object  jug, secondary'],
    ['object  jug, dominant  // hers', 'secondary', 'object  jug, secondary  // hers'],
    ['object  jug dominant', undefined, 'object  jug'],
    ['object  jug, dominant', 'minor', 'object  jug, minor'],
  ] as const)('%j with the role %s is %j', (heading, role, expected) => {
    const result = edited('  value   4', (_, object) => roleEdit(object, role), heading);
    expect(result?.lines).toBe(`${expected}\n  value   4`);
    expect(result?.after.role).toBe(role);
  });

  it('has nothing to do for the role that the object has', () => {
    expect(
      edited('  value   4', (_, object) => roleEdit(object, 'minor'), 'object  jug, minor'),
    ).toBeUndefined();
  });

  it('puts the edits of one fix together', () => {
    const result = edited('  shape   circle 8', (_, object) => [
      ...planeEdit(object, 'foreground'),
      ...stepEdit(object, 5),
    ]);
    expect(result?.lines).toBe('object  jug\n  shape   circle 8\n  plane   foreground\n  value   5');
  });
});

describe('a move by 3 cm to the right and 2 cm up', () => {
  const move: Edit = (plan, object) => moveEdit(plan, object, 3, -2);

  it.each([
    [
      'at with coordinates',
      '  shape   circle 8\n  at      (12, 20)',
      '  shape   circle 8\n  at      (15, 18)',
    ],
    [
      'units as they are written',
      '  shape   circle 8\n  at      (10 in, 50%)',
      '  shape   circle 8\n  at      (11.18 in, 46.67%)',
    ],
    [
      'a relative place',
      '  shape   circle 8\n  at      lower right by bottom',
      '  shape   circle 8\n  at      lower right, 3 cm right, 2 cm up by bottom',
    ],
    [
      'a place that is moved already',
      '  shape   circle 8\n  at      centre, 1 cm left, 10 mm down',
      '  shape   circle 8\n  at      centre, 2 cm right, 10 mm up',
    ],
    [
      'a move that becomes shorter, in its unit',
      '  shape   circle 8\n  at      centre, 10% left',
      '  shape   circle 8\n  at      centre, 6.25% left, 2 cm up',
    ],
    ['a shape’s own place', '  shape   ellipse 8 x 5 at (12, 20)', '  shape   ellipse 8 x 5 at (15, 18)'],
    [
      'both corners of a rectangle',
      '  shape   rectangle (4, 20) to (12, 30)',
      '  shape   rectangle (7, 18) to (15, 28)',
    ],
    [
      'a rectangle that begins in a corner of the canvas',
      '  shape   rectangle upper left corner to (12, 30)',
      '  shape   rectangle upper left corner to (12, 30)\n  at      (9, 13)',
    ],
    ['a shape in the middle of the canvas', '  shape   circle 8', '  shape   circle 8\n  at      (43, 28)'],
    [
      'an outline, which is not rewritten',
      '  shape   outline (10, 10) (20, 10)\n    (20, 24)\n  turn    90',
      '  shape   outline (10, 10) (20, 10)\n    (20, 24)\n  turn    90\n  at      (18, 15)',
    ],
    [
      'several shapes',
      '  shape   circle 8 at (10, 10)\n  shape   circle 8 at (30, 10)',
      '  shape   circle 8 at (10, 10)\n  shape   circle 8 at (30, 10)\n  at      (23, 8)',
    ],
    [
      'a repeated shape with a place of its own',
      '  shape   circle 8 at (10, 10)\n  repeat  3 every (10, 2)',
      '  shape   circle 8 at (13, 8)\n  repeat  3 every (10, 2)',
    ],
  ])('of %s', (_, lines, expected) => {
    const result = edited(lines, move);
    expect(result?.lines).toBe(`object  jug\n${expected}`);
    const before = boxCentre(result?.before.outline.box ?? { left: 0, top: 0, right: 0, bottom: 0 });
    const after = boxCentre(result?.after.outline.box ?? { left: 0, top: 0, right: 0, bottom: 0 });
    expect(after.x - before.x).toBeCloseTo(3, 2);
    expect(after.y - before.y).toBeCloseTo(-2, 2);
  });

  it('is not to be had without a shape, or for copies of an outline', () => {
    expect(edited('  value   3', move)).toBeUndefined();
    expect(edited('  shape   outline (1, 1) (9, 1) (5, 9)\n  repeat  3 every (10, 2)', move)).toBeUndefined();
  });

  it('touches one number only when it is along one axis', () => {
    const result = edited('  shape   circle 8 at (10.005, 10.005)', (plan, object) =>
      moveEdit(plan, object, 0, 1),
    );
    expect(result?.lines).toBe('object  jug\n  shape   circle 8 at (10.005, 11.01)');
  });
});

describe('a place in words', () => {
  it.each([
    ['  shape   circle 8\n  at      (12, 20) by bottom', '  shape   circle 8\n  at      focus by bottom'],
    ['  shape   circle 8 at (12, 20)', '  shape   circle 8 at focus'],
    ['  shape   circle 8', '  shape   circle 8\n  at      focus'],
    ['  shape   rectangle (4, 20) to (12, 30)', '  shape   rectangle (4, 20) to (12, 30)\n  at      focus'],
  ])('%j is %j', (lines, expected) => {
    const result = edited(lines, (_, object) => placeEdit(object, 'focus'), 'focus   centre\nobject  jug');
    expect(result?.lines).toBe(`focus   centre\nobject  jug\n${expected}`);
  });
});

describe('rounding', () => {
  const moved = (by: number, rounding: Rounding, lines = '  shape   circle 8\n  at      (12, 20)'): string =>
    edited(lines, (plan, object) => moveEdit(plan, object, by, 0, rounding))
      ?.lines.split('\n')
      .at(-1) ?? '';

  it.each([
    [0.123, 'nearest', '(12.12, 20)'],
    [0.123, 'onward', '(12.13, 20)'],
    [0.127, 'short', '(12.12, 20)'],
    [-0.123, 'onward', '(11.87, 20)'],
    [-0.123, 'short', '(11.88, 20)'],
    [0.3, 'onward', '(12.3, 20)'],
    [-0.3, 'short', '(11.7, 20)'],
  ] as const)('of a move by %f, %s, gives %s', (by, rounding, place) => {
    expect(moved(by, rounding)).toBe(`  at      ${place}`);
  });

  it('knows which way a move in words goes', () => {
    const place = (move: string): string => `  shape   circle 8\n  at      centre, ${move}`;
    expect(moved(-0.123, 'onward', place('1 cm left'))).toBe('  at      centre, 1.13 cm left');
    expect(moved(0.123, 'onward', place('1 cm left'))).toBe('  at      centre, 0.87 cm left');
    expect(moved(0.123, 'short', '  shape   circle 8\n  at      centre')).toBe(
      '  at      centre, 0.12 cm right',
    );
  });

  it('takes three places in metres', () => {
    const result = edited(
      '  shape   circle 0.2\n  at      (1, 1)',
      (plan, object) => moveEdit(plan, object, 0.1234, 0),
      'object  jug',
      'canvas  3 x 2 m',
    );
    expect(result?.lines).toContain('at      (1.123, 1)');
  });
});

describe('a size 1.25 times as large', () => {
  const larger: Edit = (plan, object) => sizeEdit(plan, object, 1.25);

  it.each([
    ['  shape   circle 8 at (12, 20)', '  shape   circle 10 at (12, 20)'],
    ['  shape   ellipse 10% x 5 in', '  shape   ellipse 12.5% x 6.25 in'],
    ['  shape   rectangle 8 x 4 cm', '  shape   rectangle 10 cm x 5 cm'],
    ['  shape   circle 8\n  size    20 x 12', '  shape   circle 8\n  size    25 x 15'],
    ['  shape   circle 8\n  size    20 cm high', '  shape   circle 8\n  size    25 cm high'],
    [
      '  shape   circle 8\n  size    20 x 12\n  resize  80% x 60%',
      '  shape   circle 8\n  size    20 x 12\n  resize  100% x 75%',
    ],
    [
      '  shape   outline (1, 1) (9, 1) (5, 9)\n  turn    90',
      '  shape   outline (1, 1) (9, 1) (5, 9)\n  turn    90\n  resize  125%',
    ],
    ['  shape   rectangle (4, 20) to (12, 30)', '  shape   rectangle (4, 20) to (12, 30)\n  resize  125%'],
  ])('%j is %j', (lines, expected) => {
    const result = edited(lines, larger);
    expect(result?.lines).toBe(`object  jug\n${expected}`);
    const [before, after] = [result?.before.outline.box, result?.after.outline.box];
    if (!before || !after) throw new Error('no outline');
    expect(boxWidth(after) / boxWidth(before)).toBeCloseTo(1.25, 6);
    expect(boxHeight(after) / boxHeight(before)).toBeCloseTo(1.25, 6);
  });

  it('rounds the way that is asked for', () => {
    const words = (factor: number, rounding: Rounding): string | undefined =>
      edited('  shape   circle 7', (plan, object) => sizeEdit(plan, object, factor, rounding))?.lines;
    expect(words(1.1111, 'onward')).toContain('circle 7.78');
    expect(words(1.1111, 'short')).toContain('circle 7.77');
    expect(words(0.9123, 'onward')).toContain('circle 6.38');
    expect(words(0.9123, 'short')).toContain('circle 6.39');
  });

  it('is not to be had for nothing', () => {
    expect(edited('  value   3', larger)).toBeUndefined();
    expect(edited('  shape   circle 7', (plan, object) => sizeEdit(plan, object, 0))).toBeUndefined();
  });
});

describe('the focal point', () => {
  const JUG = 'object  jug\n  shape   circle 8';

  it.each([
    [`${CANVAS}\nfocus   centre  // for now\n${JUG}`, `${CANVAS}\nfocus   upper right  // for now\n${JUG}`],
    [`${CANVAS}\n${JUG}`, `${CANVAS}\nfocus   upper right\n${JUG}`],
  ])('in %j', (text, expected) => {
    const edits = focusEdit(planOf(text), 'upper right');
    expect(edits && mended(text, { edits })).toBe(expected);
    expect(planOf(expected).focus?.crossing?.name).toBe('upper right');
  });

  it('keeps one that can’t be placed, and has no place in an empty plan', () => {
    expect(focusEdit(planOf(`${CANVAS}\nfocus   hull\n${JUG}`), 'upper right')).toBeUndefined();
    expect(focusEdit(planOf(CANVAS), 'upper right')).toBeUndefined();
  });
});
