import { expect, test } from 'vitest';
import { toldAnswer } from '../../tests/support/told-answer.js';
import type { FileAnswer } from '../plan/plan.js';
import { PlanFiles } from './files.js';

const plan = 'file:///studio/plan.mahl';
const door = 'file:///studio/door.svg';

/** Files whose fetches are answered by hand. */
function files(open: Readonly<Record<string, string>> = {}) {
  const fetches: { uri: string; answer: (answer: FileAnswer) => void; fail: () => void }[] = [];
  const changed: string[] = [];
  const planFiles = new PlanFiles({
    fetch: (uri) =>
      new Promise((resolve, reject) =>
        fetches.push({ uri, answer: resolve, fail: () => reject(new Error('gone')) }),
      ),
    openText: (uri) => open[uri],
    folders: () => ['file:///studio'],
    changed: (uris) => changed.push(...uris),
  });
  return { planFiles, fetches, changed, arrive: () => new Promise(setImmediate) };
}

test('a plan is answered with nothing at first, and told when the file is there', async () => {
  const { planFiles, fetches, changed, arrive } = files();
  expect(planFiles.readerFor(plan)('door.svg')).toBeUndefined();
  fetches[0]?.answer({ ok: true, text: '<svg/>' });
  await arrive();
  expect(changed).toEqual([plan]);
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: '<svg/>' });
  expect(fetches).toHaveLength(1);
});

test('a file that can’t be fetched has a reason', async () => {
  const { planFiles, fetches, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  fetches[0]?.fail();
  await arrive();
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({
    ok: false,
    reason: 'This file could not be read.',
  });
});

test('a path that leads out of the workspace is never fetched', () => {
  const { planFiles, fetches } = files();
  expect(planFiles.readerFor(plan)('../secret.svg')).toMatchObject({ ok: false });
  expect(planFiles.readerFor(plan)('http://localhost/a.svg')).toMatchObject({ ok: false });
  expect(fetches).toEqual([]);
});

test('a changed file is read again; until then the old text stands', async () => {
  const { planFiles, fetches, changed, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  fetches[0]?.answer({ ok: true, text: 'old' });
  await arrive();
  planFiles.reread([door, 'file:///studio/other.svg']);
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: 'old' });
  fetches[1]?.answer({ ok: true, text: 'new' });
  await arrive();
  expect(changed).toEqual([plan, plan]);
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: 'new' });
});

test('a plan is not told of a file that was read again and is the same', async () => {
  const { planFiles, fetches, changed, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  fetches[0]?.answer({ ok: true, text: 'same' });
  await arrive();
  planFiles.rereadFor(plan);
  fetches[1]?.answer({ ok: true, text: 'same' });
  await arrive();
  expect(changed).toEqual([plan]);
});

test('an answer that comes after a later one is dropped', async () => {
  const { planFiles, fetches, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  planFiles.reread([door]);
  fetches[1]?.answer({ ok: true, text: 'later' });
  fetches[0]?.answer({ ok: true, text: 'earlier' });
  await arrive();
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: 'later' });
});

test('what stands in the editor goes before what is on the disk', () => {
  const { planFiles, fetches, changed } = files({ 'file:///studio/base.mahl': 'plan "base"' });
  expect(planFiles.readerFor(plan)('base.mahl')).toEqual({ ok: true, text: 'plan "base"' });
  expect(fetches).toEqual([]);
  planFiles.edited('file:///studio/base.mahl');
  expect(changed).toEqual([plan]);
});

test('a drawing that is closed unsaved is what is on the disk again', async () => {
  const open: Record<string, string> = {};
  const { planFiles, fetches, changed, arrive } = files(open);
  planFiles.readerFor(plan)('door.svg');
  fetches[0]?.answer({ ok: true, text: 'saved' });
  await arrive();
  open[door] = 'unsaved';
  planFiles.edited(door);
  delete open[door];
  planFiles.closed(door, 'unsaved');
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: 'unsaved' });
  fetches[1]?.answer({ ok: true, text: 'saved' });
  await arrive();
  expect(changed).toEqual([plan, plan, plan]);
  expect(planFiles.readerFor(plan)('door.svg')).toEqual({ ok: true, text: 'saved' });
});

test('a file that is not named any more is let go', async () => {
  const { planFiles, fetches, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  fetches[0]?.answer({ ok: true, text: '<svg/>' });
  await arrive();
  planFiles.readerFor(plan)('roof.svg');
  planFiles.readerFor(plan)('roof.svg');
  planFiles.readerFor(plan)('roof.svg');
  planFiles.reread([door]);
  expect(fetches.map(({ uri }) => uri)).toEqual([door, 'file:///studio/roof.svg']);
});

test('a closed plan is told of nothing more', async () => {
  const { planFiles, fetches, changed, arrive } = files();
  planFiles.readerFor(plan)('door.svg');
  planFiles.forget(plan);
  fetches[0]?.answer({ ok: true, text: '<svg/>' });
  await arrive();
  expect(changed).toEqual([]);
});

test('more files than a painter would name, and larger ones, are refused', async () => {
  const { planFiles, fetches, arrive } = files();
  const read = planFiles.readerFor(plan);
  for (let index = 0; index < 300; index++) read(`${index}.svg`);
  expect(fetches).toHaveLength(200);
  expect(read('250.svg')).toMatchObject({ ok: false });
  fetches[0]?.answer({ ok: true, text: ' '.repeat(5 * 1024 * 1024 + 1) });
  await arrive();
  const answer = read('0.svg');
  expect(answer && toldAnswer(answer)).toEqual({ ok: false, reason: 'This file is larger than 5 MB.' });
});
