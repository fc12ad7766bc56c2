import { describe, expect, it } from 'vitest';
import { format } from './index.js';

describe('format', () => {
  it.each([
    ['canvas 80x50cm', 'canvas  80 x 50 cm'],
    ['  canvas   80  x 50 cm   ', 'canvas  80 x 50 cm'],
    ['sitting   "Block in" on   2026-12-01', 'sitting "Block in" on 2026-12-01'],
    ['based   on "a.mahl"', 'based on "a.mahl"'],
    ['COLOR teal   #2F6F73    Dominant', 'COLOR   teal #2F6F73 Dominant'],
    ['path sky road and tram', 'path    sky, road and tram'],
    ['path sky ,road,tram', 'path    sky, road, tram'],
    ['object tram dominant', 'object  tram, dominant'],
    ['focus upper right 3cm left', 'focus   upper right, 3 cm left'],
    ['focus ( 12 8 )', 'focus   (12, 8)'],
    ['focus (-12,-8 %)', 'focus   (-12, -8%)'],
    ['horizon 7½ in', 'horizon 7 ½ in'],
    ['mood   quiet ,  then relief // why', 'mood    quiet ,  then relief  // why'],
    ['budget value a 30% b 70 % within 5 %', 'budget  value a 30%, b 70% within 5%'],
    ['palette', 'palette'],
    ['//comment', '//comment'],
  ])('sets %s as %s', (written, set) => {
    expect(format(written)).toBe(`${set}\n`);
  });

  it('sets ranges and angles close', () => {
    expect(format('scale 5\n group dark 1 - 2 light 3–5')).toBe('scale   5\n  group   dark 1-2, light 3–5\n');
    expect(format('object a\n turn -15 °')).toBe('object  a\n  turn    -15°\n');
  });

  it('indents by two blanks a level, from tabs too', () => {
    expect(format('object a\n\tshape smooth (1, 2)\n\t\t(3, 4)\n\tvalue 3')).toBe(
      'object  a\n  shape   smooth (1, 2)\n    (3, 4)\n  value   3\n',
    );
    expect(format('object a\n  value 3', { indentation: '\t' })).toBe('object  a\n\tvalue   3\n');
  });

  it('keeps one blank line in a row, none at the ends', () => {
    expect(format('\n\n\nplan "a"\n\n \n\ncanvas A3\n\n\n')).toBe('plan    "a"\n\ncanvas  A3\n');
    expect(format('')).toBe('');
    expect(format(' \n\t\n')).toBe('');
  });

  it('keeps the line endings of the text and drops a byte order mark', () => {
    expect(format('\ufeffplan "a"\r\ncanvas A3')).toBe('plan    "a"\r\ncanvas  A3\r\n');
  });

  it('keeps comments at the level of their column', () => {
    const written = [
      'object a',
      '    // under a',
      '    value 3',
      '    // still under a',
      '// apart',
      'object b',
      '// end',
    ];
    expect(format(written.join('\n')).split('\n')).toEqual([
      'object  a',
      '  // under a',
      '  value   3',
      '  // still under a',
      '// apart',
      'object  b',
      '// end',
      '',
    ]);
  });

  it('only moves a line with a mistake', () => {
    expect(format('object a\n     edges   sft  against  b // why')).toBe(
      'object  a\n  edges   sft  against  b // why\n',
    );
    expect(format('objct   a\n     edges   soft')).toBe('objct   a\n  edges   soft\n');
  });
});
