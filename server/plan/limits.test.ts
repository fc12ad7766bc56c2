import { describe, expect, it } from 'vitest';
import { objectNamed, planOf } from '../../tests/support/plan.js';
import { MOST_REPEATED_POINTS, pointsOf } from './build-outline.js';
import { toldBy } from './test-support.js';
import { usualGroups } from './values.js';

const CANVAS = 'canvas  80 x 50 cm';
const OBJECT = `${CANVAS}\nobject  jug\n  shape   rectangle 8 x 6`;

/** What is said of the words between `[` and `]`. */
function expectTold(marked: string, message: string | RegExp): void {
  const text = marked.replace(/[[\]]/g, '');
  const lines = marked.split('\n');
  const line = lines.findIndex((words) => words.includes('['));
  const start = lines[line]?.indexOf('[') ?? -1;
  const end = (lines[line]?.indexOf(']') ?? 0) - 1;
  const { problems } = planOf(text);
  expect(problems).toEqual([
    expect.objectContaining({
      code: 'number out of range',
      message: expect.stringMatching(message) as string,
      location: { line, start, end },
    }),
  ]);
}

describe('numbers that make no sense where they stand', () => {
  it.each([
    ['canvas  [0.9 mm x 40 cm]', /from 1 mm to 100 m/],
    ['canvas  [40 cm x 101 m]', /from 1 mm to 100 m/],
    [`${OBJECT}\n  size    [0] x 3`, /larger than nothing/],
    [`${OBJECT}\n  size    [-4 cm] high`, /larger than nothing/],
    [`${CANVAS}\nobject  jug\n  shape   circle [0]`, /larger than nothing/],
    [`${CANVAS}\nobject  jug\n  shape   ellipse 3 x [-2]`, /larger than nothing/],
    [`${OBJECT}\n  resize  [0%]`, /more than 0 % and at most 10000 %/],
    [`${OBJECT}\n  resize  50% x [-50%]`, /more than 0 %/],
    [`${OBJECT}\n  at      [(999999999 m, 0)]`, /too far from the canvas/],
    [`${OBJECT}\n  repeat  [501] every (1, 1)`, /1 to 500 times/],
    [`${OBJECT}\n  repeat  [2½] every (1, 1)`, /whole numbers/],
    [`${OBJECT}\n  repeat  3 every (1, 1) resized [0%]`, /more than 0 %/],
    [`${OBJECT}\n  value   [0.9]`, /steps 1 \(darkest\) to 5/],
    [`${CANVAS}\nbudget  value dark [101%]`, /between 0 % and 100 %/],
    [`${CANVAS}\nbudget  value dark 30% within [-5%]`, /between 0 % and 100 %/],
    [`${CANVAS}\nrule    bare ground limit [120%]`, /between 0 % and 100 %/],
    [`${CANVAS}\nsketch  "a.png"\n  opacity [140%]`, /between 0 % and 100 %/],
    [`${CANVAS}\nsitting "one"\n  fat     [101%]`, /between 0 % and 100 %/],
    [`${CANVAS}\n[grid    0 x 4]`, /1 to 200 whole squares/],
    [`${CANVAS}\ngrid    every [-2 cm]`, /larger than nothing/],
    [`${CANVAS}\n[grid    every 0.1 mm]`, /more than 200 one way/],
    [`${CANVAS}\n[away    2027-01-02 to 2026-12-24]`, /end before they begin/],
    [`${CANVAS}\nsitting "one"\n  photo   "a.jpg"\n    grey    ([3 cm], 4)`, /in pixels or in %, not in cm/],
    [`${CANVAS}\npalette\n  [tube    0 ml]`, /more than nothing/],
    [
      `${CANVAS}\npalette\n  paint   rose full #7a1030 tint #e8a0b0 at [0 to 9]`,
      /parts of paint and of white/,
    ],
  ])('%s', (marked, message) => expectTold(marked, message));

  it('draws once what has too many points to be repeated so often', () => {
    const points = Array.from({ length: 500 }, (_, i) => `(${i}, ${(i * i) % 71})`).join(' ');
    const text = `${CANVAS}\nobject  hedge\n  shape   outline ${points}\n  repeat  TIMES every (1, 1)`;
    const often = planOf(text.replace('TIMES', '401'));
    expect(toldBy(often)).toEqual([expect.stringContaining('it is drawn once')]);
    expect(pointsOf(objectNamed(often, 'hedge').outline)).toBe(500);
    expect(toldBy(planOf(text.replace('TIMES', String(MOST_REPEATED_POINTS / 500 / 100))))).toEqual([]);
  });
});

describe('numbers at their limits', () => {
  it.each([
    'canvas  1 mm x 100 m',
    `${OBJECT}\n  value   5`,
    `${OBJECT}\n  value   1½`,
    `${CANVAS}\nbudget  value dark 100% within 0%`,
    `${OBJECT}\n  repeat  500 every (0, 0)`,
    `${CANVAS}\nscale   11`,
    `${CANVAS}\nscale   2`,
  ])('%s', (text) => {
    expect(toldBy(planOf(text))).toEqual([]);
  });
});

describe('units of two sides', () => {
  const boxOf = (shape: string): readonly number[] => {
    const { left, top, right, bottom } = objectNamed(
      planOf(`${CANVAS}\nobject  jug\n  shape   ${shape}`),
      'jug',
    ).outline.box;
    return [right - left, bottom - top].map((side) => Math.round(side * 1e6) / 1e6);
  };

  it.each([
    ['rectangle 200 x 30 mm', [20, 3]],
    ['rectangle 200 mm x 30', [20, 3]],
    ['rectangle 10 x 50%', [10, 25]],
    ['rectangle 50% x 10', [40, 10]],
    ['rectangle 1 in x 1 cm', [2.54, 1]],
    ['rectangle 1/2 x 7 1/2', [0.5, 7.5]],
    ['ellipse 10% x 10%', [8, 5]],
    ['circle 10%', [8, 8]],
  ])('%s', (shape, sides) => {
    expect(boxOf(shape)).toEqual(sides);
  });
});

describe('the groups of a scale', () => {
  it.each([
    [2, ['1-1', '2-2']],
    [3, ['1-1', '2-2', '3-3']],
    [5, ['1-2', '3-3', '4-5']],
    [6, ['1-2', '3-4', '5-6']],
    [9, ['1-3', '4-6', '7-9']],
    [11, ['1-4', '5-7', '8-11']],
  ])('of %i steps are thirds, or what five steps usually have', (steps, groups) => {
    expect(usualGroups(steps).map(({ from, to }) => `${from}-${to}`)).toEqual(groups);
  });

  it('have a name each, and a refused one is not unknown to the budget as well', () => {
    const plan = planOf(
      `${CANVAS}\nscale   5\n  group   dark 1-2, dark 3, sky 4-6\nbudget  value dark 30%, sky 20%`,
    );
    expect(plan.problems.map(({ code }) => code)).toEqual(['repeated name', 'number out of range']);
    expect(plan.valueBudget?.shares.map(({ name }) => name)).toEqual(['dark']);
  });
});
