import { expect, test } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { toldBy } from './test-support.js';

const CANVAS = 'canvas  80 x 50 cm\nobject  a\nobject  b';

test('an exception for a name that nothing has is none, least of all for the whole plan', () => {
  const plan = planOf(`${CANVAS}\nallow   off the canvas for brid because "it has flown"`);
  expect(plan.allowances).toEqual([]);
  expect(toldBy(plan)).toEqual([expect.stringContaining('`brid`')]);
});

test('an exception under an object is for that object and for those it names', () => {
  const plan = planOf(`${CANVAS}\n  allow   hidden object for a because "behind the bread"`);
  expect(plan.allowances.map(({ objects }) => objects)).toEqual([[1, 0]]);
});

test('of two settings of one rule the last counts', () => {
  const plan = planOf(`${CANVAS}\nrule    Bare Ground hint limit 5%\nrule    bare ground limit 7%`);
  expect(plan.ruleSettings).toEqual([
    {
      rule: 'bare ground',
      limit: { value: 0.07, unit: 'part', location: { line: 4, start: 26, end: 28 } },
      location: { line: 4, start: 8, end: 19 },
    },
  ]);
  expect(plan.problems.map(({ code, location }) => [code, location.line])).toEqual([
    ['repeated statement', 3],
  ]);
});

test.each([
  ['7.5%', 0.075, 'part'],
  ['40 degrees', 40, 'degrees'],
  ['40°', 40, 'degrees'],
  ['2', 2, 'number'],
] as const)('a limit of %s is %f, as a %s', (words, value, unit) => {
  const plan = planOf(`${CANVAS}\nrule    bare ground limit ${words}`);
  expect(plan.ruleSettings[0]?.limit).toMatchObject({ value, unit });
});

test.each(['140%', '-1', '200 degrees'])('a limit of %s is refused', (words) => {
  const plan = planOf(`${CANVAS}\nrule    bare ground limit ${words}`);
  expect(plan.ruleSettings[0]?.limit).toBeUndefined();
  expect(plan.problems.map(({ code }) => code)).toEqual(['number out of range']);
});
