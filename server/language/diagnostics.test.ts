import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver-types';
import { expect, test } from 'vitest';
import { rules } from '../findings/rules.js';
import { slugOf } from './reference.js';
import { nothing, openPlan } from './test-support.js';

const budgetMissed = `canvas 40 x 30 cm
focus upper right
scale 5
budget value dark 80%, light 20% within 5%
object wall, dominant
  shape rectangle (0, 0) to (40, 30)
  value 5
`;

function diagnose(text: string, abilities?: typeof nothing): readonly Diagnostic[] {
  const { service, uri, failures } = openPlan(text, abilities);
  const found = service.diagnostics(uri);
  expect(failures).toEqual([]);
  return found;
}

const coded = (diagnostics: readonly Diagnostic[], code: string): Diagnostic | undefined =>
  diagnostics.find((diagnostic) => diagnostic.code === code);

test('a broken line is an error on its own words, with a code that leads to the reference', () => {
  expect(coded(diagnose('canvas 40 x 30 cm\nobjekt tower'), 'unknown-word')).toMatchObject({
    range: { start: { line: 1, character: 0 }, end: { line: 1, character: 6 } },
    severity: DiagnosticSeverity.Error,
    source: 'mahlstick',
    codeDescription: {
      href: 'file:///mahlstick/server/findings/README.md#unknown-word',
    },
  });
});

test('a broken budget is a warning that says what was measured, and what to try', () => {
  const found = coded(diagnose(budgetMissed), 'value-budget');
  expect(found?.severity).toBe(DiagnosticSeverity.Warning);
  expect(found?.range.start.line).toBe(3);
  expect(found?.message).toMatch(
    /^The darks cover 0 % .* the budget is 80 % within 5 %\..*bring 80 % of the picture/u,
  );
});

test('a rule of thumb is told as information', () => {
  const focusInTheMiddle = budgetMissed.replace('upper right', '(20, 15)');
  expect(coded(diagnose(focusInTheMiddle), 'centred-focus')?.severity).toBe(DiagnosticSeverity.Information);
});

test('what is set aside is not reported, and what is set aside for nothing is faded', () => {
  const aside = diagnose(`${budgetMissed}allow value budget because "it is a night piece"\n`);
  expect(coded(aside, 'value-budget')).toBeUndefined();
  const needless = diagnose(`${budgetMissed}allow hidden object because "no reason"\n`);
  expect(coded(needless, 'needless-exception')?.tags).toEqual([DiagnosticTag.Unnecessary]);
});

test('a statement that is given twice is faded where it does not count, and leads to the other', () => {
  expect(coded(diagnose('canvas 40 x 30 cm\ncanvas 50 x 40 cm'), 'repeated-statement')).toMatchObject({
    range: { start: { line: 0 } },
    tags: [DiagnosticTag.Unnecessary],
    relatedInformation: [{ location: { range: { start: { line: 1 } } } }],
  });
});

test('the gravest come first, what is wrong with the text in its order', () => {
  const found = diagnose(`${budgetMissed}objekt tower\ncanvas 50 x 30 cm\ncolour wall #12\n`);
  const grades = found.map(({ severity }) => severity);
  expect(new Set(grades).size).toBe(3);
  expect(grades).toEqual(grades.toSorted());
  const errors = found.filter(({ severity }) => severity === DiagnosticSeverity.Error);
  expect(errors.map(({ range }) => range.start.line)).toEqual([7, 9]);
});

test('of one severity what matters most to the picture comes first, wherever it stands in the text', () => {
  const bright = `canvas 40 x 30 cm
budget value dark 80%, light 20% within 5%
object wall, dominant
  shape rectangle (0, 0) to (40, 30)
  value 5
object lamp
  shape circle 4 at (6, 24)
  value 1
  edges hard
focus upper right
  win by value
`;
  const warnings = diagnose(bright).filter(({ severity }) => severity === DiagnosticSeverity.Warning);
  const order = warnings.map(({ code }) => rules.findIndex(({ id }) => slugOf(id) === code));
  expect(new Set(order).size).toBeGreaterThan(2);
  expect(order).toEqual(order.toSorted((a, b) => a - b));
  const lines = warnings.map(({ range }) => range.start.line);
  expect(lines).not.toEqual(lines.toSorted((a, b) => a - b));
});

test('a client that knows none of the newer parts gets none of them', () => {
  const old = diagnose('canvas 40 x 30 cm\ncanvas 50 x 40 cm\nobjekt tower', nothing);
  expect(old.length).toBeGreaterThan(1);
  for (const diagnostic of old) {
    expect(Object.keys(diagnostic).sort()).toEqual(['code', 'message', 'range', 'severity', 'source']);
  }
});

test('a plan without a word has a place for every diagnostic', () => {
  for (const { range } of diagnose('')) expect(range.start).toEqual({ line: 0, character: 0 });
});
