import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/index.js';
import type { Plan, PlanProblem, ReadFile } from '../plan.js';
import { resolvePlan } from '../resolve.js';

const CANVAS = 'canvas 60 x 40 cm\n';

function readerOf(files: Readonly<Record<string, string | undefined>>): ReadFile {
  return (path) => {
    if (!(path in files)) return { ok: false, reason: 'There is no such file.' };
    const text = files[path];
    return text === undefined ? undefined : { ok: true, text };
  };
}

function planOf(text: string, files: Readonly<Record<string, string | undefined>>): Plan {
  return resolvePlan(parse(text), { readFile: readerOf(files) });
}

const toldOf = ({ severity, message, location }: PlanProblem): string =>
  `${severity} ${location.line}:${location.start} ${message}`;

describe('a base that can’t be had is one error, where the plan names it', () => {
  const own = 'plan "By day"\nbased on "a.mahl"\nobject x\n  at rack\n  colour ember\n';

  it.each<readonly [string, Readonly<Record<string, string | undefined>>, string]>([
    ['missing', {}, '`a.mahl` cannot be read. There is no such file.'],
    [
      'one of its own missing',
      { 'a.mahl': 'based on "old/b.mahl"\n' },
      '`old/b.mahl`, on which `a.mahl` is based, cannot be read. There is no such file.',
    ],
    [
      'no plan',
      { 'a.mahl': '<svg>\n<path/>\n</svg>' },
      '`a.mahl` is no plan: not one line of it can be read as a statement.',
    ],
    [
      'on itself',
      { 'a.mahl': 'based on "./a.mahl"\n' },
      '`a.mahl` is based on itself. Let it begin without `based on`, or from another plan.',
    ],
    [
      'a ring of two',
      { 'a.mahl': 'based on "x/b.mahl"', 'x/b.mahl': 'based on "../a.mahl"' },
      '`a.mahl` is based on `x/b.mahl` and that on `a.mahl` again: a ring without a beginning. Let one of them begin without `based on`.',
    ],
    [
      'a ring of three further on',
      {
        'a.mahl': 'based on "b.mahl"',
        'b.mahl': 'based on "c.mahl"',
        'c.mahl': 'based on "d.mahl"',
        'd.mahl': 'based on "b.mahl"',
      },
      '`b.mahl` is based on `c.mahl`, that on `d.mahl` and that on `b.mahl` again: a ring without a beginning. Let one of them begin without `based on`.',
    ],
    [
      'too long a row',
      Object.fromEntries(
        Array.from({ length: 12 }, (_, at) => [
          at === 0 ? 'a.mahl' : `${at}.mahl`,
          `based on "${at + 1}.mahl"\n${CANVAS}`,
        ]),
      ),
      'This builds on more than 10 plans, one on the next. Let it begin nearer to the first.',
    ],
    [
      'too much text',
      {
        'a.mahl': `based on "b.mahl"\n//${'x'.repeat(4_999_000)}`,
        'b.mahl': `based on "c.mahl"\n//${'y'.repeat(4_999_000)}`,
        'c.mahl': `${CANVAS}//${'z'.repeat(9_000)}`,
      },
      'The plans that this builds on are too long together: 10 million characters are the most.',
    ],
  ])('%s', (_, files, message) => {
    const plan = planOf(own, files);
    expect(plan.problems.map(toldOf)).toEqual([`error 1:9 ${message}`]);
    expect(plan.basedOn?.lacking).toBe('not to be had');
    expect(plan.objects.map(({ name }) => name)).toEqual(['x']);
  });

  it.each([
    ['itself', { 'a.mahl': 'based on "a.mahl"' }],
    ['one further on', { 'a.mahl': 'based on "b.mahl"', 'b.mahl': 'based on "a.mahl"' }],
  ])('a ring is told as a circle, not as a file that can’t be read: %s', (_, files) => {
    expect(planOf(own, files).problems.map(({ code }) => code)).toEqual(['circular reference']);
    expect(planOf(own, {}).problems.map(({ code }) => code)).toEqual(['unreadable file']);
  });

  it('ten plans in a row are none too many', () => {
    const files = Object.fromEntries(
      Array.from({ length: 10 }, (_, at) => [
        at === 0 ? 'a.mahl' : `${at}.mahl`,
        at === 9 ? `${CANVAS}object rack\ncolour ember #f00` : `based on "${at + 1}.mahl"`,
      ]),
    );
    const plan = planOf('based on "a.mahl"\nobject rack\n  colour ember', files);
    expect(plan.problems).toEqual([]);
    expect(plan.basedOn?.plans).toHaveLength(10);
    expect(plan.colours[0]?.location).toEqual({ line: 2, start: 7, end: 12, file: '9.mahl' });
  });

  it('a name that is no path from the plan is left to the reader of files', () => {
    const asked: string[] = [];
    for (const name of ['', '/etc/passwd', 'https://example.org/a.mahl', 'C:\\a.mahl', '..\\..\\a.mahl']) {
      resolvePlan(parse(`based on "${name.replaceAll('\\', '\\\\')}"`), {
        readFile: (path) => {
          asked.push(path);
          return { ok: false, reason: 'No.' };
        },
      });
    }
    expect(asked).toEqual(['', '/etc/passwd', 'https://example.org/a.mahl', 'C:\\a.mahl', '../../a.mahl']);
  });
});

it('while a base is on its way nothing is told that may come from it', () => {
  const own =
    'based on "a.mahl"\nwithout bread\nobject x\n  at upper left of thirds\n  colour ember\n  value 7';
  const waiting = planOf(own, { 'a.mahl': undefined });
  expect(waiting.problems).toEqual([]);
  expect(waiting.basedOn?.lacking).toBe('on its way');
  const further = planOf(own, { 'a.mahl': 'based on "b.mahl"', 'b.mahl': undefined });
  expect(further.problems).toEqual([]);
  const there = planOf(own, {
    'a.mahl': `${CANVAS}divide thirds\nscale 7\ncolour ember #f00\nobject bread`,
  });
  expect(there.problems).toEqual([]);
  expect(there.basedOn?.lacking).toBeUndefined();
});

describe('what is wrong in a base', () => {
  it('is one error, with the number of errors, the first of them, and the way to each', () => {
    const base = `${CANVAS}// a remark\ncolour soot #2b2a2\nobjct rack\nobject wall\n  at nowhere\n  value 9\n`;
    const plan = planOf('\nbased on "a.mahl"\nobject wall\n  at (3, 4)', { 'a.mahl': base });
    expect(plan.problems.map(toldOf)).toEqual([
      'error 1:9 `a.mahl`, on which this builds, has 3 errors, the first on line 3: A colour with `#` has three or six digits, 0-9 and a-f, such as `#2f6f73`.',
    ]);
    const [problem] = plan.problems;
    expect(problem?.from).toMatchObject({ file: 'a.mahl', line: 2 });
    expect(problem?.related.map(({ location }) => [location.file, location.line])).toEqual([
      ['a.mahl', 2],
      ['a.mahl', 3],
      ['a.mahl', 6],
    ]);
  });

  it('may be the plan’s own doing', () => {
    const plan = planOf('based on "a.mahl"\nscale 3', { 'a.mahl': `${CANVAS}object wall\n  value 5` });
    expect(plan.problems.map(({ message }) => message)).toEqual([
      '`a.mahl`, on which this builds, has an error on line 3: The scale has steps 1 (darkest) to 3 (lightest), so there is no value 5.',
    ]);
  });

  it('and only a warning is told with where it comes from', () => {
    const base = `${CANVAS}horizon 3\nhorizon 4\nfocus upper left\nobject bell\n  shape circle 2 at focus\nlead rope from upper right to bell`;
    const plan = planOf('based on "a.mahl"\nobject bell\n  at upper right', { 'a.mahl': base });
    expect(plan.problems.map(toldOf)).toEqual([
      'warning 0:9 `rope` starts where it aims, so it leads nowhere. Let it come `from` a place farther off (from `a.mahl`, line 7).',
    ]);
    expect(plan.problems[0]?.from).toEqual({ file: 'a.mahl', line: 6, start: 5, end: 9 });
  });
});

it('without a base there is nothing to leave out', () => {
  expect(planOf(`${CANVAS}without rack, wall`, {}).problems.map(toldOf)).toEqual([
    'error 1:0 This plan builds on no other, so there is nothing to leave out. Say first what it is `based on`.',
  ]);
  // What it is based on can’t be read, which is told there.
  expect(planOf(`based on\n${CANVAS}without rack`, {}).problems).toEqual([]);
});

describe('what a base names lies where the base lies', () => {
  it('parts, photographs and sketches', () => {
    const asked: string[] = [];
    const files: Readonly<Record<string, string>> = {
      'old/oven.mahl': `based on "older/first.mahl"\nobject peel\n  shape from "../parts/tools.svg"\nsketch "idea.png"`,
      'old/older/first.mahl': `${CANVAS}sitting "One"\n  photo "one.jpg"\nobject rack\n  shape from "./rack.svg"`,
    };
    const plan = resolvePlan(parse('based on "old/oven.mahl"\nobject rack\n  value 2'), {
      readFile: (path) => {
        asked.push(path);
        const text = files[path];
        return text === undefined ? undefined : { ok: true, text };
      },
    });
    expect(asked).toEqual(['old/oven.mahl', 'old/older/first.mahl', 'old/older/rack.svg', 'parts/tools.svg']);
    expect(plan.sketch?.file).toBe('old/idea.png');
    expect(plan.sittings[0]?.photo?.file).toBe('old/older/one.jpg');
    expect(plan.objects.map(({ name, waiting }) => [name, waiting])).toEqual([
      ['rack', true],
      ['peel', true],
    ]);
  });
});

it('places say in which text they stand', () => {
  const base = '\ufeffplan "Oven"\r\ncanvas 60 x 40 cm\r\nobject rack\r\n  value 3\r\n  plane background\r\n';
  const plan = planOf('based on "a.mahl"\r\nobject rack\r\n  value 2\r\n', { 'a.mahl': base });
  expect(plan.title?.location).toEqual({ line: 0, start: 5, end: 11, file: 'a.mahl' });
  expect(plan.canvas.location).toMatchObject({ line: 1, file: 'a.mahl' });
  const [rack] = plan.objects;
  expect(rack?.location).toEqual({ line: 1, start: 7, end: 11 });
  expect(rack?.valueLocation).toEqual({ line: 2, start: 2, end: 9 });
  expect(rack?.lines).toEqual({ first: 1, last: 2 });
  expect(rack?.plane).toBe('background');
  expect(rack?.node.children.map(({ file, line }) => [file, line])).toEqual([
    [undefined, 2],
    ['a.mahl', 4],
  ]);
});

it('of the version of the language and of what a base is based on nothing is taken', () => {
  const plan = planOf('based on "a.mahl"', { 'a.mahl': `mahl 1\n${CANVAS}` });
  expect(plan.statements.map(({ statement }) => statement.kind)).toEqual(['based on', 'canvas']);
  expect(plan.problems).toEqual([]);
});
