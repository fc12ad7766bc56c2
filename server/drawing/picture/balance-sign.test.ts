import { describe, expect, it } from 'vitest';
import { markOf, sceneOf } from '../test-plans.js';

/** A black square on a ground of middle grey; the middle of the square is 10 of 80 cm left of the picture's. */
const plan = (left: number) => `canvas 80 x 50 cm
scale 5
object wall
  plane background
  shape rectangle (0, 0) to (80, 50)
  value 3
object stove
  shape rectangle (${left}, 15) to (${left + 20}, 35)
  value 1`;

describe('the sign of balance', () => {
  it('has its fulcrum under the vertical middle, and hangs a plumb line at the centre of weight', () => {
    const scene = sceneOf(plan(20), 'drawing');
    const fulcrum = markOf(scene, 'balance');
    const plumb = markOf(scene, 'balance:plumb');
    expect(fulcrum?.kind === 'path' && fulcrum.d.startsWith('M40 50')).toBe(true);
    const x = Number(/^M([\d.]+) /.exec(plumb?.kind === 'path' ? plumb.d : '')?.[1]);
    expect(x).toBeLessThan(40);
    const share = Math.round((100 * (40 - x)) / 80);
    expect(scene.legend.find(({ key }) => key === 'balance')?.text).toBe(
      `centre of weight ${share} % of the width left of the middle`,
    );
    expect(scene.description).toContain(`Centre of weight ${share} % of the width left of the middle.`);
  });

  it('says where it hangs level', () => {
    const { legend } = sceneOf(plan(30), 'values');
    expect(legend.find(({ key }) => key === 'balance')?.text).toBe('centre of weight on the vertical middle');
  });

  it('stays on the mount', () => {
    const scene = sceneOf(plan(20), 'drawing');
    const mount = markOf(scene, 'mount');
    const bottom = Number(/V([\d.]+)/.exec(mount?.kind === 'path' ? mount.d : '')?.[1]);
    const bob = markOf(scene, 'balance:bob');
    const [, y, radius] = /^M[\d.]+ ([\d.]+)a([\d.]+)/.exec(bob?.kind === 'path' ? bob.d : '') ?? [];
    expect(Number(y) + Number(radius)).toBeLessThan(bottom);
  });

  it('is left out where nothing weighs, and by the views that are not about it', () => {
    expect(markOf(sceneOf('canvas 80 x 50 cm', 'drawing'), 'balance')).toBeUndefined();
    expect(markOf(sceneOf(plan(20), 'notan'), 'balance')).toBeUndefined();
  });
});
