import { expect, test } from 'vitest';
import { openPlan } from '../language/test-support.js';
import { remarksOf } from './remarks.js';

/** A text that cannot be read in one line, breaks intentions and rules of thumb, and sets one aside. */
const plan = `plan "Two crates"
canvas 40 x 30 cm
focus centre
  win by value
horizon 15
budget value dark 80%, light 20% within 5%
object crate, dominant
  shape rectangle (4, 4) to (10, 10)
  value 2
  edgs hard
object basket, secondary
  shape rectangle (28, 18) to (38, 28)
  value 1
lead string from left edge at 20% to upper right corner
allow even count because "there were two"
`;

test('remarks come in the order of the diagnostics of an editor, those set aside among them', () => {
  const { service, uri } = openPlan(plan);
  const snapshot = service.snapshot(uri);
  const remarks = snapshot === undefined ? [] : remarksOf(snapshot);
  const told = remarks.filter(({ setAside }) => !setAside);
  const grades = told.map(({ severity }) => severity);
  expect(new Set(grades)).toEqual(new Set(['error', 'warning', 'hint']));
  expect(told.map(({ message, advice }) => [message, advice].join(' ').trim())).toEqual(
    service.diagnostics(uri).map(({ message }) => message),
  );
  expect(remarks.length).toBe(told.length + 1);
});
