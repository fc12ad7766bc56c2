import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Position } from 'vscode-languageserver-types';
import { anEdit, placeOf, rangeIn } from '../../tests/support/typed-edits.js';
import type { LanguageService } from './language-service.js';
import { everything, openPlan, planUri } from './test-support.js';

const examples = path.resolve(import.meta.dirname, '../../examples');
const plans = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(examples, name), 'utf8'));

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
          service.change(planUri, index + 2, [{ range: rangeIn(text, edit), text: edit.written }]);
          service.diagnostics(planUri);
        });
        const text = service.snapshot(planUri)?.text ?? '';
        const fresh = openPlan('', everything);
        fresh.service.change(planUri, edits.length + 1, [{ text }]);
        // Mixtures come when there is time for them, and sooner where they were asked for before.
        for (const each of [service, fresh.service]) while (each.mixFurther(planUri));
        const places = edits.map((edit) => placeOf(text, edit));
        expect(everythingSaid(service, places)).toEqual(everythingSaid(fresh.service, places));
        expect([...failures, ...fresh.failures]).toEqual([]);
      },
    ),
    { numRuns: 25 },
  );
});
