import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

/** The names of the paints that give a side, and what lacks. */
function sides(paints: readonly string[], primary: 'yellow' | 'red' | 'blue') {
  const { plan, measures } = checked(
    ['canvas  40 x 30 cm', 'palette', ...paints.map((paint) => `  paint   ${paint}`)].join('\n'),
  );
  const found = measures.palette?.primaries.find((one) => one.primary === primary);
  const names = (indices: readonly number[] = []) =>
    indices.map((index) => plan.palette?.paints[index]?.name);
  return { warm: names(found?.warm), cool: names(found?.cool), lacks: found?.lacks };
}

describe('the split primaries of a palette', () => {
  it('are a warm and a cool paint of each, by what is known of their pigments', () => {
    const paints = [
      'lemon PY35',
      'deep PY37',
      'scarlet PR255',
      'crimson PR177',
      'ultra PB29',
      'cerulean PB35',
    ];
    expect(sides(paints, 'yellow')).toEqual({ warm: ['deep'], cool: ['lemon'], lacks: [] });
    expect(sides(paints, 'red')).toEqual({ warm: ['scarlet'], cool: ['crimson'], lacks: [] });
    expect(sides(paints, 'blue')).toEqual({ warm: ['ultra'], cool: ['cerulean'], lacks: [] });
  });

  it('lean as the plan says, whatever is usual', () => {
    expect(sides(['sea PB29, cool'], 'blue')).toEqual({ warm: [], cool: ['sea'], lacks: ['warm'] });
  });

  it('have an earth among them where the plan says how it leans, or where there is nothing brighter', () => {
    expect(sides(['lemon PY35', 'ochre PY43'], 'yellow')).toEqual({
      warm: [],
      cool: ['lemon'],
      lacks: ['warm'],
    });
    expect(sides(['lemon PY35', 'ochre PY43, warm'], 'yellow')).toEqual({
      warm: ['ochre'],
      cool: ['lemon'],
      lacks: [],
    });
    expect(sides(['ochre PY43'], 'yellow')).toEqual({ warm: ['ochre'], cool: [], lacks: ['cool'] });
  });

  it('lack both sides of a primary that is not there', () => {
    expect(sides(['white PW6', 'umber PBr7'], 'red')).toEqual({
      warm: [],
      cool: [],
      lacks: ['warm', 'cool'],
    });
  });
});
