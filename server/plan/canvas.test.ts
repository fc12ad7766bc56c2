import { expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { resolvePlan } from './resolve.js';

function told(text: string): readonly string[] {
  return resolvePlan(parse(text)).problems.map(({ message }) => message);
}

it('is read in cm where no unit is given, which a unit that can’t be read is not', () => {
  expect(told('canvas 24 x 18')).toEqual(['No unit is given for the canvas; it is read as cm.']);
  expect(told('canvas 24 x 18 inches')).toEqual([]);
});
