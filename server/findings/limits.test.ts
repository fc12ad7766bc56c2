import { describe, expect, it } from 'vitest';
import { checked, files } from '../../tests/support/plan.js';
import { standing } from './check.js';
import { rules } from './rules.js';

const CANVAS = 'canvas  100 x 50 cm\n  ground  N 9/';
const WALL = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  value   4';
const FOCUS = 'focus   upper right';
const LAMP = 'object  lamp, dominant\n  shape   circle 10 at focus\n  value   5';

/** What these few flat shapes say to others is not what is tried here. */
const OF_COMPOSITION: ReadonlySet<string> = new Set(
  rules.flatMap(({ id }) =>
    /^(rival|strong edge|like |near |kissed |merged |off balance|dominant outw)/.test(id) ? [id] : [],
  ),
);

/** What stands of a plan, as `rule: message`. */
function told(...lines: readonly string[]): readonly string[] {
  return standing(checked(lines.join('\n')).findings)
    .filter(({ rule }) => !OF_COMPOSITION.has(rule))
    .map(({ rule, message }) => `${rule}: ${message}`);
}

function rulesOf(...lines: readonly string[]): readonly string[] {
  return told(...lines).map((line) => line.split(':')[0] ?? '');
}

describe('at its limit a rule is kept', () => {
  it.each([
    [
      'a budget',
      [
        `${CANVAS}`,
        FOCUS,
        'budget  value dark 20% within 5%',
        WALL,
        LAMP,
        'object  floor\n  shape   rectangle (0, 0) to (WIDTH, 50)\n  value   1\n  plane   background',
      ],
      25,
      25.1,
    ],
    [
      'bare ground',
      [
        CANVAS,
        FOCUS,
        'object  wall\n  plane   background\n  shape   rectangle (WIDTH, 0) to (100, 50)\n  value   4',
        LAMP,
      ],
      2,
      2.1,
    ],
  ] as const)('%s', (_, lines, at, beyond) => {
    const text = lines.join('\n');
    expect(told(text.replace('WIDTH', String(at)))).toEqual([]);
    expect(told(text.replace('WIDTH', String(beyond)))).toHaveLength(1);
  });

  it('the distance from the focal point, on a canvas whose diagonal is 100', () => {
    const scene = (left: number): readonly string[] => [
      'canvas  80 x 60 cm',
      'divide  own\n  uprights 20\n  levels  20',
      'focus   (20, 20)',
      'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (80, 60)\n  value   3',
      `object  lamp, dominant\n  shape   rectangle (${left}, 10) to (60, 30)\n  value   5`,
    ];
    expect(told(...scene(25))).toEqual([]);
    expect(rulesOf(...scene(25.01))).toEqual(['dominant off focus']);
  });

  it('says by how little it is missed', () => {
    const [line] = told(
      CANVAS,
      FOCUS,
      'budget  value dark 20% within 5%',
      WALL,
      LAMP,
      'object  floor\n  shape   rectangle (0, 0) to (25.02, 50)\n  value   1\n  plane   background',
    );
    expect(line).toContain('The darks cover 25.02 % of the picture; the budget is 20 % within 5 %.');
  });
});

describe('one slip is told once', () => {
  it('a focal point off the canvas is neither off its crossing nor away from the dominant as well', () => {
    expect(
      told(CANVAS, 'focus   (110, 20)', WALL, 'object  lamp, dominant\n  shape   circle 10\n  value   5'),
    ).toEqual(['off the canvas: The focal point lies off the canvas, 10 cm to the right of it.']);
  });

  it('a second dominant is not also away from the focal point that the first holds', () => {
    expect(
      rulesOf(
        CANVAS,
        FOCUS,
        WALL,
        LAMP,
        'object  moth, dominant\n  shape   circle 4 at (10, 40)\n  value   1',
        'object  rug, secondary\n  shape   circle 4 at (20, 40)\n  value   1',
      ),
    ).toEqual(['one dominant']);
  });

  it('a dominant that is wholly hidden is not also away from the focal point', () => {
    const hidden =
      'object  lamp, dominant\n  plane   background\n  shape   circle 4 at (10, 10)\n  value   5';
    expect(rulesOf(CANVAS, FOCUS, hidden, WALL)).toEqual(['hidden object']);
  });

  it('a dominant without a shape is neither away from the focal point nor the cause of bare ground', () => {
    expect(rulesOf(CANVAS, FOCUS, 'object  lamp, dominant\n  value   5')).toEqual(['empty object']);
  });

  it('a value that the scale does not have is not also missing', () => {
    const { plan, findings } = checked(
      [CANVAS, FOCUS, WALL, LAMP.replace('value   5', 'value   6')].join('\n'),
    );
    expect(plan.problems.map(({ code }) => code)).toEqual(['number out of range']);
    expect(findings).toEqual([]);
  });
});

describe('settings', () => {
  it('take the limit of a plan for what is hidden, and say how much is', () => {
    const door =
      'object  door\n  shape   rectangle (0, 0) to (10, 50)\n  value   1\nobject  post\n  shape   rectangle (0, 0) to (7, 50)\n  value   2';
    expect(told(CANVAS, FOCUS, 'rule    hidden object limit 60%', WALL, LAMP, door)).toEqual([
      'hidden object: `door` is 70 % hidden: `post` covers it.',
    ]);
  });

  it('have no limit for a rule without one, and must change something', () => {
    expect(told(CANVAS, FOCUS, 'rule    even count limit 40%', 'rule    bare ground', WALL, LAMP)).toEqual([
      'idle setting: `even count` has no limit, so this one changes nothing.',
      'idle setting: This line changes nothing of `bare ground`.',
    ]);
  });

  it.each([
    ['near tangent', '2.1%', '2%', '2 % of the diagonal'],
    ['kissed edge', '5%', '2%', '2 % of the diagonal'],
    ['filled corner', '1%', '0.5%', '0.5 % of the diagonal'],
    ['strong edge', '95%', '90%', '90 % of the strength of the focal point'],
  ])('tell how far the limit of %s may go, and keep its own beyond', (rule, limit, most, words) => {
    const text = [CANVAS, FOCUS, `rule    ${rule} limit ${limit}`, WALL, LAMP].join('\n');
    const [beyond] = checked(text).findings.filter((finding) => finding.rule === 'limit out of reach');
    expect(beyond?.severity).toBe('error');
    expect(beyond?.message).toBe(
      `The limit of \`${rule}\` may be at most ${words}: beyond that nothing is looked at.`,
    );
    expect(beyond?.fix?.edits).toMatchObject([{ text: most }]);
    expect(told(text.replace(limit, most))).toEqual([]);
  });

  it('leave a limit that is refused to the reader of the plan', () => {
    expect(told(CANVAS, FOCUS, 'rule    bare ground limit 140%', WALL, LAMP)).toEqual([]);
  });

  it('set a rule about the whole picture aside for the whole plan only', () => {
    const budget = 'budget  value dark 30% within 5%';
    const aside = 'allow   value budget for wall because "it is night"';
    expect(rulesOf(CANVAS, FOCUS, budget, WALL, LAMP, aside)).toEqual([
      'value budget',
      'too narrow exception',
    ]);
  });

  it('let a second dominant stand where it says why', () => {
    const twin =
      'object  moth, dominant\n  shape   circle 4 at focus\n  value   1\n  allow   one dominant because "they are twins"';
    const third = 'object  rug, secondary\n  shape   circle 4 at (20, 40)\n  value   1';
    expect(told(CANVAS, FOCUS, WALL, LAMP, twin, third)).toEqual([]);
  });
});

describe('an object that is changed where a plan builds on another', () => {
  it('is left alone while what the other plan says of it has an error', () => {
    const base = `${CANVAS}\nobject  rack\n  shape   rectangle 12 x 20 at nowhere\n  value   2`;
    const { plan, findings } = checked(
      'based on "oven.mahl"\nobject  rack\n  value   3',
      files({ 'oven.mahl': base }),
    );
    expect(plan.problems.map(({ code }) => code)).toEqual(['error in another plan']);
    expect(findings.filter(({ objects }) => objects.length > 0)).toEqual([]);
  });
});
