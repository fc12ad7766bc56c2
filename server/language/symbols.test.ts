import { expect, test } from 'vitest';
import type { DocumentSymbol } from 'vscode-languageserver-types';
import { flatSymbols, nestedSymbols } from './symbols.js';
import { nothing, openPlan } from './test-support.js';

const text = `plan "The last tram"
canvas 40 x 30 cm
scale 5
  group dark 1-2, light 3-5
colour teal #2f6f73 dominant
object tram, dominant
  value 3
  allow hidden object because "the snow hides it"

// The work
palette
  paint ultra PB29, warm
sitting "Block in" on 2026-12-01
  works tram
`;

function snapshot() {
  const { service, uri } = openPlan(text);
  const found = service.snapshot(uri);
  if (found === undefined) throw new Error('the plan is not open');
  return found;
}

const outline = (symbols: readonly DocumentSymbol[], indent = ''): readonly string[] =>
  symbols.flatMap(({ name, detail, children }) => [
    `${indent}${name}${detail === undefined ? '' : ` (${detail})`}`,
    ...outline(children ?? [], `${indent}  `),
  ]);

test('the parts of a plan as a painter would list them', () => {
  expect(outline(nestedSymbols(snapshot()))).toEqual([
    'The last tram',
    'canvas',
    'scale',
    '  dark (steps 1-2)',
    '  light (steps 3-5)',
    'teal (#2f6f73, dominant)',
    'tram (dominant)',
    '  allow hidden object (the snow hides it)',
    'palette',
    '  ultra (PB29, warm)',
    'Block in (2026-12-01)',
  ]);
});

test('each covers its block and holds the words that name it', () => {
  const tram = nestedSymbols(snapshot()).find(({ name }) => name === 'tram');
  expect(tram?.range).toEqual({ start: { line: 5, character: 0 }, end: { line: 7, character: 49 } });
  expect(tram?.selectionRange).toEqual({ start: { line: 5, character: 7 }, end: { line: 5, character: 11 } });
});

test('flat, each with what it belongs to, for a client that knows no nesting', () => {
  const ultra = flatSymbols(snapshot()).find(({ name }) => name === 'ultra');
  expect(ultra).toMatchObject({ containerName: 'palette', location: { range: { start: { line: 11 } } } });
  const { service, uri } = openPlan(text, nothing);
  expect(service.symbols(uri)).toEqual(flatSymbols(snapshot()));
});

test('a title that is not written yet still has a name', () => {
  const { service, uri } = openPlan('plan ""\nsitting ""');
  expect(service.symbols(uri).map(({ name }) => name)).toEqual(['plan', 'sitting']);
});
