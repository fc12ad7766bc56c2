import { expect, test } from 'vitest';
import { openPlan } from './test-support.js';

test('blocks fold under their first line, comments under theirs', () => {
  const { service, uri } = openPlan(`// A plan
// of two lines
canvas 40 x 30 cm
  support linen

object tram // not folded
  // nor this
sitting "a"
  photo "a.jpg"
    grey (1, 2)
`);
  expect(service.foldingRanges(uri)).toEqual([
    { startLine: 0, endLine: 1, kind: 'comment' },
    { startLine: 2, endLine: 3 },
    { startLine: 7, endLine: 9 },
    { startLine: 8, endLine: 9 },
  ]);
});
