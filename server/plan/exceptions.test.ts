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

const WITH_LEADS = `${CANVAS}\nlead    a from left edge to (40, 25)\nlead    c from right edge to (40, 25)\ncue     "the  Smell of rain"\ncue     "the smell of bread"`;

test('an exception is for leads and objects of the name, whichever the rule is about', () => {
  const plan = planOf(`${WITH_LEADS}\nallow   lead past focus for a, c because "they graze it"`);
  expect(plan.problems).toEqual([]);
  expect(plan.allowances).toMatchObject([{ objects: [0], leads: [0, 1], cues: [] }]);
});

test('an exception for a cue knows it by its first words', () => {
  const rule = 'allow   cue not carried for';
  const cuesOf = (words: string) => planOf(`${WITH_LEADS}\n${rule} "${words}" because "so"`).allowances;
  expect(cuesOf('The smell of r')).toMatchObject([{ objects: [], leads: [], cues: [0] }]);
  expect(cuesOf('the smell')).toMatchObject([{ cues: [0, 1] }]);
  for (const words of ['a smell', '']) {
    const plan = planOf(`${WITH_LEADS}\n${rule} "${words}" because "so"`);
    expect(plan.allowances).toEqual([]);
    expect(toldBy(plan)).toEqual([expect.stringContaining('No cue of this plan begins with these words.')]);
  }
});

test('an exception for a lead that is told otherwise is none, and its name is known', () => {
  const plan = planOf(`${CANVAS}\nlead    beam from a to a\nallow   lead past focus for beam because "so"`);
  expect(plan.allowances).toEqual([]);
  expect(plan.problems.map(({ code }) => code)).not.toContain('unknown name');
});

test('a name that neither an object nor a lead has gets the nearest that one has', () => {
  const plan = planOf(
    `${WITH_LEADS}\nlead    kerb from left edge to (40, 25)\nallow   way out for kreb because "so"`,
  );
  expect(toldBy(plan)).toEqual([
    'There is no object or lead called `kreb` in this plan. Did you mean `kerb`?',
  ]);
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
