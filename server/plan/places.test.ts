import { describe, expect, it } from 'vitest';
import { objectNamed, planOf } from '../../tests/support/plan.js';
import { toldBy } from './test-support.js';

const TOWER =
  'canvas  80 x 50 cm\ndivide  own\n  uprights 7 1/2, 25%, 3/4, 31 cm\n  levels  1/2\nobject  tower\n  shape   rectangle (10, 10) to (20, 40)';

function middleOf(place: string): readonly number[] {
  const plan = planOf(`${TOWER}\nobject  dot\n  shape   circle 2 at ${place}`);
  expect(toldBy(plan)).toEqual([]);
  const { left, right, top, bottom } = objectNamed(plan, 'dot').outline.box;
  return [(left + right) / 2, (top + bottom) / 2].map((side) => Math.round(side * 1e6) / 1e6);
}

describe('lengths along something', () => {
  it.each([
    ['left edge at 1/4', [0, 12.5]],
    ['left edge at 7 1/2', [0, 7.5]],
    ['top edge at 50 mm', [5, 0]],
    ['bottom edge at -10%', [-8, 50]],
    ['top of tower at 20%', [12, 10]],
    ['right side of tower at 3 cm', [20, 13]],
    ['left side of tower at ½', [10, 25]],
    ['left edge of tower', [10, 25]],
    ['tower, 10% right, 10% down', [23, 30]],
    ['(1/2, 7 1/2)', [0.5, 7.5]],
  ])('%s', (place, at) => {
    expect(middleOf(place)).toEqual(at);
  });

  it('own lines count a single division as part of the side, and a mixed number as a length', () => {
    expect(
      planOf(TOWER)
        .divisions[0]?.lines.map(({ from }) => from.x)
        .slice(0, 4),
    ).toEqual([7.5, 20, 31, 60]);
    expect(planOf('canvas  80 x 50 cm\nhorizon 1/4').horizon?.value).toBe(12.5);
  });
});

describe('crossings', () => {
  it.each(['crossing 2 1 of golden', 'upper right of golden', 'crossing 2 1'])(
    '`%s` is found in the first division that has it',
    (place) => {
      const plan = planOf(`canvas  80 x 50 cm\ndivide  armature, golden\nfocus   ${place}`);
      expect(toldBy(plan)).toEqual([]);
      expect(plan.focus?.at.x).toBeCloseTo(49.44, 2);
    },
  );

  it('of several divisions, a bare name is that of the first', () => {
    const plan = planOf('canvas  90 x 60 cm\ndivide  armature, golden\nfocus   upper right');
    expect(plan.focus?.at.x).toBeCloseTo(60, 9);
    expect(plan.focus?.crossing).toEqual({ system: 'armature', name: 'upper right' });
  });

  it('that a division lacks are told with those it has', () => {
    const plan = planOf('canvas  80 x 50 cm\ndivide  root 2\nfocus   upper centre of root 2');
    expect(toldBy(plan)).toEqual([
      '`root 2` has no crossing `upper centre` on this canvas; there are `upper left`, `upper right`, `lower left` and `lower right`.',
    ]);
    expect(toldBy(planOf('canvas  80 x 50 cm\nfocus   upper left of diagonals'))).toEqual([
      'The canvas is not divided by diagonals: add it to `divide`.',
    ]);
    expect(toldBy(planOf('canvas  50 x 50 cm\ndivide  rabatment\nfocus   upper left of rabatment'))).toEqual([
      'A square has no rabatment: its sides are alike.',
      '`rabatment` has no crossing `upper left` on this canvas.',
    ]);
  });
});

describe('what is put in place', () => {
  const boxOf = (...lines: readonly string[]): readonly number[] => {
    const plan = planOf(
      ['canvas  80 x 50 cm', 'object  flag', ...lines.map((line) => `  ${line}`)].join('\n'),
    );
    const { left, top, right, bottom } = objectNamed(plan, 'flag').outline.box;
    return [left, top, right, bottom].map((side) => Math.round(side * 1e6) / 1e6);
  };
  const FLAG = 'shape   outline (0, 0) (6, 0) (0, 2)';

  it('turns clockwise, about its middle', () => {
    const plan = planOf(`canvas  80 x 50 cm\nobject  flag\n  ${FLAG}\n  turn    90 degrees`);
    const [ring] = objectNamed(plan, 'flag').outline.rings;
    expect([...(ring ?? [])].map((side) => Math.round(side * 1e6) / 1e6)).toEqual([4, -2, 4, 4, 2, -2]);
  });

  it.each([
    [
      ['by top', 'at      (40, 25) by top'],
      [37, 25, 43, 27],
    ],
    [
      ['by upper left', 'at      (40, 25) by upper left'],
      [40, 25, 46, 27],
    ],
    [
      ['by its middle', 'at      (40, 25)'],
      [37, 24, 43, 26],
    ],
  ])('stands %s', ([, line = ''], box) => {
    expect(boxOf(FLAG, line)).toEqual(box);
  });

  it('is mirrored, sized, resized, turned, placed and repeated in this order, whatever the order of the lines', () => {
    const lines = [
      'repeat  2 every (10, 0)',
      'at      (40, 25) by left',
      'turn    90',
      'resize  50%',
      'size    12 wide',
      'mirror  left to right',
      FLAG,
    ];
    expect(boxOf(...lines)).toEqual([40, 22, 52, 28]);
    expect(boxOf(...lines.toReversed())).toEqual([40, 22, 52, 28]);
  });

  it('has one size: of two lines the last counts, whichever way each gives it', () => {
    expect(boxOf(FLAG, 'size    20 x 20', 'size    12 wide')).toEqual([-3, -1, 9, 3]);
    expect(boxOf(FLAG, 'size    12 wide', 'size    20 x 20')).toEqual([-7, -9, 13, 11]);
  });
});

it('a lead of which a place can’t be told is left out', () => {
  const plan = planOf(`${TOWER}\nlead    rail from twoer through (3, 4) to (5, 6)`);
  expect(plan.leads).toEqual([]);
  expect(toldBy(plan)).toEqual([expect.stringContaining('`twoer`')]);
});

it('notes stay with what they stand under', () => {
  const plan = planOf(
    'note    "one"\ncanvas  80 x 50 cm\n  note    "two"\nobject  a\n  note    "three"\n  note    "four"',
  );
  const words = (notes: readonly { readonly value: string }[]) => notes.map(({ value }) => value);
  expect(words(plan.notes)).toEqual(['one']);
  expect(words(plan.canvas.notes)).toEqual(['two']);
  expect(words(plan.objects[0]?.notes ?? [])).toEqual(['three', 'four']);
});
