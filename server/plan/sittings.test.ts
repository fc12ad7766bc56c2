import { expect, test } from 'vitest';
import { parse } from '../../grammar/index.js';
import { planOf } from '../../tests/support/plan.js';
import { resolvePlan } from './resolve.js';

const PLAN = `canvas  80 x 50 cm
object  sky
object  barn
sitting "Block in" on 2026-12-01
  works   sky, barn
  layer   block-in, lean
  film    0.1 mm
  medium  alkyd
  task    "flat values only"
  photo   "record/01.jpg"
    corners (12, 8) (1900, 20) (1880, 1200) (30, 1190)
    grey    (96, 30%)
sitting "Glaze"
  fat     10%
due     2027-03-01
away    2026-12-24 to 2027-01-02
away    2027-01-06
grid    every 10 in`;

test('a sitting keeps what it works on, its layer, its film and its photograph', () => {
  const [first, second] = planOf(PLAN).sittings;
  expect(first).toMatchObject({
    title: 'Block in',
    date: '2026-12-01',
    works: [0, 1],
    layer: { value: 'block-in' },
    body: 'lean',
    filmThickness: { value: 0.1 },
    medium: { value: 'alkyd' },
    tasks: [{ value: 'flat values only' }],
    photo: {
      file: 'record/01.jpg',
      grey: { across: { value: 96, in: 'pixels' }, down: { value: 0.3, in: 'parts' } },
    },
    lines: { first: 3, last: 11 },
  });
  expect(first?.photo?.corners[2]).toEqual({
    across: { value: 1880, in: 'pixels' },
    down: { value: 1200, in: 'pixels' },
  });
  expect(second).toMatchObject({ title: 'Glaze', works: [], fatShare: { value: 0.1 } });
  expect(second?.date).toBeUndefined();
});

test('dates and the transfer grid stand beside the sittings', () => {
  const plan = planOf(PLAN);
  expect(plan.due?.value).toBe('2027-03-01');
  expect(plan.away.map(({ value }) => value)).toEqual([
    { from: '2026-12-24', to: '2027-01-02' },
    { from: '2027-01-06', to: '2027-01-06' },
  ]);
  expect(plan.transferGrid?.value).toEqual({ every: 25.4 });
  expect(planOf('grid    6 x 4').transferGrid?.value).toEqual({ columns: 6, rows: 4 });
});

test('files that the plan names are listed by kind', () => {
  const plan = planOf(`${PLAN}\nsketch  "idea.png"\nbased on "first.mahl"`);
  expect(plan.files.map(({ kind, path }) => [kind, path])).toEqual([
    ['photograph', 'record/01.jpg'],
    ['sketch', 'idea.png'],
    ['plan', 'first.mahl'],
  ]);
});

test('an object that a sitting names must be there', () => {
  const plan = planOf('canvas  8 x 5 cm\nobject  barn\nsitting "One"\n  works   bran');
  expect(plan.problems).toContainEqual(
    expect.objectContaining({
      code: 'unknown name',
      fix: { title: 'Change to `barn`', replacement: 'barn' },
    }),
  );
});

test('a day is kept with its place in the text', () => {
  const [sitting] = planOf(PLAN).sittings;
  expect(sitting?.dateLocation).toEqual({ line: 3, start: 22, end: 32 });
});

test('a day that is in no calendar is an error, and the sitting that has it is known to be faulty', () => {
  const text =
    'canvas  8 x 5 cm\nobject  barn\nsitting "One" on 2027-02-29\n  works   barn\nsitting "Two" on 2028-02-29';
  const tree = parse(text);
  expect(tree.problems).toMatchObject([{ line: 2, message: 'There is no such day in the calendar.' }]);
  expect(resolvePlan(tree).sittings).toMatchObject([
    { title: 'One', works: [0], faulty: true },
    { title: 'Two', date: '2028-02-29', works: [], faulty: false },
  ]);
  expect(resolvePlan(tree).sittings[0]?.date).toBeUndefined();
});

test('a sitting that works on something unknown is faulty', () => {
  const text = 'canvas  8 x 5 cm\nobject  barn\nsitting "One"\n  works   barn, bran\nsitting "Two"';
  expect(planOf(text).sittings.map(({ faulty }) => faulty)).toEqual([true, false]);
});
