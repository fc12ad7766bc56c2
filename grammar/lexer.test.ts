import { describe, expect, it } from 'vitest';
import { lexLine } from './lexer.js';

function tokens(text: string): string {
  return lexLine(text)
    .tokens.map((token) => `${token.tokenType.name}:${token.image}`)
    .join(' | ');
}

describe('lexLine', () => {
  it.each([
    ['80x50 x x5', 'Number:80 | Times:x | Number:50 | Word:x | Word:x5'],
    ['80 cm × 50', 'Number:80 | CmKeyword:cm | Times:× | Number:50'],
    ['x 1-2', 'Word:x | Number:1 | Dash:- | Number:2'],
    ['2026-12-01 2026-1', 'Date:2026-12-01 | Number:2026 | Dash:- | Number:1'],
    ['7 1/2 7½ .5', 'Number:7 | Fraction:1/2 | Number:7 | Fraction:½ | Number:.5'],
    ['7.5R 4/10 N 5/ N5/ n5', 'Munsell:7.5R 4/10 | Munsell:N 5/ | Munsell:N5/ | Word:n5'],
    ['rgb(1 2 3) rgb (1)', 'Css:rgb(1 2 3) | Word:rgb | OpenBracket:( | Number:1 | CloseBracket:)'],
    ['PR108:1 PB29', 'ColourIndex:PR108:1 | Word:PB29'],
    ['COLOR Center', 'ColourKeyword:COLOR | CentreKeyword:Center'],
    ['block-in block -in', 'BlockInKeyword:block-in | Word:block | Dash:- | InKeyword:in'],
    ['"a // b" “c"d” "e', 'Sentence:"a // b" | Sentence:“c"d” | UnclosedSentence:"e'],
  ])('takes %s apart', (text, expected) => {
    expect(tokens(text)).toBe(expected);
  });

  it('keeps the comment apart, without blanks at its end', () => {
    expect(lexLine('value 3 // why  ').comment).toEqual({ start: 8, end: 14, text: '// why' });
  });

  it('says which characters it could not read', () => {
    expect(lexLine('a @@ b\0').unreadable).toEqual([
      { start: 2, end: 4 },
      { start: 6, end: 7 },
    ]);
  });
});
