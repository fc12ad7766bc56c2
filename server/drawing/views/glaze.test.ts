import { describe, expect, it } from 'vitest';
import type { PathMark, Scene } from '../scene.js';
import { markOf, marksOf } from '../test-plans.js';
import { kitchenPlan, studioScene } from '../test-studio.js';

function path(scene: Scene, key: string): PathMark {
  const mark = markOf(scene, key);
  if (mark?.kind !== 'path') throw new Error(`No path with the key ${key}.`);
  return mark;
}

describe('a glaze', () => {
  it('lies over the body colour and under what is in front, in the colour that is seen through it', () => {
    const scene = studioScene(
      `${kitchenPlan}object bee\n  shape circle 1 at (30, 22)\n  value 1\n`,
      'colour',
    );
    const keys = marksOf(scene, 'picture').map(({ key }) => key);
    const at = keys.indexOf('glaze over object:fruit');
    expect(keys[at - 1]).toBe('object:fruit');
    expect(keys.indexOf('object:bee')).toBeGreaterThan(at);
    const glaze = path(scene, 'glaze over object:fruit');
    expect(glaze.d).toBe(path(scene, 'object:fruit').d);
    expect(glaze.fill).toBe('#a0661f');
    expect(glaze.subject).toBe('object:fruit');
    expect(glaze.tip).toContain('glazed');
    expect(path(scene, 'object:fruit').fill).not.toBe(glaze.fill);
  });

  it('is told in the legend and to those who do not see it', () => {
    for (const view of ['drawing', 'colour'] as const) {
      const scene = studioScene(kitchenPlan, view);
      expect(scene.legend.find(({ key }) => key === 'glaze')?.text).toBe(
        'glazed: fruit, as the body colour is seen through the glaze',
      );
      expect(scene.description).toContain('Glazed: fruit');
    }
  });

  it.each([
    ['while it is still being worked out', { palette: false, glazes: true }],
    ['where none is to be shown', { palette: true, glazes: false }],
  ])('is the body colour alone %s', (_, { palette, glazes }) => {
    const scene = studioScene(
      kitchenPlan,
      'drawing',
      ({ mixing, ...others }) => (palette && mixing ? { ...others, mixing } : others),
      { glazes },
    );
    expect(markOf(scene, 'glaze over object:fruit')).toBeUndefined();
    expect(scene.legend.map(({ key }) => key)).not.toContain('glaze');
    expect(path(scene, 'object:fruit').fill).toBe(
      path(studioScene(kitchenPlan, 'drawing'), 'object:fruit').fill,
    );
  });
});
