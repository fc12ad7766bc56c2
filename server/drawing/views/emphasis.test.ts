import { describe, expect, it } from 'vitest';
import { luminousReflectance } from '../../plan/colour/value.js';
import { bands } from '../picture/bands.js';
import { compose } from '../compose.js';
import { isHex } from '../scene.js';
import { markOf, marksOf, sceneOf, worked } from '../test-plans.js';
import { EMPHASIS_GREYS } from './emphasis.js';

const plan = `canvas 80 x 50 cm
focus (20, 20)
  win by value
scale 5
object wall
  plane background
  shape rectangle (0, 0) to (80, 50)
  value 3
object hut, dominant
  shape rectangle (15, 15) to (25, 25)
  value 5
  edges hard
object cart, secondary
  shape rectangle (60, 35) to (66, 40)
  value 4
  edges soft`;

/** The cart has a strong border as well. */
const twoPlaces = plan.replace('value 4\n  edges soft', 'value 5\n  edges hard');

describe('emphasis', () => {
  const scene = sceneOf(plan, 'emphasis');

  it('shades the places in bands over the quiet picture, each inside the one before', () => {
    const keys = marksOf(scene, 'construction').map(({ key }) => key);
    expect(keys.filter((key) => key.startsWith('band:'))).toEqual(['band:1', 'band:2', 'band:3', 'band:4']);
    expect(keys.indexOf('band:4')).toBeLessThan(keys.indexOf('object:hut:line'));
    expect(keys.at(-1)).toMatch(/^focus/);
  });

  it('falls evenly in lightness from bare to strongest, so that no colour is needed to read it', () => {
    const lightness = bands.map(({ colour }) => colour.lab[0]);
    // The darkest quiet grey: L* of the luminous reflectance of its Munsell value, CIE 15.
    const bare = 116 * Math.cbrt(luminousReflectance(EMPHASIS_GREYS.darkest) / 100) - 16;
    const steps = [bare, ...lightness]
      .slice(1)
      .map((each, index) => ([bare, ...lightness][index] ?? 0) - each);
    expect(Math.min(...steps)).toBeGreaterThan(6);
  });

  it('writes on the contours what they stand for', () => {
    expect(markOf(scene, 'band:1:level')).toMatchObject({ text: '20', face: 'note' });
  });

  it('numbers the strong places by rank, with their pull as a part of the focal point’s', () => {
    const { measures } = worked(plan);
    expect(measures.emphasis.focal?.rank).toBe(1);
    expect(markOf(scene, 'place:1:number')).toMatchObject({ text: '1' });
    expect(markOf(scene, 'place:1:share')).toMatchObject({ text: '100 %' });
    const told = sceneOf(twoPlaces, 'emphasis').legend.map(({ text }) => text);
    expect(told).toContain('at the focal point, hut against wall');
    expect(told.find((text) => text.startsWith('cart against wall'))).toMatch(/, \d+ %$/);
  });

  it('lets no peak of the centre of interest outshine the focal point in it', () => {
    const { plan: read, measures } = worked(twoPlaces);
    const { emphasis } = measures;
    const [own, ...others] = emphasis.places;
    if (own === undefined) throw new Error('There is no strong place.');
    const brighter = { ...emphasis, places: [{ ...own, strength: 1.07 * own.strength }, ...others] };
    const { legend } = compose(read, { ...measures, emphasis: brighter }, [], 'emphasis');
    expect(legend.flatMap(({ key, text }) => (key.startsWith('place:') ? [text] : []))).toEqual([
      'at the focal point, hut against wall',
      expect.stringMatching(/^cart against wall, \d+ %$/),
    ]);
  });

  it('ranks the focal point below a place that outshines it', () => {
    const away = sceneOf(twoPlaces.replace('focus (20, 20)', 'focus (63, 37)'), 'emphasis');
    const places = away.legend.flatMap(({ key, text }) => (key.startsWith('place:') ? [text] : []));
    expect(places[0]).toMatch(/^hut against wall, [\d.]+ times$/);
    expect(places[1]).toBe('at the focal point, cart against wall');
  });

  it('says by which of the means that the plan states the focal point wins', () => {
    const text = marksOf(scene, 'captions').flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(text).toContain('The focal point wins by');
    expect(text.join(' ')).toMatch(/Value: /);
    expect(text.join(' ')).not.toContain('`');
  });

  it('says so where nothing draws the eye', () => {
    const nothing = sceneOf('canvas 80 x 50 cm', 'emphasis');
    expect(nothing.legend.map(({ text }) => text)).toContain('no border here draws the eye yet');
    expect(marksOf(nothing, 'construction').filter(({ key }) => key.startsWith('band:'))).toEqual([]);
  });

  it('takes the strongest place as the whole where there is no focal point', () => {
    const { plan: read, measures } = worked(plan.replace('focus (20, 20)\n  win by value\n', ''));
    const { legend } = compose(read, measures, [], 'emphasis');
    expect(legend.find(({ key }) => key === 'places')?.text).toMatch(/strongest place’s$/);
  });

  it('draws nothing in the colours of the page on the picture', () => {
    const inks = (['picture', 'construction', 'names'] as const)
      .flatMap((layer) => marksOf(scene, layer))
      .flatMap((mark) => {
        if (mark.kind === 'image') return [];
        return mark.kind === 'path' ? [mark.fill, mark.stroke?.ink] : [mark.ink, mark.halo];
      })
      .filter((ink) => ink !== undefined);
    expect(inks.length).toBeGreaterThan(10);
    expect(inks.every(isHex)).toBe(true);
  });
});
