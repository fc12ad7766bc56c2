import { describe, expect, it } from 'vitest';
import { parseColour } from '../colour/colour.js';
import { knownPigments, pigmentOf } from './pigments.js';

describe('what is known of a pigment', () => {
  it('is found by its Colour Index name, however the letters are cased', () => {
    expect(pigmentOf('pb29')).toMatchObject({ index: 'PB29', name: 'ultramarine blue', side: 'warm' });
    expect(pigmentOf('PBK9')?.index).toBe('PBk9');
    expect(pigmentOf('PB15:4')?.transparency).toBe('transparent');
    expect(pigmentOf('PB999')).toBeUndefined();
  });

  it('goes by what the painter calls the paint, where a Colour Index name stands for several', () => {
    expect(pigmentOf('PBr7', 'raw umber')?.name).toBe('raw umber');
    expect(pigmentOf('PBr7', 'Burnt-sienna')?.name).toBe('burnt sienna');
    expect(pigmentOf('PBr7', 'sienna')?.name).toBe('sienna or umber');
    expect(pigmentOf('PBr7')?.hazards).toEqual(['manganese']);
    expect(pigmentOf('PBr7', 'burnt sienna')?.hazards).toEqual([]);
  });

  it('holds every figure of sources that disagree', () => {
    expect(pigmentOf('PR108')?.drying).toEqual([
      { days: 5, source: 'maker’s drying guide' },
      { days: 5, source: 'Saitzyk 1987' },
    ]);
    expect(pigmentOf('PR83')?.drying.map(({ days }) => days)).toEqual([12, 5]);
  });

  it('is of one form throughout the table', () => {
    for (const { index, drying, masstone, remembered } of knownPigments()) {
      expect(index).toMatch(/^[PN](?:Bk|Br|[BGMORVWY])\d+(?::\d+)?$/);
      for (const { days } of drying) expect(days).toBeGreaterThanOrEqual(2);
      for (const { days } of drying) expect(days).toBeLessThanOrEqual(12);
      for (const tone of [masstone, remembered?.full, remembered?.tint])
        if (tone !== undefined) expect(parseColour(tone).ok).toBe(true);
    }
  });
});
