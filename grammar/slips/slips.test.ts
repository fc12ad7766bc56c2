import { describe, expect, it } from 'vitest';
import { parse } from '../index.js';

/** The problems of the last line as "words concerned: message", and the line as the fix leaves it. */
function said(text: string): readonly string[] {
  const line = text.split('\n').at(-1) ?? '';
  const row = text.split('\n').length - 1;
  return parse(text)
    .problems.filter((problem) => problem.line === row)
    .flatMap(({ start, end, message, fix }) => [
      `${line.slice(start, end)}: ${message}`,
      ...(fix ? [`${line.slice(0, start)}${fix.replacement}${line.slice(end)}`] : []),
    ]);
}

interface Slip {
  readonly written: string;
  readonly told: string;
  readonly mended?: string;
}

const underObject = 'object tram\n  ';

describe.each<[string, readonly Slip[]]>([
  [
    'quotes',
    [
      {
        written: 'plan „Die Geigerin“',
        told: '„Die Geigerin“: A sentence stands between `"` and `"`.',
        mended: 'plan "Die Geigerin"',
      },
      {
        written: 'concept « Elle attend. »',
        told: '« Elle attend. »: A sentence stands between `"` and `"`.',
        mended: 'concept "Elle attend."',
      },
      {
        written: "cue 'the baker’s bell'",
        told: '\'the baker’s bell\': A sentence stands between `"` and `"`.',
        mended: 'cue "the baker’s bell"',
      },
      {
        written: 'plan "Yard" by Anna K.',
        told: 'Anna K.: After `by` a sentence in quotes is needed.',
        mended: 'plan "Yard" by "Anna K."',
      },
      {
        written: `${underObject}shape from parts/hat.svg part "brim"`,
        told: 'parts/hat.svg: After `from` a file name in quotes is needed.',
        mended: '  shape from "parts/hat.svg" part "brim"',
      },
      {
        written: `${underObject}shape from "hat.svg" part brim`,
        told: 'brim: After `part` a name in quotes is needed.',
        mended: '  shape from "hat.svg" part "brim"',
      },
      {
        written: 'canvas 24" x 18"',
        told: '" x 18": Inches are written `in`.',
        mended: 'canvas 24 in x 18 in',
      },
    ],
  ],
  [
    'signs of other notations',
    [
      { written: 'concept: "Dusk."', told: ':: No `:` is needed here.', mended: 'concept "Dusk."' },
      { written: 'colour teal = #2f6f73', told: '=: No `=` is needed here.', mended: 'colour teal  #2f6f73' },
      {
        written: 'focus upper left;',
        told: ';: No `;` is needed at the end of a line.',
        mended: 'focus upper left',
      },
      { written: 'focus (9; 5)', told: ';: Write a comma here.', mended: 'focus (9, 5)' },
      { written: 'focus [9, 5]', told: '[9, 5]: Brackets are round here.', mended: 'focus (9, 5)' },
      {
        written: 'canvas 80 * 50 cm',
        told: '*: Between width and height stands `x`.',
        mended: 'canvas 80 x 50 cm',
      },
    ],
  ],
  [
    'numbers',
    [
      { written: 'canvas 40 x', told: '40 x: After `40 x` the height is needed.' },
      {
        written: `${underObject}shape rectangle 9 cm x`,
        told: '9 cm x: After `9 cm x` the height is needed.',
      },
      {
        written: `${underObject}value 4,5`,
        told: '4,5: Within a number stands a point, not a comma.',
        mended: '  value 4.5',
      },
      {
        written: 'focus (2,5, 3,5)',
        told: '(2,5, 3,5): Within a number stands a point, not a comma.',
        mended: 'focus (2.5, 3.5)',
      },
      {
        written: 'budget value dark 30,5%',
        told: '30,5: Within a number stands a point, not a comma.',
        mended: 'budget value dark 30.5%',
      },
      {
        written: `${underObject}value 2-3`,
        told: '2-3: One value is needed; `2.5` lies between 2 and 3.',
        mended: '  value 2.5',
      },
      {
        written: 'canvas 24 x 18 inches',
        told: 'inches: `inches` is written `in`.',
        mended: 'canvas 24 x 18 in',
      },
      {
        written: `${underObject}resize 1.2`,
        told: '1.2: After `1.2` `%` is needed.',
        mended: '  resize 120%',
      },
      {
        written: 'budget value dark 0.3',
        told: '0.3: After `0.3` `%` is needed.',
        mended: 'budget value dark 30%',
      },
      {
        written: `${underObject}turn 15 clockwise`,
        told: '15 clockwise: Turning is clockwise already.',
        mended: '  turn 15',
      },
      {
        written: `${underObject}turn 15 degrees anticlockwise`,
        told: '15 degrees anticlockwise: Turning is clockwise; a minus turns the other way.',
        mended: '  turn -15 degrees',
      },
    ],
  ],
  [
    'places and sizes',
    [
      {
        written: `${underObject}at 25, 28`,
        told: '25, 28: A place in numbers stands in brackets: `(25, 28)`.',
        mended: '  at (25, 28)',
      },
      {
        written: `${underObject}shape outline 0,15 9,14 24,18`,
        told: '0,15 9,14 24,18: A place in numbers stands in brackets: `(0, 15)`.',
        mended: '  shape outline (0, 15) (9, 14) (24, 18)',
      },
      {
        written: `${underObject}shape rectangle 0,0 to 12,8`,
        told: '0,0 to 12,8: A place in numbers stands in brackets: `(0, 0)`.',
        mended: '  shape rectangle (0, 0) to (12, 8)',
      },
      {
        written: `${underObject}shape rectangle (0, 0)`,
        told: 'rectangle (0, 0): A rectangle is given by two opposite corners, such as `(0, 0) to (12, 8)`, or by its size, such as `12 x 8`.',
      },
      {
        written: `${underObject}shape rectangle (0, 0) (12, 8)`,
        told: '(: `to` is needed between `(0, 0)` and `(12, 8)`.',
        mended: '  shape rectangle (0, 0) to (12, 8)',
      },
      {
        written: `${underObject}shape rectangle 5 3`,
        told: '3: `x` is needed between `5` and `3`.',
        mended: '  shape rectangle 5 x 3',
      },
      {
        written: `${underObject}shape ellipse 5, 3`,
        told: ',: `x` is needed between `5` and `3`.',
        mended: '  shape ellipse 5 x 3',
      },
      {
        written: `${underObject}shape ellipse 5 by 3 cm`,
        told: 'by: `x` is needed between `5` and `3`.',
        mended: '  shape ellipse 5 x 3 cm',
      },
      {
        written: `${underObject}at door, up 4 cm`,
        told: ', up 4 cm: The way stands after the length: `4 cm up`.',
        mended: '  at door, 4 cm up',
      },
      {
        written: `${underObject}repeat 4 times every (4, 0)`,
        told: 'times : `times` is not needed here.',
        mended: '  repeat 4 every (4, 0)',
      },
      {
        written: `${underObject}mirror left right`,
        told: 'right: `to` is needed between `left` and `right`.',
        mended: '  mirror left to right',
      },
    ],
  ],
  [
    'colours',
    [
      {
        written: 'colour wall R5 4/2',
        told: 'R5 4/2: A Munsell notation is written hue, value/chroma: `5R 4/2`.',
        mended: 'colour wall 5R 4/2',
      },
      {
        written: 'colour skin 7.5 YR 6 / 4 dominant',
        told: '7.5 YR 6 / 4: A Munsell notation is written hue, value/chroma: `7.5YR 6/4`.',
        mended: 'colour skin 7.5YR 6/4 dominant',
      },
      {
        written: 'colour skin 7,5YR 6/4',
        told: '7,5YR 6/4: A Munsell notation is written hue, value/chroma: `7.5YR 6/4`.',
        mended: 'colour skin 7.5YR 6/4',
      },
      {
        written: 'colour lamp rgb(240,190,90 discord',
        told: 'rgb(240,190,90: The bracket after `rgb` is not closed.',
        mended: 'colour lamp rgb(240,190,90) discord',
      },
      {
        written: 'colour lamp rgb (240 190 90)',
        told: 'rgb (240 190 90): No blank stands after `rgb`.',
        mended: 'colour lamp rgb(240 190 90)',
      },
      {
        written: 'colour wine CMYK(0,80,60,40)',
        told: 'CMYK(0,80,60,40): `CMYK` is no colour that can be read. Write `rgb(47 111 115)`, `#2f6f73` or `7.5R 4/10`.',
      },
      {
        written: 'colour teal 2f6f73',
        told: '2f6f73: A colour in hex digits begins with `#`.',
        mended: 'colour teal #2f6f73',
      },
      {
        written: 'colour teal',
        told: 'teal: After `teal` a colour, such as `#2f6f73` or `7.5R 4/10`, is needed. The colour of an object is indented under it.',
      },
      {
        written: 'palette\n  paint white PW 6',
        told: 'PW 6: A colour index is one word: `PW6`.',
        mended: '  paint white PW6',
      },
    ],
  ],
  [
    'names and lines',
    [
      {
        written: 'object row of houses, minor',
        told: 'row of houses: A name is one word: `row-of-houses`.',
        mended: 'object row-of-houses, minor',
      },
      {
        written: 'colour brick red #8a4a36',
        told: 'brick red: A name is one word: `brick-red`.',
        mended: 'colour brick-red #8a4a36',
      },
      {
        written: 'palette\n  paint burnt sienna PBr7, warm',
        told: 'burnt sienna: A name is one word: `burnt-sienna`.',
        mended: '  paint burnt-sienna PBr7, warm',
      },
      {
        written: `${underObject}shape rectangle from (0, 0) to (40, 18)`,
        told: 'from : No `from` is needed here.',
        mended: '  shape rectangle (0, 0) to (40, 18)',
      },
      {
        written: 'object signal, dominant, detail fine',
        told: ', detail fine: `detail` wants a line of its own, indented under this one.',
        mended: 'object signal, dominant\n  detail fine',
      },
      {
        written: 'object signal, detail fine',
        told: ', detail fine: `detail` wants a line of its own, indented under this one.',
        mended: 'object signal\n  detail fine',
      },
      {
        written: 'object sky background',
        told: ' background: `plane background` wants a line of its own, indented under this one.',
        mended: 'object sky\n  plane background',
      },
      {
        written: `${underObject}value 3 edges soft`,
        told: ' edges soft: `edges` wants a line of its own.',
        mended: '  value 3\n  edges soft',
      },
      {
        written: 'sitting "a"\n  layer block in',
        told: 'block in: `block-in` is one word.',
        mended: '  layer block-in',
      },
    ],
  ],
  [
    'days',
    ['1.12.2026', '1 December 2026', '1st Dec. 2026', 'December 1, 2026', '2026/12/1'].map((day) => ({
      written: `due ${day}`,
      told: `${day}: A day is written year, month, day, such as \`2026-12-01\`.`,
      mended: 'due 2026-12-01',
    })),
  ],
])('%s', (_, slips) => {
  it.each(slips)('$written', ({ written, told, mended }) => {
    expect(said(written)).toEqual([told, ...(mended === undefined ? [] : [mended])]);
  });

  it.each(slips.filter(({ mended }) => mended !== undefined))('the fix of $written can be read', (slip) => {
    const above = slip.written.split('\n').slice(0, -1);
    expect(parse([...above, slip.mended].join('\n')).problems).toEqual([]);
  });
});

describe('what may be meant either way', () => {
  it('is told, and no fix guesses it', () => {
    expect(said('due 3/4/2027')).toEqual([
      '3/4/2027: A day is written year, month, day, such as `2026-12-01`.',
    ]);
    expect(said('due 30/4/2027').at(-1)).toBe('due 2027-04-30');
  });

  it('is left as it is where a comma is right', () => {
    expect(parse('divide own\n  uprights 20,5').problems).toEqual([]);
    expect(parse('focus (2,5)').problems).toEqual([]);
  });
});
