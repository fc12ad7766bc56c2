import { expect, it } from 'vitest';
import { worked } from './test-plans.js';
import { blurAt, distanceInWords, viewingOf } from './viewing.js';

const { plan } = worked('canvas 80 x 60 cm');

it('is taken at three diagonals unless a distance is asked for (common practice, from memory, no source)', () => {
  expect(viewingOf(plan.canvas)).toEqual({ distanceMillimetres: 3_000, usualMillimetres: 3_000, unit: 'm' });
  expect(viewingOf(plan.canvas, 5_000)).toMatchObject({
    distanceMillimetres: 5_000,
    usualMillimetres: 3_000,
  });
});

it('blurs by a quarter of a degree of the view, in canvas units (a heuristic, from memory)', () => {
  // tan(0.25 degrees) = 0.0043634; at 3 m that is 1.309 cm.
  expect(blurAt(viewingOf(plan.canvas, 3_000), plan.canvas)).toBeCloseTo(1.309, 3);
  expect(blurAt(viewingOf(plan.canvas, 6_000), plan.canvas)).toBeCloseTo(2.618, 3);
});

it('is told in metres, and in feet for a canvas in inches', () => {
  expect(distanceInWords(3_245, 'm')).toBe('3.2 m');
  expect(distanceInWords(12_000, 'm')).toBe('12 m');
  const inches = worked('canvas 16 x 12 in').plan.canvas;
  const { distanceMillimetres, unit } = viewingOf(inches);
  // Three times 20 in is 60 in, 5 ft.
  expect(distanceInWords(distanceMillimetres, unit)).toBe('5 ft');
});
