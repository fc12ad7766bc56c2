import { describe, expect, it } from 'vitest';
import { doorwayPlan, marksOf, sceneOf } from '../../../server/drawing/test-plans.js';
import { kitchenPlan, studioScene } from '../../../server/drawing/test-studio.js';
import { itemsOf } from '../items.js';
import { type Overlay, isThere, overlays, withoutHidden } from './layers.js';
import { withoutFindingsList } from '../plate.js';

const scene = withoutFindingsList(sceneOf(doorwayPlan, 'drawing'));
const kindsAfter = (...hidden: readonly Overlay[]) =>
  new Set(itemsOf(withoutHidden(scene, new Set(hidden))).map(({ kind }) => kind));

describe('a drawing without what is hidden', () => {
  it('is as it was while nothing is', () => {
    expect(withoutHidden(scene, new Set())).toBe(scene);
  });

  it('has no division line and no horizon, and still its edge, leads and focal point', () => {
    const kinds = kindsAfter('division');
    expect(kinds).not.toContain('division');
    expect(kinds).not.toContain('horizon');
    for (const kept of ['lead', 'focus', 'object']) expect(kinds).toContain(kept);
    expect(
      marksOf(withoutHidden(scene, new Set(['division'])), 'construction').map(({ key }) => key),
    ).toContain('edge');
  });

  it('has no lead, nor anything that could be taken hold of at one', () => {
    expect(kindsAfter('leads')).not.toContain('lead');
    const grip = { key: 'a', subject: 'a', at: { x: 1, y: 1 }, name: 'a' };
    const handling = {
      grips: [
        { ...grip, kind: 'object' as const },
        { ...grip, kind: 'lead' as const },
        { ...grip, kind: 'lead place' as const },
      ],
      guides: { lines: [], crossings: [] },
      tones: [],
      colours: [],
      painted: {},
      unit: 'cm' as const,
    };
    const kept = withoutHidden({ ...scene, handling }, new Set(['leads'])).handling?.grips;
    expect(kept?.map(({ kind }) => kind)).toEqual(['object']);
  });

  it('has no names, and all objects', () => {
    const bare = withoutHidden(scene, new Set(['names']));
    expect(marksOf(scene, 'names')).not.toEqual([]);
    expect(marksOf(bare, 'names')).toEqual([]);
    expect(marksOf(bare, 'picture')).toEqual(marksOf(scene, 'picture'));
  });

  it('has no finding that could be gone to', () => {
    expect(kindsAfter('findings')).not.toContain('finding');
  });

  it('keeps the figures of the shading with the names off', () => {
    const emphasis = sceneOf(doorwayPlan, 'emphasis');
    const left = marksOf(withoutHidden(emphasis, new Set(['names'])), 'names');
    expect(left.length).toBeGreaterThan(0);
    expect(left.length).toBeLessThan(marksOf(emphasis, 'names').length);
  });

  it('has no glazes, nor a legend that tells of them, and all body colours', () => {
    for (const view of ['drawing', 'colour', 'sittings'] as const) {
      const glazed = studioScene(kitchenPlan, view);
      const bare = withoutHidden(glazed, new Set(['glazes']));
      const keysIn = (of: typeof glazed, layer: 'picture' | 'captions') =>
        marksOf(of, layer).map(({ key }) => key);
      const gone = keysIn(glazed, 'picture').filter((key) => !keysIn(bare, 'picture').includes(key));
      expect(gone.map((key) => key.replace(/^glaze over (?:sitting:[^:]*:)?/, ''))).toEqual(['object:fruit']);
      expect(keysIn(glazed, 'captions')).toContain('legend:glaze:0');
      expect(keysIn(bare, 'captions')).not.toContain('legend:glaze:0');
      expect(bare.description).toContain('Hidden in the drawing: the glazes over body colours.');
    }
    expect(isThere(scene, 'glazes')).toBe(false);
  });

  it('has no transfer grid, nor its letters, where the plan states one', () => {
    const ruled = sceneOf(`${doorwayPlan}\ngrid every 10 cm\n`, 'drawing');
    const keys = (of: typeof ruled) =>
      of.layers.flatMap(({ marks }) => marks).filter(({ key }) => key.startsWith('transfer-grid'));
    expect(keys(ruled).length).toBeGreaterThan(8 + 5);
    expect(keys(withoutHidden(ruled, new Set(['grid'])))).toEqual([]);
    expect(keys(withoutHidden(ruled, new Set(['names'])))).toEqual(keys(ruled));
    expect(isThere(scene, 'grid')).toBe(false);
    expect(isThere(sceneOf(doorwayPlan, 'transfer'), 'grid')).toBe(true);
  });

  it('says what is left out, and only what would be there', () => {
    const told = withoutHidden(scene, new Set(overlays)).description;
    expect(told).toContain(
      'Hidden in the drawing: the division lines and the horizon, the names of objects and what points to them, the leads and the marks of findings.',
    );
    const notan = sceneOf(doorwayPlan, 'notan');
    expect(isThere(notan, 'leads')).toBe(false);
    expect(withoutHidden(notan, new Set(['leads'])).description).toBe(notan.description);
  });
});
