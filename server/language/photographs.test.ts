import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { reasonInWords } from '../../grammar/index.js';
import type { SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';
import type { PictureBytes } from '../photograph/gather.js';
import { PlanPhotographs } from './photographs.js';

const plan = 'file:///studio/plan.mahl';
const other = 'file:///studio/other.mahl';
const wish = (path: string, proportion = 1.5): Squaring => ({ path, corners: [], proportion });

/** Where files lie, by their paths in the studio; what is measured answers with what they hold. */
let files: Map<string, string>;
let read: string[];
let measured: string[];
let changed: string[];
let shown: string[];
let stop: () => void;
/** Measuring waits for these, when there are any. */
let gates: (() => void)[];
let isGated: boolean;
let photographs: PlanPhotographs;

function open(isTold = true): PlanPhotographs {
  return new PlanPhotographs({
    fetch: (uri): Promise<PictureBytes> => {
      const path = uri.replace('file:///studio/', '');
      read.push(path);
      const content = files.get(path);
      return Promise.resolve(
        content === undefined
          ? { ok: false, reason: 'There is no such file.' }
          : { ok: true, bytes: new TextEncoder().encode(content) },
      );
    },
    square: async (bytes, squaring, options): Promise<SquaredAnswer> => {
      const content = new TextDecoder().decode(bytes);
      if (isGated) {
        await new Promise<void>((resolve) => {
          gates.push(resolve);
          options?.signal?.addEventListener('abort', () => resolve());
        });
      }
      if (options?.signal?.aborted) return { ok: false, reason: 'Measuring was stopped.' };
      measured.push(`${content} ${squaring.proportion}`);
      return { ok: false, reason: content };
    },
    folders: () => ['file:///studio'],
    changed: (uris) => changed.push(...uris),
    isTold,
    show: (stopAll) => {
      stop = stopAll;
      shown.push('begin');
      return {
        at: (path, part) => shown.push(`${path} ${Math.round(100 * part)}`),
        end: () => shown.push('end'),
      };
    },
    settleMilliseconds: 1,
  });
}

beforeEach(() => {
  files = new Map([
    ['1.jpg', 'one'],
    ['2.jpg', 'two'],
  ]);
  [read, measured, changed, shown, gates, isGated] = [[], [], [], [], [], false];
  photographs = open();
});
// What a test has left to be measured is not to reach into the next.
afterEach(async () => {
  photographs.stop();
  gates.forEach((pass) => pass());
  if (shown.length > 0) await idle();
});

/** What a plan is answered that asks for these. */
const ask = (paths: readonly string[], proportion = 1.5, of = plan): readonly (string | undefined)[] => {
  const { squared } = photographs.photographsFor(of);
  return paths.map((path) => {
    const answer = squared(wish(path, proportion));
    return answer && !answer.ok ? reasonInWords(answer.reason) : undefined;
  });
};
const told = (times: number) => vi.waitFor(() => expect(changed.length).toBeGreaterThanOrEqual(times));
/** A hundred photographs take their time on a busy machine. */
const patient = { timeout: 10_000 };
const idle = () => vi.waitFor(() => expect(shown.at(-1)).toBe('end'), patient);

describe('a photograph that a plan names', () => {
  it('is on its way at first, and the plan is told when it is measured', async () => {
    expect(ask(['1.jpg'])).toEqual([undefined]);
    await told(1);
    expect(changed).toEqual([plan]);
    expect(ask(['1.jpg'])).toEqual(['one']);
    expect(measured).toEqual(['one 1.5']);
  });

  it('is measured with all others that the plan names', async () => {
    expect(ask(['1.jpg', '2.jpg'])).toEqual([undefined, undefined]);
    await idle();
    expect(ask(['1.jpg', '2.jpg'])).toEqual(['one', 'two']);
  });

  it('is not measured again while neither it nor its squaring changes', async () => {
    ask(['1.jpg']);
    await idle();
    for (let keys = 0; keys < 5; keys++) expect(ask(['1.jpg'])).toEqual(['one']);
    ask(['1.jpg'], 1.5, other);
    await idle();
    expect([read, measured]).toEqual([['1.jpg'], ['one 1.5']]);
    expect(ask(['1.jpg'], 2)).toEqual([undefined]);
    await vi.waitFor(() => expect(measured).toEqual(['one 1.5', 'one 2']));
  });

  it('is the same object each time', async () => {
    ask(['1.jpg']);
    await idle();
    const answers = [1, 2].map(() => photographs.photographsFor(plan).squared(wish('1.jpg')));
    expect(answers[0]).toBe(answers[1]);
  });

  it('is measured again when it holds something else', async () => {
    ask(['1.jpg']);
    await idle();
    files.set('1.jpg', 'another');
    photographs.reread(['file:///studio/1.jpg']);
    expect(ask(['1.jpg'])).toEqual(['one']);
    await vi.waitFor(() => expect(ask(['1.jpg'])).toEqual(['another']));
    expect(measured).toEqual(['one 1.5', 'another 1.5']);
  });

  it('is read and no more when it was written with what it held', async () => {
    ask(['1.jpg']);
    await idle();
    photographs.reread(['file:///studio/1.jpg']);
    await vi.waitFor(() => expect(read).toEqual(['1.jpg', '1.jpg']));
    await idle();
    expect([measured, changed]).toEqual([['one 1.5'], [plan]]);
  });

  it('is not measured again under a new name, nor when the plan is opened again', async () => {
    ask(['1.jpg']);
    await idle();
    files.set('renamed.jpg', 'one');
    ask(['renamed.jpg']);
    await vi.waitFor(() => expect(ask(['renamed.jpg'])).toEqual(['one']));
    photographs.forget(plan);
    ask(['renamed.jpg']);
    await vi.waitFor(() => expect(ask(['renamed.jpg'])).toEqual(['one']));
    expect(measured).toEqual(['one 1.5']);
  });

  it('that is not there is told so, and measured when it comes', async () => {
    ask(['3.jpg']);
    await told(1);
    expect(ask(['3.jpg'])).toEqual(['There is no such file.']);
    files.set('3.jpg', 'three');
    photographs.reread(['file:///studio/3.jpg']);
    await vi.waitFor(() => expect(ask(['3.jpg'])).toEqual(['three']));
  });

  it('is never asked for where plans may not read', () => {
    expect(
      ask(['../secret.jpg', 'http://localhost/a.jpg', '/etc/passwd']).every((reason) =>
        reason?.endsWith('.'),
      ),
    ).toBe(true);
    expect(read).toEqual([]);
  });
});

describe('several', () => {
  it('are measured one after the other, those of the plan edited last first', async () => {
    isGated = true;
    files.set('3.jpg', 'three');
    photographs.edited(other);
    photographs.edited(plan);
    ask(['1.jpg'], 1.5, other);
    ask(['2.jpg', '3.jpg']);
    for (let count = 1; count <= 3; count++) {
      await vi.waitFor(() => expect(gates).toHaveLength(count));
      gates.at(-1)?.();
    }
    await vi.waitFor(() => expect(measured).toEqual(['two 1.5', 'three 1.5', 'one 1.5']));
    await idle();
    expect(shown.filter((what) => /^\d|begin|end/.test(what))).toEqual([
      'begin',
      '2.jpg 0',
      '3.jpg 33',
      '1.jpg 67',
      'end',
    ]);
  });

  it('that nobody wants any more are given up', async () => {
    isGated = true;
    ask(['1.jpg']);
    await vi.waitFor(() => expect(gates).toHaveLength(1));
    ask(['2.jpg']);
    ask(['2.jpg']);
    await vi.waitFor(() => expect(gates).toHaveLength(2));
    gates[1]?.();
    await vi.waitFor(() => expect(measured).toEqual(['two 1.5']));
  });

  it('are no more than a plan can name', () => {
    const names = Array.from({ length: 101 }, (_, index) => `${index}.jpg`);
    expect(ask(names).at(-1)).toContain('A plan can name 100 pictures');
  });

  it('are each measured once, however many they are', async () => {
    const names = Array.from({ length: 100 }, (_, index) => `many-${index}.jpg`);
    for (const name of names) files.set(name, name);
    for (const of of [plan, other]) {
      ask(names, 1.5, of);
      await idle();
    }
    expect(ask(names)).toEqual(names);
    expect(measured).toEqual(names.map((name) => `${name} 1.5`));
  });

  it('that nobody asks for any more are kept for a while', async () => {
    const names = Array.from({ length: 100 }, (_, index) => `many-${index}.jpg`);
    for (const name of names) files.set(name, name);
    ask(names);
    await idle();
    ask(['1.jpg']);
    ask(['1.jpg']);
    await vi.waitFor(() => expect(measured.at(-1)).toBe('one 1.5'), patient);
    ask(names.slice(70));
    await vi.waitFor(() => expect(ask(names.slice(70))).toEqual(names.slice(70)), patient);
    expect(measured).toHaveLength(101);
    ask(names.slice(0, 1));
    await vi.waitFor(() => expect(measured.at(-1)).toBe('many-0.jpg 1.5'), patient);
    expect(measured).toHaveLength(102);
  });
});

describe('measuring that is stopped', () => {
  beforeEach(async () => {
    isGated = true;
    ask(['1.jpg', '2.jpg']);
    await vi.waitFor(() => expect(gates).toHaveLength(1));
    stop();
    await idle();
    isGated = false;
  });

  it('is told for all that was left, and goes no further', () => {
    expect(ask(['1.jpg', '2.jpg']).every((reason) => reason?.startsWith('Measuring was stopped.'))).toBe(
      true,
    );
    expect(measured).toEqual([]);
  });

  it('goes on when the plan is saved', async () => {
    photographs.rereadFor(plan);
    await vi.waitFor(() => expect(ask(['1.jpg', '2.jpg'])).toEqual(['one', 'two']));
  });

  it('goes on for a line that changes, and for a photograph that does', async () => {
    ask(['1.jpg'], 2);
    await vi.waitFor(() => expect(ask(['1.jpg'], 2)).toEqual(['one']));
    ask(['2.jpg']);
    photographs.reread(['file:///studio/2.jpg']);
    await vi.waitFor(() => expect(ask(['2.jpg'])).toEqual(['two']));
  });
});

it('a text that is only tried has nothing measured for it', async () => {
  ask(['1.jpg']);
  await idle();
  const { aside } = photographs.photographsFor(plan);
  expect(aside.squared(wish('1.jpg'))).toMatchObject({ reason: 'one' });
  expect([aside.squared(wish('1.jpg', 3)), aside.squared(wish('2.jpg')), aside.sizeOf('2.jpg')]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(measured).toEqual(['one 1.5']);
});

describe('a saved plan', () => {
  it('has its photographs read again only where nobody tells of changes', async () => {
    ask(['1.jpg']);
    await idle();
    photographs.rereadFor(plan);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(read).toEqual(['1.jpg']);

    photographs = open(false);
    read = [];
    ask(['1.jpg']);
    await vi.waitFor(() => expect(read).toEqual(['1.jpg']));
    await idle();
    photographs.rereadFor(plan);
    await vi.waitFor(() => expect(read).toEqual(['1.jpg', '1.jpg']));
  });
});

it('the size of a sketch is told without measuring anything', async () => {
  const sizeOf = () => photographs.photographsFor(plan).sizeOf('1.jpg');
  expect(sizeOf()).toBeUndefined();
  await told(1);
  expect(sizeOf()).toMatchObject({
    ok: false,
    reason: expect.stringContaining('no picture that is known here') as string,
  });
  expect(measured).toEqual([]);
});
