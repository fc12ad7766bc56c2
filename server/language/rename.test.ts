import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver-types';
import { everyPlan } from '../../tests/support/plans.js';
import type { FileAnswer } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { everything, nothing, openPlan, planUri, type Bench } from './test-support.js';

const files = (texts: Readonly<Record<string, string>>): Readonly<Record<string, FileAnswer>> =>
  Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [`file:///studio/${name}`, { ok: true, text }]),
  );

interface Renamed {
  readonly bench: Bench;
  readonly edit: WorkspaceEdit | undefined;
  readonly refused: string | undefined;
  /** The text of each changed file. */
  readonly texts: Readonly<Record<string, string>>;
}

async function renamed(
  marked: string,
  newName: string,
  others: Readonly<Record<string, string>> = {},
  abilities: Abilities = everything,
): Promise<Renamed> {
  const bench = openPlan(marked, abilities, files(others));
  const around = await bench.service.surroundings();
  const answer = bench.service.rename(bench.uri, bench.position, newName, around);
  if (answer === undefined || 'refused' in answer)
    return { bench, edit: undefined, refused: answer?.refused, texts: {} };
  const changes = (answer.documentChanges ?? []).flatMap((change) =>
    'textDocument' in change ? [[change.textDocument.uri, change.edits] as const] : [],
  );
  const all = [...changes, ...Object.entries(answer.changes ?? {})];
  const before = { 'plan.mahl': bench.text, ...others } as Readonly<Record<string, string>>;
  const texts = all.map(([uri, edits]) => {
    const name = uri.replace('file:///studio/', '');
    const document = TextDocument.create(uri, 'mahl', 1, before[name] ?? '');
    return [
      name,
      TextDocument.applyEdits(
        document,
        edits.filter((edit) => 'newText' in edit),
      ),
    ];
  });
  return {
    bench,
    edit: answer,
    refused: undefined,
    texts: Object.fromEntries(texts) as Record<string, string>,
  };
}

test.each([
  [
    'object',
    'object s|ky\nobject tram\n  edges soft against SKY\npath sky, tram\nat sky',
    'object dusk\nobject tram\n  edges soft against dusk\npath dusk, tram\nat dusk',
  ],
  [
    'colour',
    'colour teal #2f6f73\nobject sky\n  colour t|eal',
    'colour dusk #2f6f73\nobject sky\n  colour dusk',
  ],
  [
    'lead',
    'lead w|ires from left edge to focus\nallow lead past focus for wires because "so"',
    'lead dusk from left edge to focus\nallow lead past focus for dusk because "so"',
  ],
  ['paint', 'palette\n  paint ultra PB29\n  mother u|ltra', 'palette\n  paint dusk PB29\n  mother dusk'],
  [
    'group',
    'scale 5\n  group dark 1-2, light 3-5\nbudget value d|ark 30%, light 70%',
    'scale 5\n  group dusk 1-2, light 3-5\nbudget value dusk 30%, light 70%',
  ],
])('%s, with all that speak of it', async (_, marked, expected) => {
  expect((await renamed(marked, 'dusk')).texts).toEqual({ 'plan.mahl': expected });
});

test.each([
  ['sitting "Block| in" on 2026-12-01', 'Say "when"', 'sitting "Say \\"when\\"" on 2026-12-01'],
  ['sitting “Block| in”', 'Say "when”', 'sitting “Say "when\\””'],
])('the title of a sitting keeps its quotes: %s', async (marked, newName, expected) => {
  expect((await renamed(marked, newName)).texts).toEqual({ 'plan.mahl': expected });
});

test('what is typed over is the name without quotes, and nothing where there is no name', () => {
  const title = openPlan('sitting "Block| in"');
  expect(title.service.renamable(title.uri, title.position)).toEqual({
    range: { start: { line: 0, character: 9 }, end: { line: 0, character: 17 } },
    placeholder: 'Block in',
  });
  const word = openPlan('can|vas 40 x 30 cm');
  expect(word.service.renamable(word.uri, word.position)).toBeUndefined();
  const unknown = openPlan('path no|body');
  expect(unknown.service.renamable(unknown.uri, unknown.position)).toEqual({
    refused: 'Nothing gives the object “nobody” its name here, so there is nothing to rename.',
  });
});

test.each([
  ['two words', 'evening sky', 'A name is one word'],
  ['a number', '3', 'A name is one word'],
  ['a name that another object has', 'TRAM', 'Line 2 has the object “tram” already.'],
  [
    'a word that is read as something else',
    'focus',
    'In line 4 “focus” could not be read as a name: it means something else there.',
  ],
])('refused: %s', async (_, newName, reason) => {
  const plan = 'object s|ky\nobject tram\nobject wall\n  at sky';
  expect((await renamed(plan, newName)).refused).toContain(reason);
});

test('refused where a use would come to mean a thing of another kind', async () => {
  const plan =
    'colour o|chre #d9a441\npalette\n  paint yellow PY43 full #c9a227\nobject sky\n  colour yellow';
  expect((await renamed(plan, 'yellow')).refused).toBe(
    'In line 5 “yellow” would mean the colour of that name.',
  );
});

test('another object may have the name of a colour', async () => {
  expect((await renamed('colour teal #2f6f73\nobject s|ky', 'teal')).texts).toEqual({
    'plan.mahl': 'colour teal #2f6f73\nobject teal',
  });
});

test('names in lines that have no place in the plan are renamed too', async () => {
  const { texts } = await renamed('object s|ky\n  works sky', 'dusk');
  expect(texts).toEqual({ 'plan.mahl': 'object dusk\n  works dusk' });
});

const base = 'object sky\nobject baker\n';

test('a name of the plan that this one is based on is renamed there too, and in what else is based on it', async () => {
  const { texts, edit } = await renamed('based on "base.mahl"\nwithout s|ky\nobject sky\npath sky', 'dusk', {
    'base.mahl': base,
  });
  expect(texts).toEqual({
    'base.mahl': 'object dusk\nobject baker\n',
    'plan.mahl': 'based on "base.mahl"\nwithout dusk\nobject sky\npath sky',
  });
  const versions = edit?.documentChanges?.map((change) => 'textDocument' in change && change.textDocument);
  expect(versions).toContainEqual({ uri: 'file:///studio/base.mahl', version: null });
  expect(versions).toContainEqual({ uri: planUri, version: 1 });
});

test('a name that both have is one name, from either', async () => {
  const plan = 'based on "base.mahl"\nobject s|ky\n  value 3\npath sky, baker';
  const { texts } = await renamed(plan, 'dusk', { 'base.mahl': base });
  expect(texts).toEqual({
    'base.mahl': 'object dusk\nobject baker\n',
    'plan.mahl': 'based on "base.mahl"\nobject dusk\n  value 3\npath dusk, baker',
  });
});

test('a name that the plan below has already is refused with its line and file', async () => {
  const { refused } = await renamed('based on "base.mahl"\nobject s|ky', 'baker', { 'base.mahl': base });
  expect(refused).toBe('Line 2 of “base.mahl” has the object “baker” already.');
});

test('plans that are based on each other in a ring are no trap', async () => {
  const { texts } = await renamed('based on "base.mahl"\nobject s|ky', 'dusk', {
    'base.mahl': 'based on "plan.mahl"\npath sky\n',
  });
  expect(texts['plan.mahl']).toBe('based on "base.mahl"\nobject dusk');
});

const svg =
  '<svg xmlns="http://www.w3.org/2000/svg">\n  <!-- id="door" --><rect id=\'door\' width="4" height="3"/><g id="roof"/></svg>';
const doors =
  'object one\n  shape from "tram.svg" part "do|or"\nobject two\n  shape from "./tram.svg" part "door"\nobject three\n  shape from "tram.svg" part "roof"';

test('the part of an SVG file is renamed there and wherever it is taken', async () => {
  const { texts } = await renamed(doors, 'gate', { 'tram.svg': svg });
  expect(texts).toEqual({
    'tram.svg': svg.replace("id='door'", "id='gate'"),
    'plan.mahl': doors.replace('|', '').replaceAll('"door"', '"gate"'),
  });
});

test.each([
  ['door 2', svg, 'An id in an SVG file begins with a letter'],
  ['roof', svg, 'has another part with the id “roof”'],
  ['gate', svg.replace('<g ', '<use href="#door"/><g '), 'speaks of “door” elsewhere'],
  ['gate', svg.replace('id="roof"', 'id="door"'), 'more than once'],
  ['gate', svg.replace("id='door'", ''), 'has no part with the id “door”'],
])('a part is not renamed to %s where that is not safe', async (newName, text, reason) => {
  expect((await renamed(doors, newName, { 'tram.svg': text })).refused).toContain(reason);
});

test('a part of a file that can’t be read is not renamed', async () => {
  expect((await renamed(doors, 'gate')).refused).toContain('could not be read');
});

test('a client without versions is given plain changes', async () => {
  const { edit } = await renamed('object s|ky', 'dusk', {}, nothing);
  expect(edit).toEqual({
    changes: {
      [planUri]: [
        { range: { start: { line: 0, character: 7 }, end: { line: 0, character: 10 } }, newText: 'dusk' },
      ],
    },
  });
});

test('in every plan every name can be renamed, and then everything that spoke of it speaks of it still', async () => {
  for (const { name, text } of (await everyPlan()).slice(0, 40)) {
    const { service, uri } = openPlan(text.replaceAll('|', ''));
    const { definitions } = service.snapshot(uri)?.names ?? { definitions: [] };
    for (const { kind, location } of definitions) {
      const position = { line: location.line, character: location.start + 1 };
      const before = service.references(uri, position, true);
      const answer = service.rename(uri, position, 'quite_new');
      if (answer === undefined || 'refused' in answer) throw new Error(`${name}: ${kind} ${answer?.refused}`);
      const [change] = answer.documentChanges ?? [];
      const edits =
        change !== undefined && 'edits' in change ? change.edits.filter((edit) => 'newText' in edit) : [];
      const source = service.snapshot(uri)?.text ?? '';
      const after = openPlan(TextDocument.applyEdits(TextDocument.create(uri, 'mahl', 1, source), edits));
      expect(after.service.references(uri, position, true), `${name}: ${kind}`).toHaveLength(before.length);
      expect(after.service.snapshot(uri)?.tree.problems).toHaveLength(
        service.snapshot(uri)?.tree.problems.length ?? -1,
      );
    }
  }
});

test('what is left out of a base that is not there is no name of this plan', async () => {
  const text = 'based on "missing.mahl"\nwithout jug\nobject j|ug\npath jug';
  expect((await renamed(text, 'vase')).texts).toEqual({
    'plan.mahl': 'based on "missing.mahl"\nwithout jug\nobject vase\npath vase',
  });
});

test('between quotes that hold no name yet there is nothing to rename', async () => {
  const { bench, edit, refused } = await renamed('object a\n  shape from "tram.svg" part "|"', 'door', {
    'tram.svg': '<svg><g id="roof"/></svg>',
  });
  expect([edit, refused]).toEqual([undefined, undefined]);
  expect(bench.service.renamable(bench.uri, bench.position)).toBeUndefined();
});
