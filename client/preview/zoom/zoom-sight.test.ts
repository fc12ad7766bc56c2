import { expect, it } from 'vitest';
import { away } from './zoom-sight.js';

it('leaves what is seen, wholly or a good part of it, where it is', () => {
  expect(away(10, 60, 0, 100)).toBe(0);
  // Larger than its place.
  expect(away(-500, 700, 0, 100)).toBe(0);
  expect(away(70, 400, 0, 100)).toBe(0);
  // A level line has no height.
  expect(away(40, 40, 0, 100)).toBe(0);
});

it('brings to the middle what is out of sight, or all but', () => {
  expect(away(200, 220, 0, 100)).toBe(160);
  expect(away(-60, -20, 0, 100)).toBe(-90);
  expect(away(95, 400, 0, 100)).toBe(197.5);
  expect(away(140, 140, 0, 100)).toBe(90);
});
