import { describe, expect, it } from 'vitest';
import { classify, parse } from './index.js';

/** The words of the last line with their classes. */
function classes(text: string): readonly string[] {
  const lines = text.split('\n');
  return classify(parse(text), lines.length - 1).map(
    ({ line, start, end, class: found }) => `${lines[line]?.slice(start, end) ?? ''} ${found}`,
  );
}

describe('classify', () => {
  it('tells names that are given from names that are used', () => {
    expect(classes('object value, dominant')).toEqual([
      'object keyword',
      'value definition',
      'dominant choice',
    ]);
    expect(classes('object a\n  edges soft against sky')).toEqual([
      'edges keyword',
      'soft choice',
      'against keyword',
      'sky reference',
    ]);
  });

  it('tells numbers, units, colours, days, sentences and comments', () => {
    expect(classes('canvas 80 x 7 1/2 in // why')).toEqual([
      'canvas keyword',
      '80 number',
      'x keyword',
      '7 number',
      '1/2 number',
      'in unit',
      '// why comment',
    ]);
    expect(classes('palette\n  paint rose PR108:1 full 7.5R 4/10')).toEqual([
      'paint keyword',
      'rose definition',
      'PR108:1 colour',
      'full keyword',
      '7.5R 4/10 colour',
    ]);
    expect(classes('sitting "one" on 2026-12-01')).toEqual([
      'sitting keyword',
      '"one" sentence',
      'on keyword',
      '2026-12-01 date',
    ]);
    expect(classes('mood quiet, then relief')).toEqual(['mood keyword', 'quiet, then relief sentence']);
  });

  it('takes both words of an opening of two', () => {
    expect(classes('focus centre\n  win by value')).toEqual(['win keyword', 'by keyword', 'value choice']);
  });

  it('tells what it can of a line that is broken', () => {
    expect(classes('objct sky 12')).toEqual(['12 number']);
  });

  it('refuses trees that parse did not make', () => {
    expect(() => classify({ ...parse('') })).toThrow('parse');
  });
});
