import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { CompletionItem, TextEdit } from 'vscode-languageserver-types';
import { parse } from '../../grammar/index.js';
import { nothing, openPlan } from './test-support.js';
import { linesOf } from './text.js';

/** A plan with every statement of the language. */
const text = readFileSync(path.resolve(import.meta.dirname, '../../tests/grammar/last-tram.mahl'), 'utf8');

/** Editors offer only what holds the letters typed, in their order. */
function isShown({ label }: CompletionItem, typed: string): boolean {
  const letters = label.toLowerCase()[Symbol.iterator]();
  return [...typed.toLowerCase()].every((letter) => {
    for (let next = letters.next(); next.done !== true; next = letters.next()) {
      if (next.value === letter) return true;
    }
    return false;
  });
}

test('no word is offered that the language does not know where it would stand', { timeout: 60_000 }, () => {
  const lines = linesOf(text);
  const { service, uri, failures } = openPlan(text, nothing);
  const unknown: string[] = [];
  let version = 1;
  lines.forEach((full, line) => {
    const rewrite = (written: string): void =>
      service.change(uri, ++version, [
        {
          range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } },
          text: `${written}\n`,
        },
      ]);
    for (let column = 0; column <= full.length; column++) {
      const begun = full.slice(0, column);
      rewrite(begun);
      service.hover(uri, { line, character: column });
      for (const item of service.completions(uri, { line, character: column })) {
        const { range, newText } = item.textEdit as TextEdit;
        if (!isShown(item, begun.slice(range.start.character))) continue;
        const accepted = begun.slice(0, range.start.character) + newText;
        const problems = parse([...lines.slice(0, line), accepted, ...lines.slice(line + 1)].join('\n'))
          .problems.filter((problem) => problem.line === line && problem.code === 'unknown word')
          .map(({ message }) => `${accepted}: ${message}`);
        unknown.push(...problems);
      }
    }
    rewrite(full);
  });
  expect(unknown).toEqual([]);
  expect(failures).toEqual([]);
});
