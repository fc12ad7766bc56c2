import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Position } from 'vscode-languageserver-types';
import { typedLine } from '../../tests/grammar/texts.js';
import type { LanguageService } from './language-service.js';
import { everything, openPlan, planUri } from './test-support.js';
import { linesOf } from './text.js';

const examples = path.resolve(import.meta.dirname, '../../examples');
const plans = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(examples, name), 'utf8'));

interface Edit {
  /** Where it begins and how far it goes, as parts of the text's lines and of the line, a little beyond both too. */
  readonly line: number;
  readonly column: number;
  readonly linesTaken: number;
  readonly columnsTaken: number;
  readonly written: string;
}

const part = fc.double({ min: 0, max: 1.05, noNaN: true });
const anEdit: fc.Arbitrary<Edit> = fc.record({
  line: part,
  column: part,
  linesTaken: fc.oneof(
    { weight: 8, arbitrary: fc.constant(0) },
    { weight: 2, arbitrary: fc.constantFrom(1, 2, 7) },
  ),
  columnsTaken: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 12 })),
  written: fc.oneof(
    fc.constantFrom(
      '',
      '',
      ' ',
      '\n',
      '\r\n',
      '\r',
      '"',
      '(',
      ',',
      '#',
      '%',
      '7',
      'a',
      '  ',
      '//',
      '🎨',
      '\ud83c',
    ),
    typedLine.map((line) => `\n${line}\n`),
    typedLine,
  ),
});

/** A place in the text or just beyond it, in the middle of a character now and then. */
function placeOf(text: string, { line, column }: Pick<Edit, 'line' | 'column'>): Position {
  const lines = linesOf(text);
  const row = Math.floor(line * lines.length);
  return { line: row, character: Math.floor(column * ((lines[row]?.length ?? 0) + 1)) };
}

const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };

function everythingSaid(service: LanguageService, places: readonly Position[]): unknown {
  return {
    text: service.snapshot(planUri)?.text,
    diagnostics: service.diagnostics(planUri),
    symbols: service.symbols(planUri),
    folds: service.foldingRanges(planUri),
    colours: service.colours(planUri),
    hovers: places.map((place) => service.hover(planUri, place)),
    offers: places.map((place) => service.completions(planUri, place)),
    tokens: service.semanticTokensIn(planUri, whole),
    hints: service.inlayHints(planUri, whole),
    links: service.links(planUri),
    selections: service.selectionRanges(planUri, places),
    references: places.map((place) => service.references(planUri, place, true)),
    renamed: places.map((place) => service.rename(planUri, place, 'quite_new')),
    typed: places.map((place) => service.onTypeEdits(planUri, place, { tabSize: 2, insertSpaces: true })),
    scene: service.scene(planUri, 'drawing'),
  };
}

test('after any edits everything is said that a service says which has seen no other text', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...plans),
      fc.array(anEdit, { minLength: 1, maxLength: 12 }),
      (plan, edits) => {
        const { service, failures } = openPlan(plan, everything);
        edits.forEach((edit, index) => {
          const text = service.snapshot(planUri)?.text ?? '';
          const start = placeOf(text, edit);
          const end =
            edit.linesTaken > 0
              ? { line: start.line + edit.linesTaken, character: edit.columnsTaken }
              : { line: start.line, character: start.character + edit.columnsTaken };
          service.change(planUri, index + 2, [{ range: { start, end }, text: edit.written }]);
          service.diagnostics(planUri);
        });
        const text = service.snapshot(planUri)?.text ?? '';
        const fresh = openPlan('', everything);
        fresh.service.change(planUri, edits.length + 1, [{ text }]);
        const places = edits.map((edit) => placeOf(text, edit));
        expect(everythingSaid(service, places)).toEqual(everythingSaid(fresh.service, places));
        expect([...failures, ...fresh.failures]).toEqual([]);
      },
    ),
    { numRuns: 25 },
  );
});
