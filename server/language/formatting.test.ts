import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { format } from '../../grammar/index.js';
import { openPlan } from './test-support.js';

const text =
  'canvas 40 x 30 cm\n\n\n\nobject   tram // the last\n    value  3\n      note "kept"  \npath tram';

test('the whole plan comes into its usual form, by small edits', () => {
  const { service, uri } = openPlan(text);
  const edits = service.format(uri);
  expect(TextDocument.applyEdits(TextDocument.create(uri, 'mahlstick', 1, text), [...edits])).toBe(
    format(text),
  );
  expect(Math.max(...edits.map(({ range }) => range.end.line - range.start.line))).toBeLessThanOrEqual(2);
});

test('a plan in its usual form is left alone', () => {
  const { service, uri } = openPlan(format(text));
  expect(service.format(uri)).toEqual([]);
});

test('of a range, only its lines', () => {
  const { service, uri } = openPlan(text);
  const range = { start: { line: 5, character: 0 }, end: { line: 6, character: 0 } };
  expect(service.format(uri, range).map((edit) => edit.range.start.line)).toEqual([5]);
});
