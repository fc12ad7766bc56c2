import { expect, it } from 'vitest';
import { markOf, marksOf, sceneOf } from '../test-plans.js';

const plan = `canvas 80 x 50 cm
colour rust #84502f
object hut, dominant
  shape rectangle (10, 20) to (30, 40)
  colour rust`;

it('shows what lies left on the right, in the colours as they will be painted', () => {
  expect(markOf(sceneOf(plan, 'colour'), 'object:hut')).toMatchObject({ d: 'M10 20L30 20L30 40L10 40Z' });
  expect(markOf(sceneOf(plan, 'mirror'), 'object:hut')).toMatchObject({
    d: 'M70 20L50 20L50 40L70 40Z',
    fill: '#84502f',
    subject: 'object:hut',
  });
});

it('has nothing written or marked on the picture', () => {
  const scene = sceneOf(plan, 'mirror');
  for (const layer of ['construction', 'names', 'findings'] as const)
    expect(marksOf(scene, layer)).toEqual([]);
});
