import { expect, test } from 'vitest';
import type { Hover } from 'vscode-languageserver-types';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { HandChange } from './hand/change.js';
import { type Bench, everything, openPlan, settled } from './test-support.js';

const OVEN = `plan "The oven"
canvas 60 x 40 cm
divide golden
focus lower right
scale 5
budget value dark 80%, light 20% within 5%
colour ember #f0a23c
object wall
  plane background
  shape rectangle (0, 0) to (60, 40)
  value 5
object door, dominant
  shape rectangle 9 x 6
  at focus
  colour ember
lead shelf from left edge at 20% to door
`;

const BASE = 'file:///studio/old/oven.mahl';

async function openHeir(own: string, base = OVEN): Promise<Bench> {
  const bench = openPlan(`based on "old/oven.mahl"\n${own}`, everything, {
    [BASE]: { ok: true, text: base },
  });
  bench.service.diagnostics(bench.uri);
  await settled();
  return bench;
}

const textOf = (hover: Hover | undefined): string =>
  hover && typeof hover.contents === 'object' && 'value' in hover.contents ? hover.contents.value : '';

test('what is found about a base is told where it is named, with where it comes from', async () => {
  const { service, uri, failures } = await openHeir('object wall\n  plane middle\n');
  const budget = service.diagnostics(uri).find(({ code }) => code === 'value-budget');
  expect(budget?.range).toEqual({ start: { line: 0, character: 9 }, end: { line: 0, character: 24 } });
  expect(budget?.message).toContain(' (from `old/oven.mahl`, line 6).');
  expect(budget?.relatedInformation?.[0]).toEqual({
    location: { uri: BASE, range: { start: { line: 5, character: 13 }, end: { line: 5, character: 21 } } },
    message: 'It stands here.',
  });
  expect(failures).toEqual([]);
});

test('its fix is written into the plan itself', async () => {
  const { service, uri, text } = await openHeir('plan "By day"\n', OVEN.replace('lower right', '(20, 15)'));
  const actions = service.codeActions(uri, {
    start: { line: 0, character: 10 },
    end: { line: 0, character: 10 },
  });
  const [change] = actions.find(({ isPreferred }) => isPreferred)?.edit?.documentChanges ?? [];
  if (!change || !('textDocument' in change)) throw new Error('no change of a document');
  expect(change.textDocument.uri).toBe(uri);
  const edits = change.edits.flatMap((one) => ('newText' in one ? one : []));
  const after = TextDocument.applyEdits(TextDocument.create(uri, 'mahlstick', 1, text), edits);
  expect(after).toBe(`${text}focus   upper left\n`);
});

test('while it is on its way nothing is found, and when it is there the plan is told to be another', async () => {
  const bench = openPlan('based on "old/oven.mahl"\npath door\nwithout shelf', everything, {
    [BASE]: { ok: true, text: OVEN },
  });
  expect(bench.service.diagnostics(bench.uri)).toEqual([]);
  bench.changed.length = 0;
  await settled();
  expect(bench.changed).toEqual([bench.uri]);
  expect(bench.service.diagnostics(bench.uri).map(({ code }) => code)).not.toContain('unknown-name');
  expect(bench.failures).toEqual([]);
});

test('an edit of an open base is one of the plans that build on it', async () => {
  const { service, uri, changed } = await openHeir('path loaf\n');
  const isUnknown = (): boolean => service.diagnostics(uri).some(({ code }) => code === 'unknown-name');
  expect(isUnknown()).toBe(true);
  changed.length = 0;
  service.open(BASE, 1, `${OVEN}object loaf\n`);
  expect(changed).toContain(uri);
  expect(isUnknown()).toBe(false);
  service.change(BASE, 2, [{ text: OVEN }]);
  expect(isUnknown()).toBe(true);
});

test.each([
  [
    'object d|oor\n  at (3, 4)',
    'Goes on with what is in `old/oven.mahl`, line 12\\. What is not said here stays',
  ],
  ['object door\n  a|t (3, 4)', '`old/oven.mahl`, line 14 has `at focus`'],
  ['object door\n  value 4|', undefined],
  ['colour em|ber #ff0000', '`old/oven.mahl`, line 7 has `colour ember #f0a23c`'],
  ['object lo|af', undefined],
])('hover on %j tells what the base has', async (own, words) => {
  const { service, uri } = await openHeir(own.replace('|', ''));
  const before = `based on "old/oven.mahl"\n${own.slice(0, own.indexOf('|'))}`.split('\n');
  const position = { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  const told = textOf(service.hover(uri, position));
  if (words === undefined) expect(told).not.toContain('old/oven');
  else expect(told.replaceAll('\\', '')).toContain(words.replaceAll('\\', ''));
});

test('from an object that goes on with one of the base it leads to that', async () => {
  const bench = await openHeir('object door\n  at (3, 4)\npath door\n');
  bench.service.open(BASE, 1, OVEN);
  const at = (line: number, character: number) => bench.service.definition(bench.uri, { line, character });
  expect(at(1, 8)).toMatchObject({ targetUri: BASE, targetSelectionRange: { start: { line: 11 } } });
  expect(at(3, 6)).toMatchObject({ targetUri: bench.uri, targetSelectionRange: { start: { line: 1 } } });
});

test('no line of a base is taken for one of the plan', async () => {
  const own = 'object door\n  at (12, 30)\n\n\n\n\n\n\n\n\n\n\n\n\n\n';
  const { service, uri } = await openHeir(own);
  const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  const hints = service.inlayHints(uri, whole);
  expect(new Set(hints.map(({ position }) => position.line))).toEqual(new Set([1]));
  expect(service.colours(uri)).toEqual([]);
  const scene = service.scene(uri, 'drawing', { handling: true });
  const places = Object.values(scene?.subjects ?? {}).map(({ location, from }) => [
    location.line,
    from?.line,
  ]);
  expect(places).toContainEqual([0, 7]);
  expect(places).toContainEqual([1, undefined]);
  expect(places.every(([line]) => line === 0 || line === 1)).toBe(true);
});

test('names of the base are offered', async () => {
  const { service, uri } = await openHeir('path ');
  const offered = service.completions(uri, { line: 1, character: 5 });
  expect(offered.map(({ label }) => label)).toEqual(expect.arrayContaining(['wall', 'door']));
});

const written = ({ service, uri, text }: Bench, change: HandChange): string => {
  const answer = service.writeChange({ textDocument: { uri }, version: 1, change });
  if (answer === null || 'refused' in answer) throw new Error(answer?.refused ?? 'not open');
  return TextDocument.applyEdits(TextDocument.create(uri, 'mahlstick', 1, text), [...answer.edits]);
};

test.each<readonly [string, HandChange, string]>([
  [
    'an object moved',
    { kind: 'move', grip: 'object:door', to: { x: 20, y: 10 } },
    'object  door\n  at focus, 17.08 cm left, 14.72 cm up',
  ],
  [
    'a lead place moved',
    { kind: 'move', grip: 'lead:shelf:from', to: { x: 3, y: 30 } },
    'lead shelf from (3, 30) to door',
  ],
  ['the focal point moved', { kind: 'move', grip: 'focus', to: { x: 5, y: 6 } }, 'focus (5, 6)'],
])('%s by hand is said in the plan', async (_, change, words) => {
  const bench = await openHeir('plan "By day"\n');
  expect(written(bench, change)).toContain(words);
  expect(written(bench, change).startsWith(bench.text.trimEnd())).toBe(true);
});
