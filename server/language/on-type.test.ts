import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { everyPlan } from '../../tests/support/plans.js';
import { parse } from '../../grammar/index.js';
import { openPlan } from './test-support.js';

const spaces = { tabSize: 2, insertSpaces: true };

function typed(marked: string, options = spaces): string {
  const { service, uri, position, text } = openPlan(marked);
  const edits = service.onTypeEdits(uri, position, options);
  return TextDocument.applyEdits(TextDocument.create(uri, 'mahl', 1, text), [...edits]);
}

test.each([
  ['object sky\n|', 'object  sky\n  '],
  ['object sky // dusk\n|', 'object  sky  // dusk\n  '],
  ['object sky\n  shape outline (1, 2) (3, 4)\n  |', 'object sky\n  shape   outline (1, 2) (3, 4)\n    '],
  ['object sky\n  shape circle 8\n  |', 'object sky\n  shape   circle 8\n  '],
  ['divide own\n|', 'divide  own\n  '],
  ['divide thirds, own\n|', 'divide  thirds, own\n  '],
  ['divide golden\n|', 'divide  golden\n'],
  ['object sky\n    value 3\n    |', 'object sky\n    value   3\n    '],
])('%j', (marked, expected) => {
  expect(typed(marked)).toBe(expected);
});

test('the editor’s own indentation is left as it is', () => {
  expect(typed('object sky\n  |')).toBe('object  sky\n  ');
  expect(typed('object sky\n|', { tabSize: 4, insertSpaces: false })).toBe('object  sky\n\t');
});

test('tabs are followed by tabs and spaces by spaces, whatever the editor is set to', () => {
  expect(typed('object sky\n\tshape outline\n\t|')).toBe('object sky\n\tshape   outline\n\t\t');
  const tabs = { tabSize: 2, insertSpaces: false };
  expect(typed('object sky\n  shape outline\n  |', tabs)).toBe('object sky\n  shape   outline\n    ');
});

test('the line that the caret is on is not set, and neither is one with a mistake', () => {
  expect(typed('object sky\n  |value    3')).toBe('object  sky\n  value    3');
  expect(typed('objekt    sky // so\n|')).toBe('objekt    sky // so\n');
  expect(typed('object sky\n\n|')).toBe('object sky\n\n');
});

test('no comment is lost and no line means another thing, wherever Enter is pressed', async () => {
  const plans = (await everyPlan()).slice(0, 12);
  for (const { name, text } of plans) {
    const { service, uri } = openPlan(text.replaceAll('|', ''));
    const snapshot = service.snapshot(uri);
    if (snapshot === undefined) throw new Error('the plan is open');
    const document = TextDocument.create(uri, 'mahl', 1, snapshot.text);
    const words = (plan: string) => plan.split('\n').map((line) => line.replace(/[\s,]/gu, ''));
    for (let line = 1; line < snapshot.lines.length; line++) {
      const edits = service.onTypeEdits(uri, { line, character: snapshot.lines[line]?.length ?? 0 }, spaces);
      const after = TextDocument.applyEdits(document, [...edits]);
      expect(words(after), `${name}:${line}`).toEqual(words(snapshot.text));
      const tree = parse(after);
      expect(tree.problems.length, `${name}:${line}`).toBe(snapshot.tree.problems.length);
      expect(tree.comments.map((comment) => comment.text)).toEqual(
        snapshot.tree.comments.map((comment) => comment.text),
      );
    }
  }
});
