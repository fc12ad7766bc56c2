import { expect, test } from 'vitest';
import { nothing, openPlan } from './test-support.js';

const text = `based on "base.mahl"
object door
  shape from "./parts/tram.svg" part "door"
sitting "a"
  photo "record/01.jpg"
`;
const base = {
  'file:///studio/base.mahl': { ok: true, text: 'object x\n  shape from "parts/tram.svg"\n' },
} as const;

async function after(...moves: readonly (readonly [string, string])[]): Promise<readonly string[]> {
  const { service } = openPlan(text, nothing, base);
  const around = await service.surroundings();
  const edit = service.editsForMoves(
    moves.map(([from, to]) => ({ oldUri: `file:///studio/${from}`, newUri: `file:///studio/${to}` })),
    around,
  );
  return Object.entries(edit?.changes ?? {}).flatMap(([uri, edits]) =>
    edits.map(({ range, newText }) => `${uri.replace(/.*\//u, '')}:${range.start.line} ${newText}`),
  );
}

test('every plan that names a file names it where it goes', async () => {
  expect(await after(['parts/tram.svg', 'drawings/tram 2.svg'])).toEqual([
    'base.mahl:1 drawings/tram 2.svg',
    'plan.mahl:2 ./drawings/tram 2.svg',
  ]);
});

test('a folder takes its files with it', async () => {
  expect(await after(['record', 'photographs/2026'])).toEqual(['plan.mahl:4 photographs/2026/01.jpg']);
});

test('a plan that moves names its files from there', async () => {
  expect(await after(['plan.mahl', 'old/plan.mahl'])).toEqual([
    'plan.mahl:0 ../base.mahl',
    'plan.mahl:2 ../parts/tram.svg',
    'plan.mahl:4 ../record/01.jpg',
  ]);
});

test('a base plan that is renamed', async () => {
  expect(await after(['base.mahl', 'street.mahl'])).toEqual(['plan.mahl:0 street.mahl']);
});

test('nothing for other files, for what moves together, and for a way out of the workspace', async () => {
  expect(await after(['other.svg', 'parts/other.svg'])).toEqual([]);
  expect(
    await after(
      ['plan.mahl', 'a/plan.mahl'],
      ['base.mahl', 'a/base.mahl'],
      ['parts', 'a/parts'],
      ['record', 'a/record'],
    ),
  ).toEqual([]);
  expect(await after(['parts/tram.svg', '../tram.svg'])).toEqual([]);
});

test('the quotes that the name stands in are kept', () => {
  const marked = 'sketch “the "great" door.png”';
  const { service } = openPlan(marked, nothing);
  const [oldUri, newUri] = ['the "great" door.png', 'the “great” door.png'].map(
    (name) => `file:///studio/${encodeURIComponent(name)}`,
  );
  const edit = service.editsForMoves([{ oldUri: oldUri ?? '', newUri: newUri ?? '' }]);
  const [{ range, newText } = expect.fail('it is renamed')] =
    edit?.changes?.['file:///studio/plan.mahl'] ?? [];
  const after = marked.slice(0, range.start.character) + newText + marked.slice(range.end.character);
  expect(after).toBe('sketch “the “great\\” door.png”');
});
