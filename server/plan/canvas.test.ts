import { expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { parse } from '../../grammar/index.js';
import { resolvePlan } from './resolve.js';

function told(text: string): readonly string[] {
  return resolvePlan(parse(text)).problems.map(({ message }) => message);
}

it('is read in cm where no unit is given, which a unit that can’t be read is not', () => {
  expect(told('canvas 24 x 18')).toEqual(['No unit is given for the canvas; it is read as cm.']);
  expect(told('canvas 24 x 18 inches')).toEqual([]);
});

it.each([
  ['18 x 24 in', 18, 24],
  ['18 x 24 in upright', 18, 24],
  ['24 x 18 in, upright', 18, 24],
  ['18 x 24 in landscape', 24, 18],
  ['24 x 18 in landscape', 24, 18],
  ['46 cm x 24 in upright', 46, 60.96],
  ['12 x 12 in upright', 12, 12],
  ['figure 20', 73, 60],
  ['figure 20 upright', 60, 73],
])('%s measures %f x %f', (size, width, height) => {
  const { canvas, problems } = planOf(`canvas  ${size}`);
  expect(problems).toEqual([]);
  expect(canvas.width).toBeCloseTo(width, 9);
  expect(canvas.height).toBeCloseTo(height, 9);
});
