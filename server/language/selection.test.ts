import { expect, test } from 'vitest';
import type { SelectionRange } from 'vscode-languageserver-types';
import { everyPlan } from '../../tests/support/plans.js';
import { openPlan } from './test-support.js';

function grown(marked: string): readonly string[] {
  const { service, uri, position, text } = openPlan(marked);
  const lines = text.split('\n');
  const words: string[] = [];
  for (let at = service.selectionRanges(uri, [position])[0]; at !== undefined; at = at.parent) {
    const { start, end } = at.range;
    words.push(
      start.line === end.line
        ? (lines[start.line] ?? '').slice(start.character, end.character)
        : `lines ${start.line}-${end.line}`,
    );
  }
  return words;
}

test.each([
  [
    'canvas 4 x 3 cm\nobject sky\n  at (1|2, 40%) // so\npath sky',
    ['12', '(12, 40%)', 'at (12, 40%)', 'at (12, 40%) // so', 'lines 1-2', 'lines 0-3'],
  ],
  [
    'concept "One l|it door"\npath sky',
    ['One lit door', '"One lit door"', 'concept "One lit door"', 'lines 0-1'],
  ],
  ['// a wo|rd\n', ['// a word', 'lines 0-1']],
])('%j', (marked, expected) => {
  expect(grown(marked)).toEqual(expected);
});

test('each holds the one before, everywhere in every plan', async () => {
  for (const { text } of (await everyPlan()).slice(0, 20)) {
    const { service, uri } = openPlan(text.replaceAll('|', ''));
    const lines = service.snapshot(uri)?.lines ?? [];
    const positions = lines.flatMap((line, index) =>
      [0, 3, 9, 17, line.length].map((character) => ({ line: index, character })),
    );
    const answers = service.selectionRanges(uri, positions);
    expect(answers).toHaveLength(positions.length);
    for (const answer of answers) {
      for (let at: SelectionRange | undefined = answer; at?.parent !== undefined; at = at.parent) {
        const { start, end } = at.range;
        const outer = at.parent.range;
        const before =
          outer.start.line < start.line ||
          (outer.start.line === start.line && outer.start.character <= start.character);
        const after =
          outer.end.line > end.line || (outer.end.line === end.line && outer.end.character >= end.character);
        expect(before && after).toBe(true);
      }
    }
  }
});
