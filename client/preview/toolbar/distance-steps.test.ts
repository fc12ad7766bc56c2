import { expect, it } from 'vitest';
import { distanceAt, farthestStep, stepOf } from './distance-steps.js';

it('has the usual distance in the middle, a quarter and four times it at the ends', () => {
  expect(distanceAt(0, 3_000)).toBeUndefined();
  expect(distanceAt(farthestStep, 3_000)).toBe(12_000);
  expect(distanceAt(-farthestStep, 3_000)).toBe(750);
});

it('finds the step of each of its distances again, whatever the canvas', () => {
  for (const usual of [45, 3_245, 90_000]) {
    for (let step = -farthestStep; step <= farthestStep; step++) {
      expect(stepOf(distanceAt(step, usual), usual)).toBe(step);
    }
  }
});

it('stays at its ends for distances of another canvas', () => {
  expect(stepOf(1, 3_000)).toBe(-farthestStep);
  expect(stepOf(900_000, 3_000)).toBe(farthestStep);
  expect(distanceAt(-farthestStep, 2)).toBe(1);
});
