import { describe, expect, it } from 'vitest';
import { mediumIn, slowestBinder } from './mediums.js';

describe('the words of a medium', () => {
  it.each([
    ['oil', ['oil']],
    ['oil, a little walnut oil', ['oil']],
    ['linseed and turpentine', ['oil']],
    ['alkyd', ['alkyd']],
    ['Acrylic, then oil for the bird', ['oil', 'acrylic']],
    ['λάδι', ['oil']],
    ['Öl auf Leinwand', ['oil']],
    ['water-colour and gouache', ['gouache', 'watercolour']],
    ['watercolor', ['watercolour']],
    ['egg tempera', ['tempera']],
    ['turmoil', []],
    ['spit and good luck', []],
  ] as const)('name the binders, the slowest first: %s', (words, binders) => {
    expect(mediumIn(words).binders).toEqual(binders);
  });

  it('tell what is thinned with spirit, what dries by air, and what is dusty', () => {
    expect(mediumIn('turps')).toMatchObject({ hasSolvent: true, hasDryingOil: false, hasDust: false });
    expect(mediumIn('oil of spike')).toMatchObject({ hasSolvent: true, hasDryingOil: false, binders: [] });
    expect(mediumIn('oil, odourless mineral spirits')).toMatchObject({
      hasSolvent: true,
      hasDryingOil: true,
    });
    expect(mediumIn('egg and dry pigment')).toMatchObject({ hasDust: true, hasDryingOil: false });
    expect(mediumIn('acrylic')).toMatchObject({ hasSolvent: false, hasDryingOil: false, hasDust: false });
  });

  it('give the slowest binder of all that a plan says, and oil where nothing is recognised', () => {
    expect(slowestBinder('acrylic', 'oil')).toBe('oil');
    expect(slowestBinder('gouache', undefined)).toBe('gouache');
    expect(slowestBinder('honey')).toBe('oil');
    expect(slowestBinder()).toBe('oil');
  });
});
