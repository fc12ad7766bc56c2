import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { TextDocumentEdit, TextEdit, type CodeAction } from 'vscode-languageserver-types';
import { openPlan, type Bench } from './test-support.js';

const text = `canvas 100 x 50 cm
divide golden
focus  (60, 20)
scale 5
  group dark 1-2, middle 3, light 4-5
budget value dark 30%, middle 45%, light 25%  within 5%
object wall
  plane background
  shape rectangle (0, 0) to (100, 50)
  value 4
object door
  shape rectangle (10, 0) to (43, 20)
  value 2
object lamp
  shape rectangle (60, 10) to (71, 20)
  colour 5R 4/8
  value 3
`;

function asked(
  words: string,
  only?: readonly string[],
  source = text,
): { bench: Bench; actions: readonly CodeAction[] } {
  const bench = openPlan(source.replace(words, `|${words}`));
  const actions = bench.service.codeActions(bench.uri, { start: bench.position, end: bench.position }, only);
  return { bench, actions };
}

function after(words: string, title: RegExp): string {
  const { bench, actions } = asked(words, ['refactor']);
  const action = actions.find((one) => title.test(one.title));
  const edits = (action?.edit?.documentChanges ?? [])
    .filter((change) => TextDocumentEdit.is(change))
    .flatMap((change) => change.edits.filter((edit) => TextEdit.is(edit)));
  return TextDocument.applyEdits(TextDocument.create(bench.uri, 'mahl', 1, text), edits);
}

test('a budget is set to what is measured, in whole percentages that add up', () => {
  // The door is 33 x 20 of 100 x 50, the lamp 11 x 10: 13.2, 2.2 and 84.6 %.
  expect(after('budget value', /budget/u)).toBe(
    text.replace('dark 30%, middle 45%, light 25%', 'dark 13%, middle 2%, light 85%'),
  );
});

test('a budget that is met to the percent is left', () => {
  const met = text.replace('dark 30%, middle 45%, light 25%', 'dark 13%, middle 2%, light 85%');
  expect(asked('budget value', ['refactor'], met).actions).toEqual([]);
});

test('the focal point goes to the nearest crossing', () => {
  expect(after('focus', /nearest crossing/u)).toBe(text.replace('focus  (60, 20)', 'focus   upper right'));
  expect(asked('focus', ['refactor'], text.replace('(60, 20)', 'upper right')).actions).toEqual([]);
});

test('a colour is written as it shows at its value', () => {
  const changed = after('colour 5R', /Fit the colour/u);
  // Step 3 of 5 is Munsell value 5.
  expect(changed).toMatch(/colour 5R 5\.0\/\d/u);
  expect(changed.replace(/colour 5R.*/u, '')).toBe(text.replace(/colour 5R.*/u, ''));
  const again = openPlan(changed).service.snapshot('file:///studio/plan.mahl')?.plan.objects[2]?.painted;
  const before = openPlan(text).service.snapshot('file:///studio/plan.mahl')?.plan.objects[2]?.painted;
  again?.lab.forEach((channel, index) => expect(channel).toBeCloseTo(before?.lab[index] ?? Number.NaN, 0));
});

test('a colour that goes by a name keeps it', () => {
  const named = text
    .replace('colour 5R 4/8', 'colour rust')
    .replace('scale 5', 'colour rust 5R 4/8\nscale 5');
  expect(asked('colour rust\n  value', ['refactor'], named).actions).toEqual([]);
});

test.each([
  [['refactor.rewrite'], true],
  [['refactor'], true],
  [[''], true],
  [['refactor.extract'], false],
  [['quickfix'], false],
  [['source'], false],
] as const)('asked for %j alone', (only, offered) => {
  const { actions } = asked('budget value', only);
  expect(actions.some(({ kind }) => kind === 'refactor.rewrite')).toBe(offered);
  expect(actions.every(({ kind }) => kind?.startsWith(only[0]))).toBe(true);
});
