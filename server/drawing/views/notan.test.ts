import { expect, it } from 'vitest';
import { sceneOf } from '../test-plans.js';

it('the notan tells its tones with the pieces that each falls into', () => {
  const plan = `canvas 100 x 50 cm
object wall
  plane background
  shape rectangle (0, 0) to (100, 50)
  value 4
object door
  shape rectangle (10, 10) to (20, 50)
  value 1
object shade
  shape rectangle (15, 20) to (30, 30)
  value 2
object hatch
  shape rectangle (60, 10) to (70, 20)
  value 1`;
  const tones = sceneOf(plan, 'notan').legend.flatMap(({ key, text }) =>
    key.startsWith('tone:') ? [text] : [],
  );
  expect(tones).toEqual([
    'dark, steps 1 to 2: 12 % in two pieces',
    'middle, step 3: 0 %',
    'light, steps 4 to 5: 88 % in one piece',
  ]);
});
