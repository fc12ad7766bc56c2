import { describe, expect, it } from 'vitest';
import { parse, type Problem } from './index.js';

/** Each problem of the last line as "words concerned: message", with the words of the fix. */
function said(text: string): readonly string[] {
  const lines = text.split('\n');
  const { problems } = parse(text);
  return problems
    .filter((problem) => problem.line === lines.length - 1)
    .map((problem) => describeProblem(problem, lines[problem.line] ?? ''));
}

function describeProblem({ start, end, message, fix }: Problem, line: string): string {
  return `${line.slice(start, end)}: ${message}${fix ? ` [${fix.replacement}]` : ''}`;
}

describe('what stands before a word of the language', () => {
  it.each(['? sitting', '… concept'])('%s is told by itself', (line) => {
    expect(parse(line).problems.map(({ message }) => message)).toEqual([
      `\`${line[0] ?? ''}\` means nothing in a plan.`,
    ]);
  });
});

describe('what is missing', () => {
  it.each([
    ['canvas', 'canvas: After `canvas` a size, such as `80 x 50 cm`, `figure 20` or `A3`, is needed.'],
    ['object', 'object: After `object` a name is needed.'],
    ['concept', 'concept: After `concept` a sentence in quotes is needed.'],
    ['mood', 'mood: After `mood` a word or two is needed.'],
    [
      'lead wires from (1, 2) to',
      'to: After `to` a place, such as `focus`, `upper right` or `(12, 8)`, is needed.',
    ],
    ['lead wires from (1, 2)', '): After `(1, 2)` `to` is needed.'],
    ['budget value dark 30, light 70%', '30: After `30` `%` is needed. [30%]'],
    ['focus (1, 2', '2: After `2` `)` is needed. [2)]'],
    ['object a\n  size 12', '12: After `12` one of `x`, `wide` or `high` is needed.'],
    ['grid', 'grid: After `grid` a number or `every` is needed.'],
    ['object a\n  plane', 'plane: After `plane` one of `background`, `middle` or `foreground` is needed.'],
    ['path sky,', ',: After `,` a name is needed.'],
    ['allow even count', 'count: After `count` a reason, such as `because "…"`, is needed.'],
    [
      'sketch "a"\n  corners (1, 2) (3, 4)',
      'corners (1, 2) (3, 4): Four corners are needed: upper left, upper right, lower right, lower left.',
    ],
  ])('%s', (text, expected) => {
    expect(said(text)).toEqual([expected]);
  });
});

describe('a mistyped word', () => {
  it.each([
    ['object sky\n  edges sft', 'sft: `sft` is not known here. Did you mean `soft`? [soft]'],
    ['object sky, domnant', 'domnant: `domnant` is not known here. Did you mean `dominant`? [dominant]'],
    ['focus uper right', 'uper: `uper` is not known here. Did you mean `upper`? [upper]'],
    [
      'lead a from (1, 2) throgh (3, 4) to sky',
      'throgh: `throgh` is not known here. Did you mean `through`? [through]',
    ],
    ['divide golden, third', 'third: `third` is not known here. Did you mean `thirds`? [thirds]'],
    ['palette\n  paint a PB29 wram', 'wram: `wram` is not known here. Did you mean `warm`? [warm]'],
    ['objct sky', 'objct: No statement begins with `objct`. Did you mean `object`? [object]'],
    ['object sky\n  valeu 3', 'valeu: No statement begins with `valeu`. Did you mean `value`? [value]'],
    ['object sky\n  edges blurry', 'blurry: `blurry` is not known here. Did you mean `soft`? [soft]'],
    ['zzzzzz 3', 'zzzzzz: No statement begins with `zzzzzz`.'],
    [
      'palette\n  zzzzzz 3',
      'zzzzzz: No statement begins with `zzzzzz`. Under `palette` can stand `paint`, `mother`, `film` or `tube`.',
    ],
    [
      'object sky\n  edges zigzag',
      'zigzag: `zigzag` is not known here. After `edges` one of `hard`, `firm`, `soft` or `lost` is needed.',
    ],
  ])('%s', (text, expected) => {
    expect(said(text)).toEqual([expected]);
  });
});

describe('what cannot be read', () => {
  it.each([
    [
      'concept my own words',
      'my own words: After `concept` a sentence in quotes is needed. ["my own words"]',
    ],
    ['concept "no end', '"no end: The closing quotation mark is missing. ["no end"]'],
    ['concept “no end', '“no end: The closing quotation mark is missing. [“no end”]'],
    ['scale 5 steps', 'steps: `steps` is not read after `5`. []'],
    ['scale five', 'five: After `scale` a number is needed, not `five`.'],
    ['due 2027-02-29', '2027-02-29: There is no such day in the calendar.'],
    ['colour rust #12', '#12: A colour with `#` has three or six digits, 0-9 and a-f, such as `#2f6f73`.'],
    ['divide root 7', 'root 7: The root divisions are `root 2`, `root 3`, `root 4` and `root 5`.'],
    ['horizon 1/0', '1/0: Nothing can be divided by 0.'],
    ['horizon 2000000000', '2000000000: No number in a plan is larger than 1,000,000,000.'],
    ['object a@b', '@: `@` means nothing in a plan.'],
    ['???', '???: `???` means nothing in a plan.'],
    ['(3, 4)', '(: A line begins with a word that says what it is, such as `object` or `colour`.'],
    ['mahl 9', '9: This program reads version 1 of the language.'],
  ])('%s', (text, expected) => {
    expect(said(text)).toEqual([expected]);
  });
});

describe('a statement in the wrong block', () => {
  it.each([
    ['plane middle', 'plane: `plane` belongs under `object`, not at the left margin.'],
    ['object a\n  concept "b"', 'concept: `concept` belongs at the left margin, not under `object`.'],
    ['film 1 mm', 'film: `film` belongs under `palette` or `sitting`, not at the left margin.'],
    [
      'sketch "a"\n  note "b"',
      'note: `note` belongs at the left margin or under `canvas`, `object` or `sitting`, not under `sketch`.',
    ],
    [
      'mood calm\n  note "b"',
      'note: Nothing can stand under `mood`; this line is read as standing beside it.',
    ],
  ])('%s', (text, expected) => {
    expect(said(text)).toEqual([expected]);
  });

  it('counts where it can be told what was meant', () => {
    const kinds = parse('object a\n  concept "b"').nodes.map((node) => node.statement.kind);
    expect(kinds).toEqual(['object', 'concept']);
  });

  it('is kept apart where it cannot', () => {
    expect(parse('plane middle').detached.map((node) => node.statement.kind)).toEqual(['plane']);
  });
});

describe('uneven indentation', () => {
  it('is said once, on the line itself, with the indentation of the block as a fix', () => {
    expect(parse('object a\n    value 3\n   plane middle').problems).toEqual([
      {
        line: 2,
        start: 0,
        end: 3,
        code: 'uneven indentation',
        message: 'This indentation agrees with no line above; the line is read as part of the nearest block.',
        fix: { title: 'Align with the block', replacement: '    ' },
      },
    ]);
  });
});
