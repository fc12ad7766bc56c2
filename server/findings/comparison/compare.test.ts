import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import { type Change } from './change.js';
import { comparePlans, noChangeInWords } from './compare.js';

const market = `plan    "Two crates"
concept "The last oranges before rain."
canvas  60 x 40 cm
  ground  #b9a48a
focus   upper right
scale   5
budget  value dark 30%, middle 30%, light 40% within 5%
colour  slate #4a5560 dominant
colour  orange #d8772a complement
object  wall
  plane   background
  shape   rectangle (0, 0) to (60, 40)
  colour  slate
  value   3
object  crate, secondary
  shape   outline (6, 20) (26, 20) (26, 36) (6, 36)
  colour  orange
  value   2
object  heap, dominant
  shape   smooth (34, 14) (40, 9) (46, 14) (45, 22) (35, 22)
  colour  orange
  value   4
  edges   hard
lead    kerb from left edge at 80% to focus
path    crate, heap
allow   bare ground because "it is all wall"
sitting "Block in" on 2027-03-01
  works   wall, crate
due     2027-05-01
`;

function changes(edit: (text: string) => string, from: string = market): readonly Change[] {
  return comparePlans(checked(from), checked(edit(from))).changes;
}

/** What is told of all but the findings, which follow from the rest. */
function told(edit: (text: string) => string, from: string = market): readonly string[] {
  return changes(edit, from)
    .filter(({ topic }) => topic !== 'findings')
    .map(({ message }) => message);
}

describe('two plans', () => {
  it('are the same picture when only the text differs', () => {
    const reordered = market
      .replace('colour  slate #4a5560 dominant\ncolour  orange', '// paints\ncolour orange')
      .replace('object  wall', 'colour slate #4A5560 dominant\nobject  wall')
      .replace('(6, 20) (26, 20) (26, 36) (6, 36)', '(6, 36) (26, 36) (26, 20) (6, 20)');
    expect(changes(() => reordered)).toEqual([]);
    expect(noChangeInWords(false)).toBe('The same picture; only the text differs.');
  });

  it.each([
    [
      'an object that is moved',
      ['(34, 14) (40, 9) (46, 14) (45, 22) (35, 22)', '(40, 12) (46, 7) (52, 12) (51, 20) (41, 20)'],
      ['`heap` is moved 6 cm to the right and 2 cm up.'],
    ],
    [
      'one that is enlarged where it is',
      ['(6, 20) (26, 20) (26, 36) (6, 36)', '(1, 16) (31, 16) (31, 40) (1, 40)'],
      [
        '`crate` is larger, 1.5 times as wide and as high: it covers 30 % of the picture instead of 13.3 %.',
        'Less is seen of `wall`: 63.9 % of the picture instead of 80.5 %.',
        'The darks go from 13.3 % to 30 % of the picture, as measured.',
        'The middle values go from 80.5 % to 63.9 % of the picture, as measured.',
        'The picture as a whole is darker: mean value 4.5 instead of 4.9, still a middle key.',
        'The dominant colour goes from 80.5 % to 63.9 % of the picture, as measured.',
        'The complement goes from 19.5 % to 36.1 % of the picture, as measured.',
      ],
    ],
    [
      'one that has another name',
      ['object  crate, secondary', 'object  box, secondary'],
      ['`crate` is called `box` now: it is known by its outline, which lies where it lay.'],
    ],
    [
      'one that is darker',
      ['colour  orange\n  value   4', 'colour  orange\n  value   3 1/2'],
      [
        '`heap` is half a step darker: 3.5 instead of 4.',
        'Values run from 3 to 6 instead of from 3 to 7, a narrower range.',
      ],
    ],
    ['edges', ['edges   hard', 'edges   lost'], ['`heap` has lost edges now; they were hard.']],
    [
      'the focal point, which a lead follows',
      ['focus   upper right', 'focus   lower right'],
      ['The focal point is moved 9.4 cm down, to the crossing lower right.'],
    ],
    ['a budget', ['light 40%', 'light 25%'], ['The lights are to cover 25 % instead of 40 %.']],
    ['a colour', ['#d8772a', '#c86a50'], ['`orange` is #c86a50 instead of #d8772a: CIEDE2000 12.9, duller.']],
    [
      'days',
      ['2027-05-01', '2027-05-04'],
      ['The picture is due three days later: on 4 May 2027 instead of 1 May 2027.'],
    ],
    [
      'work',
      ['works   wall, crate', 'works   wall, heap'],
      ['The sitting “Block in” works on `heap` too and no longer works on `crate`.'],
    ],
    [
      'a reason',
      ['it is all wall', 'all of it is wall'],
      ['The rule `bare ground` is set aside because “all of it is wall” instead of “it is all wall”.'],
    ],
    [
      'words',
      ['before rain', 'before snow'],
      ['The concept is “The last oranges before snow.” instead of “The last oranges before rain.”'],
    ],
  ] as const)('tell of %s', (_, [before, now], messages) => {
    const edit = (text: string) =>
      text
        .replace(before, now)
        .replaceAll(/(works|path)( +.*)crate/gu, now.includes('box') ? '$1$2box' : '$&');
    expect(market).toContain(before);
    expect(told(edit)).toEqual(messages);
  });

  it('tell of what is gone and what is new, when nothing shows that it is the same', () => {
    const messages = told((text) =>
      text
        .replace('object  crate, secondary', 'object  sack, secondary')
        .replace('(6, 20) (26, 20) (26, 36) (6, 36)', '(8, 18) (22, 22) (20, 37) (9, 36)')
        .replaceAll('crate', 'sack'),
    );
    expect(messages).toContain('`crate`, secondary, is gone; it covered 13.3 % of the picture.');
    expect(messages).toContain(
      '`sack`, secondary, is new, in the middle ground: it covers 8.6 % of the picture.',
    );
  });

  it('know a thing of another name that was moved by its outline and colour', () => {
    const messages = told((text) =>
      text
        .replaceAll('crate', 'box')
        .replace('(6, 20) (26, 20) (26, 36) (6, 36)', '(10, 20) (30, 20) (30, 36) (10, 36)'),
    );
    expect(messages.slice(0, 2)).toEqual([
      '`crate` is called `box` now: it is known by its outline and its colour, which are the same.',
      '`box` is moved 4 cm to the right.',
    ]);
  });

  it('are compared in parts of the canvas when their canvases differ, and in lengths when only the units do', () => {
    const half = comparePlans(
      checked('canvas 60 x 40 cm\nobject jar\n  shape circle 10 at (30, 20)\n'),
      checked('canvas 30 x 20 cm\nobject jar\n  shape circle 5 at (18, 10)\n'),
    );
    expect(half.remark).toBe(
      'The canvases differ (60 × 40 cm, 30 × 20 cm), so places are compared in parts of the canvas.',
    );
    expect(half.changes.map(({ message }) => message)).toEqual([
      'The canvas is 30 × 20 cm instead of 60 × 40 cm.',
      '`jar` is moved 10 % of the width to the right.',
    ]);
    const inMetres = comparePlans(checked('canvas 0.912 x 0.6 m'), checked('canvas 0.914 x 0.6 m'));
    expect(inMetres.remark).toContain('(0.912 × 0.6 m, 0.914 × 0.6 m)');
    const inches = comparePlans(
      checked('canvas 60 x 40 cm\nobject jar\n  shape circle 10 at (30, 20)\n'),
      checked('canvas 600 x 400 mm\nobject jar\n  shape circle 100 at (300, 180)\n'),
    );
    expect(inches.remark).toBeUndefined();
    expect(inches.changes.map(({ message }) => message)).toContain('`jar` is moved 20 mm up.');
  });

  it('tell which findings are gone and which are new, by rule and names and not by line', () => {
    const shifted = changes((text) => `// a line more\n${text}`);
    expect(shifted).toEqual([]);
    const found = changes((text) => text.replace('light 40%', 'light 5%'));
    expect(found.filter(({ topic }) => topic === 'findings').map(({ kind }) => kind)).toContain('gone');
    const back = comparePlans(checked(market.replace('light 40%', 'light 5%')), checked(market)).changes;
    expect(back.find(({ topic }) => topic === 'findings')?.message).toMatch(/^New: The lights cover /u);
  });

  it('tell what came to lie in front only where it can be seen', () => {
    const three = (order: readonly string[]) =>
      `canvas 40 x 40 cm\n${order
        .map((name) => `object ${name}\n  shape circle 12 at (${name === 'far' ? 34 : 16}, 16)\n`)
        .join('')}`;
    const moved = (order: readonly string[]) =>
      comparePlans(checked(three(['a', 'b', 'far'])), checked(three(order)))
        .changes.filter(({ kind }) => kind === 'order')
        .map(({ message }) => message);
    expect(moved(['far', 'a', 'b'])).toEqual([]);
    expect(moved(['b', 'a', 'far'])).toEqual(['`a` lies in front of `b` now.']);
  });
});
