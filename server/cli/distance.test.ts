import { expect, it } from 'vitest';
import { worked } from '../drawing/test-plans.js';
import { millimetresOf, readDistance } from './distance.js';

it.each([
  ['3m', 3_000],
  ['2.5 m', 2_500],
  ['250cm', 2_500],
  // International inch: 25.4 mm (ISO 31-1).
  ['120in', 3_048],
  // The canvas of the plan below is given in centimetres.
  ['300', 3_000],
])('%s is %d mm', (text, millimetres) => {
  const { plan } = worked('canvas 80 x 50 cm');
  const distance = readDistance(text);
  expect(distance && millimetresOf(distance, plan.canvas)).toBeCloseTo(millimetres, 6);
});

it.each(['', 'far', '-3m', '0', '3 miles', '3m2', '1e3', '2000m', '0.5mm'])('%j is no distance', (text) => {
  expect(readDistance(text)).toBeUndefined();
});
