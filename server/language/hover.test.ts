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

test('an object: what is seen of it, its step, its colour as painted', () => {
  expect(hoverText(at('sky'))).toBe(
    [
      '**sky**: in the middle plane',
      'Covers 75 % of the picture. 25 % of it is hidden, by tram.',
      'Step 4 of 5, Munsell value 7.',
      'Painted `#79b8b9`, 8.9BG 7.0/4.3 from `teal`, dominant',
    ].join('\n\n'),
  );
});

test('an object where it is only named', () => {
  expect(hoverText(`object sky\n  shape rectangle (0, 0) to (40, 30)\npath s|ky`)).toContain('**sky**');
});

test('a colour: its notations and its share', () => {
  expect(hoverText(at('teal'))).toContain(
    '**teal**: `#2f6f73`, 8.9BG 4.2/4.3\n\nCovers 75 % of the picture.',
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
  expect(hoverText('can|vas 64.4 x 40 cm')).toContain('Golden section, 0.5 % shorter.');
});

test('the scale: how much lies on every step', () => {
  expect(hoverText(at('scale'))).toContain('- step 4 \\(light\\): Munsell value 7, 75 % of the picture');
  expect(hoverText(at('scale'))).toContain('Mean Munsell value 5.5.');
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
