import { describe, expect, it } from 'vitest';
import { checked, mended, type Checked } from '../../tests/support/plan.js';
import type { Finding } from './finding.js';

/** Diagonal 100. */
const CANVAS = 'canvas  80 x 60 cm\n  ground  N 5/\nfocus   (20, 30)';
const STONE = 'object  stone, dominant\n  shape   rectangle 4 x 4 at (20, 30)\n  value   5\n  edges   hard';
const OTHER = 'object  other\n  shape   rectangle 4 x 4 at (60, 30)\n  value   5\n  edges   hard';

/** A long dominant object from the focal point to the right edge, and what may lie on it. */
const LONG = STONE.replace('4 x 4 at (20, 30)', '60 x 6 at (49, 30)').replace('hard', 'soft');
const knob = (name: string, size: string, at: string): string =>
  `object  ${name}\n  shape   rectangle ${size} at ${at}\n  value   1\n  edges   hard`;

/** Without value, a tenth of the picture where it is 6 cm high. */
const floor = (height: number): string =>
  `object  floor\n  plane   background\n  shape   rectangle (0, ${60 - height}) to (80, 60)`;

function text(...blocks: readonly string[]): string {
  return [CANVAS, ...blocks].join('\n');
}

function of(rule: string, { findings }: Checked): readonly Finding[] {
  return findings.filter((finding) => finding.rule === rule);
}

function only(rule: string, plan: string): Finding {
  const [finding, ...others] = of(rule, checked(plan));
  if (!finding || others.length > 0) throw new Error(`${others.length + 1} of ${rule}`);
  return finding;
}

describe('a rival of the focal point', () => {
  it('is named by its areas with its part of the strength, and where it lies', () => {
    const { message, severity, at, objects } = only('rival', text(STONE, OTHER));
    expect(message).toBe(
      'Where `other` meets the bare ground, 40 cm to the right of the focal point, the picture draws the eye as strongly as there; from 90 % on that is a rival.',
    );
    expect(severity).toBe('hint');
    expect(at?.x).toBeCloseTo(60, 6);
    expect(objects).toEqual([1]);
  });

  it('is a warning where the plan says by which means the focal point wins, unless the plan sets it otherwise', () => {
    const plan = text('  win by  scale', STONE, OTHER);
    expect(only('rival', plan).severity).toBe('warning');
    expect(only('rival', `${plan}\nrule    rival hint`).severity).toBe('hint');
  });

  it('is mended by the least softer edges that do it', () => {
    const plan = text(STONE, OTHER);
    const { advice, fix } = only('rival', plan);
    expect(advice).toBe('Make the edges of `other` firm.');
    expect(of('rival', checked(mended(plan, fix ?? { edits: [] })))).toEqual([]);
  });

  it('is mended by edges against what it stands on, where that is an object', () => {
    const wall = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (80, 60)\n  value   3';
    expect(only('rival', text(wall, STONE, OTHER)).advice).toBe(
      'Write `edges firm against wall` under `other`.',
    );
  });

  it('is mended by another step where its edges are lost already', () => {
    const large = OTHER.replace('4 x 4', '16 x 16').replace('hard', 'lost').replace('(60, 30)', '(60, 30)');
    const soft = STONE.replace('hard', 'lost').replace('4 x 4', '5 x 5');
    const plan = text(soft, large);
    const { fix, advice } = only('rival', plan);
    expect(advice).toBe('Take `other` from step 5 to step 4, nearer to what is round it.');
    expect(of('rival', checked(mended(plan, fix ?? { edits: [] })))).toEqual([]);
  });

  it('is the far end of the dominant object at the focal point, told as such, but not its near edges', () => {
    const long = STONE.replace('4 x 4 at (20, 30)', '48 x 6 at (44, 30)');
    const { message } = only('rival', text(long));
    expect(message).toMatch(
      /^Where `stone` meets the bare ground, 41.5 cm to the right of the focal point, .* It is an edge of the dominant object, but far from that point\.$/,
    );
    expect(of('rival', checked(text(long).replace('(20, 30)', '(44, 30)')))).toEqual([]);
  });

  it('is what lies on the far end of the dominant object', () => {
    const plan = text(LONG, knob('near', '4 x 4', '(21, 30)'), knob('far', '4 x 4', '(77, 30)'));
    const { message, fix } = only('rival', plan);
    expect(message).toMatch(/^Where `far` meets `stone`, 55.* cm to the right of the focal point/);
    expect(message).toMatch(/ `far` lies on the dominant object, but far from that point\.$/);
    expect(of('rival', checked(mended(plan, fix ?? { edits: [] })))).toEqual([]);
  });

  it('is told with what it would take where no change of one object mends it', () => {
    const faint = STONE.replace('hard', 'lost');
    const two = OTHER.replace('hard', 'lost').replace('4 x 4', '7 x 7').replace('value   5', 'value   1');
    const { advice, fix } = only('rival', text(faint, two, 'rule    rival limit 20%'));
    expect(fix).toBeUndefined();
    expect(advice).toMatch(/^No softer edge or other step of `other` alone does it: it takes \d+ % less/);
  });

  it('takes the limit of the plan', () => {
    const plan = text(STONE, OTHER.replace('hard', 'firm'));
    expect(of('rival', checked(plan))).toEqual([]);
    expect(of('rival', checked(`${plan}\nrule    rival limit 70%`))).toHaveLength(1);
    expect(of('rival', checked(`${plan}\nrule    rival limit 71%`))).toEqual([]);
  });

  it('is told for three borders at most, and how many more there are', () => {
    const places = ['(60, 10)', '(60, 30)', '(60, 50)', '(40, 10)', '(40, 50)'];
    const more = places.map((place, index) =>
      OTHER.replace('other', `other${index}`).replace('(60, 30)', place),
    );
    const findings = of('rival', checked(text(STONE, ...more)));
    expect(findings).toHaveLength(3);
    expect(findings[2]?.message).toMatch(/ So it is with two more: .*`other\d`.*\.$/);
  });

  it('is looked for while up to a tenth of the picture has neither value nor colour', () => {
    const rivals = (height: number) => of('rival', checked(text(STONE, OTHER, floor(height)))).length;
    expect([5.9, 6, 6.1].map(rivals)).toEqual([1, 1, 0]);
  });

  it('is not looked for while what is round the focal point has no value, unless it is little', () => {
    // A dish under the stone: 16 of the 201 square centimetres within 8 cm are the stone's.
    const dish = (side: number) => `object  dish\n  shape   rectangle ${side} x ${side} at (20, 30)`;
    const rivals = (side: number) => of('rival', checked(text(dish(side), STONE, OTHER))).length;
    // 5.8 x 5.8 - 16 = 17.6, and 6.3 x 6.3 - 16 = 23.7.
    expect([5.8, 6.3].map(rivals)).toEqual([1, 0]);
  });

  it('is not looked for while the dominant object has no value, however small', () => {
    const stone = STONE.replace('4 x 4', '1 x 1').replace('value   5', '');
    const rivals = (dominant: string) => of('rival', checked(text(dominant, OTHER))).length;
    expect([stone, stone.replace(', dominant', '')].map(rivals)).toEqual([0, 1]);
  });

  it('is not looked for where a line of an object can’t be read', () => {
    expect(of('rival', checked(text(STONE, OTHER.replace('value   5', 'value   5\n  at  nowhere'))))).toEqual(
      [],
    );
  });

  it('is not what another dominant object is, which is told as such', () => {
    const second = OTHER.replace('object  other', 'object  other, dominant');
    expect(of('rival', checked(text(STONE, second)))).toEqual([]);
    expect(of('one dominant', checked(text(STONE, second)))).toHaveLength(1);
  });
});

describe('a focal point that nothing marks', () => {
  it('is told with the nearest border', () => {
    const { message, advice } = only('rival', text(OTHER));
    expect(message).toBe('Nothing marks the focal point: no border with contrast lies within 8 cm of it.');
    expect(advice).toBe(
      'The nearest clear border is 38 cm away, where `other` meets the bare ground: bring it here, or set an object here that differs from what is behind it.',
    );
  });

  it('is told as hardly marked where what is there is faint beside the strongest place', () => {
    const faint = STONE.replace('hard', 'lost');
    const strong = OTHER.replace('4 x 4', '9 x 9');
    expect(only('rival', text(faint, strong)).message).toBe(
      'Hardly anything marks the focal point: what lies within 8 cm of it draws the eye 4 % as strongly as the strongest place, where `other` meets the bare ground.',
    );
  });

  it('is not told of a picture without any contrast', () => {
    expect(of('rival', checked(text()))).toEqual([]);
  });
});

describe('a strong place near the edge', () => {
  const post = OTHER.replace('(60, 30)', '(77, 30)').replace('4 x 4', '3 x 3.5');

  it('is told with its distance from the edge and mended', () => {
    const plan = text(STONE, post);
    const { message, fix } = only('strong edge', plan);
    expect(message).toBe(
      'Where `other` meets the bare ground, 3 cm from the right edge, the picture draws the eye 81 % as strongly as at the focal point; so near the edge, 75 % and more leads it out.',
    );
    expect(of('strong edge', checked(mended(plan, fix ?? { edits: [] })))).toEqual([]);
  });

  it('is looked for while up to a tenth of the picture has no value', () => {
    const strong = (height: number) => of('strong edge', checked(text(STONE, post, floor(height)))).length;
    expect([5.9, 6.1].map(strong)).toEqual([1, 0]);
  });

  it('is what lies on the end of the dominant object there', () => {
    const plan = text(LONG, knob('near', '4 x 4', '(21, 30)'), knob('far', '2.8 x 2.8', '(77, 30)'));
    expect(only('strong edge', plan).message).toMatch(
      /from the right edge, .* `far` lies on the dominant object, but far from that point\.$/,
    );
  });

  it('is told once, as a rival, where it is one', () => {
    const plan = checked(text(STONE, post.replace('3 x 3.5', '4 x 4')));
    expect(of('strong edge', plan)).toEqual([]);
    expect(of('rival', plan)[0]?.message).toContain(
      '57 cm to the right of the focal point and 3 cm from the right edge, the picture',
    );
  });
});

describe('means that are not met', () => {
  it.each([
    [
      'edges',
      STONE.replace('hard', 'soft'),
      OTHER.replace('hard', 'firm'),
      'Make the edges of `stone` hard.',
    ],
    ['edges', STONE, OTHER, 'Make the edges of `other` firm.'],
    // The focal point lies deep in it.
    [
      'edges',
      STONE.replace('4 x 4', '24 x 24').replace('hard', 'soft'),
      OTHER.replace('hard', 'firm'),
      'Make the edges of `stone` hard.',
    ],
    ['detail', `${STONE}\n  detail  little`, OTHER, 'Paint `stone` in fine detail.'],
    [
      'value',
      STONE.replace('value   5', 'value   4'),
      OTHER.replace('hard', 'firm'),
      'Take `stone` from step 4 to step 5',
    ],
    ['value', STONE, OTHER.replace('4 x 4', '6 x 6'), 'Make the edges of `other` firm.'],
    [
      'colour',
      STONE.replace('value   5', 'colour  5R 5/10'),
      OTHER.replace('4 x 4', '6 x 6').replace('value   5', 'colour  5R 5/10'),
      'Make the edges of `other` firm.',
    ],
  ])('%s are told at the word, with a change that is tried', (means, stone, other, advice) => {
    const plan = text(`  win by  ${means}`, stone, other);
    const finding = only('unmet means', plan);
    expect(finding.location).toEqual({ line: 3, start: 10, end: 10 + means.length });
    expect(finding.message).toMatch(new RegExp(`^The focal point is to win by ${means}, but `));
    expect(finding.advice).toContain(advice);
    expect(of('unmet means', checked(mended(plan, finding.fix ?? { edits: [] })))).toEqual([]);
  });

  it('by value refer to the rival that has more of it, with a figure that reads beside the rival’s own', () => {
    const plan = text('  win by  value', STONE, OTHER.replace('4 x 4', '6 x 6'));
    expect(only('unmet means', plan).message).toBe(
      'The focal point is to win by value, but its rival, where `other` meets the bare ground, has 1.5 times as much contrast of value; up to 1.1 times is let pass.',
    );
    expect(only('rival', plan).message).toContain('draws the eye 1.5 times as strongly as there');
  });

  it('by value name what has more of it and is no rival', () => {
    const colourful = STONE.replace('value   5', 'colour  5R 7/10\n  value   4');
    const plan = text('  win by  value', colourful, OTHER.replace('hard', 'firm'));
    expect(of('rival', checked(plan))).toEqual([]);
    expect(only('unmet means', plan).message).toContain(
      'of that at the strongest place elsewhere, where `other`',
    );
  });

  it('by scale says how much larger it has to be', () => {
    const { advice } = only('unmet means', text('  win by  scale', STONE, OTHER.replace('4 x 4', '5 x 5')));
    // 5 / 4, rounded up.
    expect(advice).toContain('`stone` has to be 1.26 times as wide and as high');
  });

  it('by isolation names what is in the way', () => {
    const near = 'object  twig\n  shape   rectangle 2 x 2 at (34, 30)\n  value   5';
    const { message, advice } = only('unmet means', text('  win by  isolation', STONE, OTHER, near));
    expect(message).toMatch(/the ring round it is [\d.]+ times as busy/);
    expect(advice).toContain('`twig`');
  });

  it.each([
    ['edges', 5.9, 1],
    ['edges', 6.1, 0],
    ['detail', 6.1, 1],
  ])('by %s where a floor %f cm high has no value', (means, height, told) => {
    const stone = `${STONE.replace('hard', 'soft')}\n  detail  little`;
    const plan = checked(text(`  win by  ${means}`, stone, OTHER, floor(height)));
    expect(of('unmet means', plan)).toHaveLength(told);
  });

  it('are not told of a focal point that the plan states none for', () => {
    expect(of('unmet means', checked(text(STONE.replace('hard', 'soft'), OTHER)))).toEqual([]);
  });
});
