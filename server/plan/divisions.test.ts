import { expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { resolvePlan } from './resolve.js';

it('tells the size that a line of your own misses, in the unit of the canvas', () => {
  const text = 'canvas  24 x 18 in\ndivide  own\n  uprights 1/4, 30\n  levels  50 cm';
  const { problems, divisions } = resolvePlan(parse(text));
  expect(problems.map(({ message, location }) => [location.line, message])).toEqual([
    [2, 'This line does not cross the canvas, which is 24 in wide.'],
    [3, 'This line does not cross the canvas, which is 18 in high.'],
  ]);
  expect(divisions[0]?.lines).toHaveLength(1);
});
