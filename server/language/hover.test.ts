import { MarkupContent } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { everything, nothing, openPlan } from './test-support.js';

function hoverText(marked: string, abilities = everything): string | undefined {
  const { service, uri, position, failures } = openPlan(marked, abilities);
  const found = service.hover(uri, position);
  expect(failures).toEqual([]);
  return found && MarkupContent.is(found.contents) ? found.contents.value : undefined;
}

/** The sky covers all; the tram hides a quarter of it and is hidden by nothing; 40 x 30 has a diagonal of 50. */
const picture = (mark: (text: string) => string): string =>
  mark(`canvas 40 x 30 cm
focus (20, 25)
scale 5
  group dark 1-2, middle 3, light 4-5
budget value dark 30%, light 70% within 6%
colour teal #2f6f73 dominant
object sky
  shape rectangle (0, 0) to (40, 30)
  colour teal
  value 4
object tram, dominant
  shape rectangle (0, 15) to (20, 30)
  value 1
allow even count because "two are the *story* ![x](http://localhost/x.png)"
`);
const at = (words: string): string =>
  picture((text) => {
    expect(text).toContain(words);
    return text.replace(words, `${words.slice(0, 1)}|${words.slice(1)}`);
  });

test('an object: what is seen of it, its step, its colour as painted, its weight', () => {
  // Mean value 0.75 x 7 + 0.25 x 1 = 5.5. Weights: sky 0.75 x (1.5 + 0.43), tram 0.25 x 4.5. The sky's middle lies
  // at (20 - 0.25 x 10) / 0.75 = 23.33, a twelfth of the width from the middle.
  expect(hoverText(at('sky'))).toBe(
    [
      '**sky**: in the middle plane',
      'Covers 75 % of the picture. 25 % of it is hidden, by tram.',
      'Step 4 of 5, Munsell value 7.',
      'Painted `#79b8b9`, 8.9BG 7.0/4.3 from `teal`, dominant, cool',
      'Carries 56.2 % of the visual weight, 8.3 % of the width right of the middle.',
    ].join('\n\n'),
  );
});

test('an object where it is only named', () => {
  expect(hoverText(`object sky\n  shape rectangle (0, 0) to (40, 30)\npath s|ky`)).toContain('**sky**');
});

test('a colour: its notations and its share', () => {
  expect(hoverText(at('teal'))).toContain(
    '**teal**: `#2f6f73`, 8.9BG 4.2/4.3\n\nBlue\\-green on the painters’ wheel.\n\nCovers 75 % of the picture.',
  );
});

test('a colour written out', () => {
  expect(hoverText('canvas 40 x 30 cm\n  ground #b9|a17c')).toBe('`#b9a17c`, 1Y 6.7/3.4');
});

test('a budget: wanted and measured', () => {
  expect(hoverText(at('budget'))).toContain(
    '- **dark**: 30 % wanted, within 6 %; 25 % measured, within the budget\n' +
      '- **light**: 70 % wanted, within 6 %; 75 % measured, within the budget',
  );
});

test('a group of values', () => {
  expect(hoverText(at('dark 1-2'))).toContain('**dark**: steps 1 to 2, 25 % of the picture');
});

test('the focal point: the nearest crossing, and how far it is', () => {
  // Golden section of 40 x 30: the lower crossings lie at 15.28 and 24.72 across and 18.54 down.
  expect(hoverText(at('focus'))).toContain('Nearest crossing: lower left of golden, 8 cm away');
  expect(hoverText(at('focus'))).toContain('20 % of the diagonal from the middle of the canvas.');
});

test('the canvas: proportion, what the trade calls it, and diagonal', () => {
  expect(hoverText(at('canvas'))).toContain('Proportion 1.333 : 1. Diagonal 50 cm.');
  expect(hoverText(at('canvas'))).toContain('3 : 4. In proportion with 12 x 16 in.');
  expect(hoverText('can|vas figure 20')).toContain('The size of figure 20.');
  expect(hoverText('can|vas 18 x 14 in')).toContain('A stock size.\n');
  expect(hoverText('can|vas 45.7 x 35.6 cm')).toContain('The size of 14 x 18 in.');
  expect(hoverText('can|vas 64.4 x 40 cm')).toContain('Golden section, 0.5 % shorter.');
});

test('the transfer grid: how many squares, of what size, and where the first lines are drawn', () => {
  expect(hoverText('canvas 64 x 45 cm\ngr|id every 10 cm')).toContain(
    '7 × 5 squares of 10 cm, the last column 4 cm wide and the last row 5 cm high, lettered from the left, numbered from the top.',
  );
  expect(hoverText('canvas 16 x 11 in\ngr|id 4 x 2')).toContain(
    '4 × 2 squares of 4 in across and 5 1/2 in down',
  );
  expect(hoverText('canvas 16 x 11 in\ngr|id 4 x 2')).toContain('They are not square');
});

test('the division: where its lines lie, and what of it is nearest to the focal point', () => {
  const divided = (words: string): string | undefined =>
    hoverText(picture((text) => text.replace('focus', `di|vide ${words}\nfocus`)));
  // Of 40 x 30 by 0.618 and 0.382.
  expect(divided('golden')).toContain(
    '- **golden** lines 15.28 and 24.72 cm from the left, 11.46 and 18.54 cm from the top; four crossings',
  );
  expect(divided('golden')).toContain(
    'The focal point is 8 cm from the nearest crossing, lower left of golden \\(16 % of the diagonal\\).',
  );
  expect(divided('diagonals, quarters')).toContain('- **diagonals** lines');
  expect(divided('diagonals, quarters')).toContain('- **quarters** lines 10, 20 and 30 cm from the left');
});

test('the scale: how much lies on every step', () => {
  expect(hoverText(at('scale'))).toContain('- step 4 \\(light\\): Munsell value 7, 75 % of the picture');
  expect(hoverText(at('scale'))).toContain(
    'Mean Munsell value 5.5: a middle key. Nine tenths of the picture lie between 1 and 7.',
  );
});

test('a group of values: the pieces it falls into', () => {
  const two = picture((text) =>
    text
      .replace('dark 1-2', 'd|ark 1-2')
      .replace('allow', 'object bin\n  shape circle 4 at (36, 5)\n  value 2\nallow'),
  );
  expect(hoverText(two)).toContain('It falls into 2 pieces; the largest is 96 % of it.');
});

/** A lamp at the focal point of 40 x 30, a lead that runs into it and one that passes by, and two stops. */
const street = `canvas 40 x 30 cm
focus (20, 20)
  win by value, scale
horizon 12 cm
scale 5
  planes lighten with distance
wheel painters
concept "One lamp is enough."
cue "the hum of the lamp" carried by lamp
cue "wet stones"
object sky
  plane background
  shape rectangle (0, 0) to (40, 30)
  colour 5B 7/2
  value 4
object lamp, dominant
  shape circle 8 at focus
  colour 5YR 7/8
  value 5
object bin
  plane foreground
  shape rectangle (32, 24) to (36, 28)
  value 3
lead kerb from left edge at 20 to focus
lead wire from upper left corner through (10, 6) to (20, 12)
path bin, lamp
`;
const along = (words: string): string => {
  expect(street).toContain(words);
  return street.replace(words, `${words.slice(0, 1)}|${words.slice(1)}`);
};

test('a lead: where it comes from and how near it passes', () => {
  expect(hoverText(along('kerb'))).toBe(
    '**kerb**: comes in from the left, 20 cm long\n\nIt runs into the focal point.',
  );
  // Straight down into it, beside one that comes level.
  expect(hoverText(`${along('kerb')}lead drip from top edge at 50% to focus`)).toContain(
    'It arrives at 90° to `drip`.',
  );
  // Past (20, 12) it keeps the slope of 6 in 10: from (20, 20) the line 3x - 5y = 0 is 40 / sqrt(34) away.
  expect(hoverText(along('wire'))).toContain(
    'comes in from the upper left corner, 23.3 cm long\n\nCarried on, it passes the focal point by 6.9 cm \\(13.7 % of the diagonal\\).',
  );
});

test('the path: the emphasis of its stops', () => {
  expect(hoverText(along('path bin'))).toMatch(
    /- `bin`: \d.* of the emphasis of the focal point\n- `lamp`: \d/u,
  );
});

test('the focal point: its rank, and by which means it wins', () => {
  expect(hoverText(along('focus (20'))).toContain('It is the strongest place of the picture.');
  const means = hoverText(along('win by'));
  expect(means).toContain(
    '**value** does not hold: its contrast of value is 78 % of that at the strongest place elsewhere, where `bin` meets `sky`',
  );
  expect(means).toContain('**scale** holds:');
  expect(means).toContain('It wins by more than is stated:');
});

test('the planes, the horizon and the wheel: their figures', () => {
  expect(hoverText(along('planes lighten'))).toContain(
    '- **background**: 94.5 % of the picture, mean Munsell value 7',
  );
  expect(hoverText(along('horizon'))).toContain('12 cm from the top, 40 % of the height.');
  expect(hoverText(along('wheel painters'))).toContain('of the picture.');
});

test('the concept, and a cue with what carries it', () => {
  expect(hoverText(along('concept'))).toContain(
    'One lamp is enough.\n\n- “the hum of the lamp” carried by `lamp` \\(4.2 %\\)\n- “wet stones” nothing carries it yet',
  );
  expect(hoverText(along('cue "the'))).toContain('Carried by `lamp` \\(4.2 %\\).');
  expect(hoverText(along('lamp, dominant'))).toContain('Carries the cue “the hum of the lamp”.');
});

test('a word of the language: what it means, how it is written, what holds without it', () => {
  const text = hoverText('wh|eel painters');
  expect(text).toContain('The colour wheel on which complements are looked for.');
  expect(text).toContain('```mahl\nwheel painters\n```');
  expect(text).toContain('[Reference](file:///mahlstick/grammar/README.md#wheel)');
});

test('an exception: its reason, and the rule it sets aside', () => {
  const text = hoverText(at('even count'));
  expect(text).toContain('`even count` is set aside:');
  expect(text).toContain('#even-count');
});

describe('a plan from a stranger', () => {
  test('brings no pictures or links into the editor', () => {
    expect(hoverText(at('even count'))).toContain(
      'two are the \\*story\\* \\!\\[x\\]\\(http://localhost/x.png\\)',
    );
  });
  test('is shown as it is to a client that takes plain text', () => {
    expect(hoverText(at('even count'), nothing)).toContain(
      'two are the *story* ![x](http://localhost/x.png)',
    );
    expect(hoverText(at('sky'), nothing)).toContain('Painted #79b8b9, 8.9BG 7.0/4.3 from teal, dominant');
  });
});

test.each(['concept "a | quiet"', '|\n', 'canvas 40 x 30 cm // a| remark', 'path no|body', 'ob|ject'])(
  'nothing to say: %s',
  (marked) => {
    expect(hoverText(marked) ?? '').not.toContain('undefined');
  },
);
