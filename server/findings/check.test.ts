import { describe, expect, it } from 'vitest';
import { checked, files, mended, type Checked } from '../../tests/support/plan.js';
import { standing } from './check.js';
import type { Finding } from './finding.js';

const CANVAS = 'canvas  100 x 50 cm\n  ground  N 9/\nfocus   upper right';
/** Fills the canvas, so that no ground is bare. */
const WALL = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  value   4';
/** Holds the focal point at (61.8, 19.1). */
const LAMP = 'object  lamp, dominant\n  shape   circle 10 at focus\n  value   5';
const GOOD = `${CANVAS}\n${WALL}\n${LAMP}`;

function found(text: string): readonly string[] {
  return standing(checked(text).findings).map(({ rule }) => rule);
}

function finding({ findings }: Checked, rule: string): Finding {
  const match = findings.find((candidate) => candidate.rule === rule);
  if (!match) throw new Error(`no finding of ${rule}`);
  return match;
}

describe('a good plan', () => {
  it('has no findings', () => {
    expect(found(GOOD)).toEqual([]);
  });

  it('finds nothing to say of a plan that has only begun', () => {
    expect(found('canvas  40 x 30 cm')).toEqual([]);
  });
});

describe.each([
  [
    'no focus',
    `canvas  100 x 50 cm\n${WALL}\nobject  lamp, dominant\n  shape   circle 10\n  value   5`,
    'names no centre of interest',
  ],
  ['one dominant', `${CANVAS}\n${WALL}`, 'No object is dominant'],
  [
    'one dominant',
    `${GOOD}\nobject  moon, dominant\n  shape   circle 5 at (20, 20)\n  value   5`,
    '`moon` is dominant, and so is `lamp`, where one should lead: 0.4 % of the picture beside 1.6 %.',
  ],
  [
    'dominant off focus',
    `${CANVAS}\n${WALL}\nobject  lamp, dominant\n  shape   circle 10 at (20, 20)\n  value   5`,
    '`lamp` is dominant but ends 36.8 cm from the focal point; up to 5.6 cm (5 % of the diagonal) is close.',
  ],
  [
    'hidden object',
    `${GOOD}\nobject  crumb\n  plane   background\n  shape   circle 2 at focus\n  value   1`,
    'Nothing of `crumb` is seen: `lamp` covers it',
  ],
  [
    'off the canvas',
    `${GOOD}\nobject  bird\n  shape   circle 2 at (120, -4)\n  value   1`,
    '`bird` lies off the canvas, 19 cm to the right of it and 3 cm above it',
  ],
  ['empty object', `${GOOD}\nobject  bird\n  value   1`, '`bird` has no shape yet'],
  [
    'empty object',
    `${GOOD}\nobject  bird\n  shape   outline (1, 1) (2, 2) (3, 3)\n  value   1`,
    'The shape of `bird` holds no area',
  ],
  [
    'centred focus',
    `canvas  100 x 50 cm\nfocus   (51, 25)\n${WALL}\n${LAMP}`,
    'lies in the middle of the canvas, 1 cm off; more than 4.5 cm (4 % of the diagonal) off counts as clear of it.',
  ],
  [
    'focus off crossing',
    `canvas  100 x 50 cm\nfocus   (70, 19.1)\n${WALL}\n${LAMP}`,
    'the nearest, upper right of golden, is 8.2 cm away; up to 2.2 cm (2 % of the diagonal) counts as on it.',
  ],
  [
    'even count',
    `${GOOD}\nobject  moth, secondary\n  shape   circle 2 at (60, 30)\n  value   1`,
    'There are two principal objects: `lamp` and `moth`. An odd number would not fall into pairs.',
  ],
  [
    'no value or colour',
    `${GOOD}\nobject  door\n  shape   rectangle (0, 0) to (10, 50)`,
    '`door` has neither a value nor a colour, so 10 % of the picture belongs to no step and no colour.',
  ],
  [
    'bare ground',
    `${CANVAS}\nobject  wall\n  shape   rectangle (0, 0) to (90, 50)\n  value   4\n${LAMP}`,
    'Bare ground shows on 10 % of the picture, where no object lies; up to 2 % is let pass.',
  ],
])('%s', (rule, text, message) => {
  it(`says: ${message}`, () => {
    expect(finding(checked(text), rule).message).toContain(message);
  });

  it('is quiet in a good plan, and can be set aside with a reason', () => {
    expect(found(GOOD)).not.toContain(rule);
    const aside = checked(`${text}\nallow   ${rule} because "it is meant"`);
    expect(standing(aside.findings).map((other) => other.rule)).not.toContain(rule);
    expect(finding(aside, rule).allowed?.reason).toBe('it is meant');
  });
});

describe('value budget', () => {
  const budgeted = (shares: string, rest = ''): string =>
    `${CANVAS}\nbudget  value ${shares}\n${WALL}\nobject  band\n  shape   rectangle (0, 0) to (34, 50)\n  value   5\n` +
    `object  floor\n  shape   rectangle (0, 30) to (100, 50)\n  value   2${rest}`;

  it('tells what was measured, what was wanted, and where most of it lies', () => {
    const { message, location } = finding(checked(budgeted('light 20% within 5%')), 'value budget');
    expect(message).toBe(
      'The lights cover 60 % of the picture; the budget is 20 % within 5 %. Most of it is `wall` (39.6 %).',
    );
    expect(location).toEqual({ line: 3, start: 14, end: 23 });
  });

  it('computes a change of one value that brings every share within, and it does', () => {
    const text = budgeted('dark 40%, middle 40%, light 20% within 2%');
    const { advice } = finding(checked(text), 'value budget');
    expect(advice).toBe('Take `wall` one step down, to step 3: that brings the middle values within.');
    expect(found(text.replace('value   4', 'value   3'))).not.toContain('value budget');
  });

  it('never takes an object further than a quarter of the scale', () => {
    const { advice } = finding(checked(budgeted('dark 80%, light 20% within 2%')), 'value budget');
    expect(advice).toBe('Bring 40 % more of the picture onto its steps, from the lights (40 % too much).');
  });

  it('says when nothing lies on the steps at all', () => {
    const { findings } = checked(`${CANVAS}\nbudget  value dark 30%\n${WALL}`);
    expect(findings.find(({ rule }) => rule === 'value budget')?.advice).toBe(
      'Nothing lies on its steps yet: bring 30 % of the picture there.',
    );
  });

  it('knows groups of the painter’s own and single steps', () => {
    const text = `${CANVAS}\nscale   4\n  group   dusk 1-2, glow 3-4\nbudget  value glow 5%, 1 50% within 1%\n${WALL}`;
    expect(checked(text).findings.map(({ message }) => message)).toEqual(
      expect.arrayContaining([
        expect.stringContaining('`glow` covers 100 % of the picture; the budget is 5 % within 1 %'),
        expect.stringContaining('Step 1 covers 0 % of the picture; the budget is 50 % within 1 %.'),
      ]),
    );
  });
});

describe('colour budget', () => {
  const scene = (budget: string): string =>
    `${CANVAS}\n${budget}\ncolour  slate 5B 4/3 dominant\ncolour  brick 7.5R 4/8 complement\n` +
    `object  wall\n  shape   rectangle (0, 0) to (69, 50)\n  colour  slate\n` +
    `object  door, dominant\n  shape   rectangle (60, 0) to (100, 50)\n  colour  brick`;

  it('warns when the plan states a budget and misses it', () => {
    const budget = finding(
      checked(scene('budget  colour dominant 60%, complement 30% within 4%')),
      'colour budget',
    );
    expect(budget.severity).toBe('warning');
    expect(budget.message).toBe(
      'The complement colour covers 40 % of the picture; the budget is 30 % within 4 %. Most of it is `door` (40 %).',
    );
  });

  it('only hints at 70 : 20 : 10, once for all roles, when the plan states none', () => {
    const { findings } = checked(scene('note    "no budget yet"'));
    const usual = findings.filter(({ rule }) => rule === 'usual colour shares');
    expect(usual.map(({ severity, message, advice }) => [severity, message, advice])).toEqual([
      [
        'hint',
        'The dominant colour covers 60 % of the picture, the complement 40 % and the discords 0 %; the usual shares are 70 %, 20 % and 10 %, each within 5 %. The complement is farthest off.',
        'Give 20 % of the picture to the dominant colour (10 %) and the discords (10 %). Or mean it so, and write `budget  colour dominant 60%, complement 40% within 5%`.',
      ],
    ]);
    expect(findings.some(({ rule }) => rule === 'colour budget')).toBe(false);
  });
});

describe('a dominant object off the focal point', () => {
  const off = (x: number): string =>
    `${CANVAS}\n${WALL}\nobject  lamp, dominant\n  shape   circle 10 at (${x}, 19.1)\n  value   5`;

  it('is moved over it where it lies nearly there: its border and a hundredth of the diagonal more', () => {
    // The border is 61.8 - 55 = 6.8 cm away, the diagonal 111.8 cm.
    const { advice, fix } = finding(checked(off(50)), 'dominant off focus');
    expect(advice).toBe(
      'Move `lamp` 8 cm to the right, over the focal point, or move the focal point to it.',
    );
    expect(found(mended(off(50), fix ?? { edits: [] }))).not.toContain('dominant off focus');
  });

  it('is set down there where it lies far off, and where a small move would hide something', () => {
    const far = 'Write `at focus` under `lamp`, or move the focal point to it.';
    expect(finding(checked(off(30)), 'dominant off focus').advice).toBe(far);
    const speck = 'object  speck\n  plane   background\n  shape   circle 2 at (56.6, 19.1)\n  value   1';
    const { advice } = finding(checked(`${off(50)}\n${speck}`), 'dominant off focus');
    expect(advice).toBe(far);
  });
});

describe('a hidden object', () => {
  const hidden = (plane: string, more = '') =>
    `${GOOD}\nobject  crumb\n  plane   ${plane}\n  shape   circle 2 at focus\n  value   1\n${more}`;
  const over = 'object  sheet\n  shape   circle 9 at focus\n  value   3';

  it('comes to light by the advice, behind what comes later in its own plane', () => {
    const { advice, fix } = finding(checked(hidden('middle', over)), 'hidden object');
    expect(advice).toBe('Write `plane foreground` under `crumb`, or move it.');
    expect(found(mended(hidden('middle', over), fix ?? { edits: [] }))).not.toContain('hidden object');
  });

  it('comes to light by the advice, behind a nearer plane', () => {
    const { advice } = finding(checked(hidden('background')), 'hidden object');
    expect(advice).toBe('Write `plane middle` under `crumb`, or move it.');
    expect(found(hidden('middle'))).not.toContain('hidden object');
  });

  it('is not brought before what it would hide itself', () => {
    const grain = 'object  grain\n  shape   circle 1 at focus\n  value   3';
    const { advice, fix } = finding(checked(hidden('middle', `${over}\n${grain}`)), 'hidden object');
    expect(fix).toBeUndefined();
    expect(advice).toBe('Write `crumb` after `grain`, or give it a nearer plane.');
  });
});

describe('a share that rounds to nothing', () => {
  it('is not told as nothing', () => {
    const speck =
      'colour  spark #f00 discord\nobject  spark\n  shape   circle 0.2 at (5, 5)\n  colour  spark';
    const { message } = finding(checked(`${GOOD}\nbudget  colour discord 10%\n${speck}`), 'colour budget');
    expect(message).toContain('cover under 0.1 % of the picture');
  });
});

describe('exceptions and settings', () => {
  it('sets a rule aside for one object only', () => {
    const bird = (name: string): string => `object  ${name}\n  shape   circle 2 at (120, 5)\n  value   1`;
    const text = `${GOOD}\n${bird('a')}\n  allow   off the canvas because "it has flown"\n${bird('b')}`;
    const off = checked(text).findings.filter(({ rule }) => rule === 'off the canvas');
    expect(off.map(({ allowed }) => allowed?.reason)).toEqual(['it has flown', undefined]);
  });

  it('hints at an exception that is not needed', () => {
    const { message, severity } = finding(
      checked(`${GOOD}\nallow   even count because "a pair"`),
      'needless exception',
    );
    expect([severity, message]).toEqual(['hint', '`even count` is set aside, but it finds nothing there.']);
  });

  it('offers the nearest rule for one that there is not', () => {
    const { fix, severity } = finding(checked(`${GOOD}\nallow   evn count because "a pair"`), 'no such rule');
    expect([severity, fix?.edits]).toEqual([
      'warning',
      [expect.objectContaining({ kind: 'replace', text: 'even count' })],
    ]);
  });

  it('takes severity and limit from the plan', () => {
    const text = `${CANVAS}\nrule    bare ground warning limit 15%\nobject  wall\n  shape   rectangle (0, 0) to (WIDTH, 50)\n  value   4\n${LAMP}`;
    expect(found(text.replace('WIDTH', '90'))).not.toContain('bare ground');
    expect(finding(checked(text.replace('WIDTH', '80')), 'bare ground').severity).toBe('warning');
  });

  it('says nothing of an object whose colour could not be read, beyond that', () => {
    const text = `${GOOD}\ncolour  rose nonsuch\nobject  bird\n  shape   circle 2 at (50, 25)\n  colour  rose`;
    expect(found(text)).not.toContain('no value or colour');
    expect(found(text.replace('  colour  rose', ''))).toContain('no value or colour');
  });

  it('says nothing of an object whose shape could not be read, beyond that', () => {
    const { plan, findings } = checked(`${GOOD}\nobject  bird\n  shape   path "M 0 0 nonsense"\n  value   1`);
    expect(plan.problems.map(({ code }) => code)).toEqual(['unreadable shape']);
    expect(findings).toEqual([]);
  });
});

describe('a focal point beside all crossings that have a name', () => {
  // The armature's lines from the lower left and the upper left corner meet at 2/5 and 1/5 of 100 x 50 cm.
  const at = (place: string): readonly string[] =>
    found(`canvas  100 x 50 cm\ndivide  armature\nfocus   ${place}\n${WALL}\n${LAMP}`);

  it('is on a crossing where lines of the division meet, within the limit, and on none beyond', () => {
    expect(at('(40, 10)')).not.toContain('focus off crossing');
    expect(at('(40, 12.2)')).not.toContain('focus off crossing');
    expect(at('(40, 12.3)')).toContain('focus off crossing');
  });

  it('is still sent to one with a name', () => {
    const text = `canvas  100 x 50 cm\ndivide  armature\nfocus   (42, 7)\n${WALL}\n${LAMP}`;
    expect(finding(checked(text), 'focus off crossing').message).toContain('upper centre of armature');
  });
});

describe('an exception for single things', () => {
  const LEADS = `${GOOD}\nlead    high from left edge at 5% to (10, 2.5)\nlead    low from left edge at 90% to (10, 45)`;
  const CUES = `${GOOD}\ncue     "the smell of rain"\ncue     "a dog that barks" carried by lamp`;
  const told = (text: string): readonly string[] =>
    standing(checked(text).findings)
      .filter(({ rule }) => /past focus|exception|way out|cue|hidden/.test(rule))
      .map(({ rule, message }) => `${rule}: ${message.split(/[,.:]/)[0] ?? ''}`);

  it('is for the lead named, and for no other', () => {
    expect(told(LEADS)).toEqual([
      'lead past focus: `low` is to lead to the focal point',
      'lead past focus: `high` is to lead to the focal point',
    ]);
    expect(told(`${LEADS}\nallow   lead past focus for low because "it is a shadow"`)).toEqual([
      'lead past focus: `high` is to lead to the focal point',
    ]);
  });

  it('is for a lead also where more are found than are told', () => {
    const many = [1, 2, 3, 4, 5, 6, 7].map((y) => `lead    wire${y} from (0, ${y}) to (5, ${y})`).join('\n');
    const all = checked(`${GOOD}\n${many}\nallow   lead past focus for wire7 because "it hangs"`).findings;
    expect(all.filter(({ rule }) => rule === 'needless exception')).toEqual([]);
    const last = standing(all)
      .filter(({ rule }) => rule === 'lead past focus')
      .at(-1);
    expect(last?.message).toContain('So it is with three more: `wire4`, `wire5` and `wire6`.');
  });

  it('is for the cue whose first words are given', () => {
    expect(told(CUES)).toEqual(['cue not carried: No object carries the cue “the smell of rain”']);
    expect(told(`${CUES}\nallow   cue not carried for "the smell" because "no paint smells of it"`)).toEqual(
      [],
    );
  });

  it('that finds nothing there says so, by name', () => {
    expect(told(`${LEADS}\nallow   lead past focus for high, low because "so"`)).toEqual([]);
    expect(told(`${CUES}\nallow   cue not carried for "a dog" because "so"`)).toContain(
      'needless exception: `cue not carried` is set aside for the cue “a dog that barks”',
    );
  });

  it('says what the rule is about where that is something else', () => {
    const [narrow] = checked(`${LEADS}\nallow   hidden object for low because "so"`).findings.filter(
      ({ rule }) => rule === 'too narrow exception',
    );
    expect(narrow?.message).toBe(
      '`hidden object` is about single objects, so it can’t be set aside for `low`.',
    );
    expect(narrow?.advice).toBe('Write `allow hidden object for NAME because "…"`.');
    const [whole] = checked(`${LEADS}\nallow   leads from one side for low because "so"`).findings.filter(
      ({ rule }) => rule === 'too narrow exception',
    );
    expect(whole?.message).toContain('is about the whole picture, so it can’t be set aside for `low` alone.');
  });

  it('is for an object of the border that leads out', () => {
    const bars = `${CANVAS}\n${WALL}\n${LAMP.replace('value   5', 'value   4.5')}\nobject  plank\n  shape   rectangle (70, 30) to (100, 34)\n  value   1\n  edges   hard`;
    expect(told(bars).some((line) => line.startsWith('way out'))).toBe(true);
    const aside = told(`${bars}\n  allow   way out because "it goes on in the next panel"`);
    expect(aside.filter((line) => /way out/.test(line))).toEqual([]);
  });
});

describe('what is found of a plan that builds on another', () => {
  it('as a whole is of none of its lines; what is found of a line says where that is', () => {
    const base = files({
      'oven.mahl': `${CANVAS}\nobject  speck\n  shape   circle 4 at (9, 9)`,
    });
    const { findings } = checked('based on "oven.mahl"', base);
    const ofRule = (rule: string) => findings.find((one) => one.rule === rule);
    const basedOn = { line: 0, start: 9, end: 20 };
    expect(ofRule('one dominant')).toMatchObject({
      message: 'No object is dominant.',
      location: basedOn,
    });
    expect(ofRule('one dominant')?.from).toBeUndefined();
    expect(ofRule('no value or colour')).toMatchObject({ location: basedOn, from: { file: 'oven.mahl' } });
    expect(ofRule('no value or colour')?.message).toContain('(from `oven.mahl`, line ');
  });
});
