import { expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function offCrossing(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'focus off crossing');
}

const at = (systems: string, place: string): string =>
  `canvas  60 x 40 cm\ndivide  ${systems}\nfocus   ${place}\nobject  pear, dominant\n  shape   circle 4 at focus\n  value   2`;

// Common practice, no source.
it.each([
  ['golden, diagonals', '(21, 11)', 'upper left of diagonals'],
  ['golden, thirds', '(41.5, 12)', 'upper right of thirds'],
  ['armature', '(47, 11)', 'crossing 5 1'],
  ['root 5', '(12, 19)', 'upper left'],
])('%s: the focal point at %s is sent to %s', (systems, place, words) => {
  const text = at(systems, place);
  const [finding] = offCrossing(text);
  expect(finding?.advice).toContain(`\`focus ${words}\``);
  expect(offCrossing(mended(text, finding?.fix ?? { edits: [] }))).toEqual([]);
});

it.each(['diagonals', 'armature', 'quarters'])('of %s it is not sent to the middle', (system) => {
  const [finding] = offCrossing(at(system, '(33, 22)'));
  expect(finding?.message).toContain(`the nearest, centre of ${system}`);
  expect(finding?.fix?.title).toMatch(/^Put the focal point on (?:lower right|lower centre|middle right)$/);
});

it('has nothing to send it to where nothing crosses but in the middle', () => {
  const text = at('diagonals', '(24, 18)').replace('60 x 40', '40 x 40');
  const [finding] = offCrossing(text);
  expect(finding?.advice).toBe('Divide the canvas so that a crossing falls there.');
  expect(finding?.fix).toBeUndefined();
});
