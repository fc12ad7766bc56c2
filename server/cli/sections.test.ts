import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { inks } from './display.js';
import { graded } from './sections.js';

describe('a finding in the terminal', () => {
  const text =
    'The sketch is wider than the canvas, so that what is carried over square by square grows taller.';

  it.each(['error', 'warning', 'hint'] as const)('is set alike with colours and without: %s', (severity) => {
    const [coloured, plain] = [true, false].map((inColour) => graded(severity, '  ', text, inks(inColour)));
    expect(coloured).not.toBe(plain);
    expect(stripVTControlCharacters(coloured ?? '')).toBe(plain);
  });

  it('has its further lines below the beginning of its words', () => {
    const [first = '', second = ''] = graded('hint', ': ', text, inks(false)).split('\n');
    expect(first.indexOf('The sketch')).toBe(second.search(/\S/u));
  });
});
