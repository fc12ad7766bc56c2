import { describe, expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { measure } from '../measure/measure.js';
import {
  type Deviation,
  photographOf,
  photographsAsTold,
  photographsAt,
  pictureOfPixels,
} from '../measure/photograph/test-support.js';
import type { Photographs } from '../measure/photograph/photographs.js';
import { check, standing } from './check.js';
import type { Finding } from './finding.js';

const SCENE = `plan    "Bowl before a screen"
canvas  60 x 40 cm
  ground  #a08a6c
focus   (40, 24)
colour  slate 5PB 5/4
colour  straw 5Y 7/6
object  screen
  plane   background
  shape   rectangle (0, 0) to (60, 26)
  colour  slate
object  table
  plane   background
  shape   rectangle (0, 26) to (60, 40)
  value   2
object  bowl, dominant
  shape   circle 14 at (40, 24)
  colour  straw
`;

const PAINT = 'sitting "Paint" on 2027-01-04\n  works   screen, table, bowl';

function scene(...lines: readonly string[]): string {
  return `${SCENE}${lines.join('\n')}\n`;
}

/** What stands of the findings of the record. */
function told(
  text: string,
  photographs: (plan: ReturnType<typeof planOf>) => Photographs = photographsAsTold,
) {
  const plan = planOf(text);
  const measures = measure(plan, undefined, undefined, photographs(plan));
  return standing(check(plan, measures)).filter(({ rule }) => RULES.has(rule));
}

const RULES = new Set([
  'unreadable photograph',
  'doubtful photograph',
  'painted value budget',
  'painted colour budget',
  'painted value',
  'painted colour',
  'painted emphasis',
  'away from plan',
]);

const rulesOf = (findings: readonly Finding[]): readonly string[] => findings.map(({ rule }) => rule);

/** One photograph with what the painter and the camera did. */
function photographed(
  text: string,
  deviations: readonly Deviation[],
  camera: Parameters<typeof photographOf>[2] = {},
): readonly Finding[] {
  return told(text, (plan) =>
    photographsAt({
      'one.jpg': photographOf(plan, 0, { deviations, noise: 1.5, longerSide: 240, ...camera }),
    }),
  );
}

const ONE = scene(PAINT, '  photo   "one.jpg"');

describe('what is found in the photographs of a painting', () => {
  it('is nothing where all was painted as planned', () => {
    expect(photographed(ONE, [])).toEqual([]);
  });

  it('stands on the line of the photograph', () => {
    const [finding] = photographed(ONE, [{ object: 'bowl', steps: -1.2 }]);
    expect(finding?.rule).toBe('painted value');
    expect(ONE.split('\n')[finding?.location.line ?? 0]).toContain('photo');
    expect(finding?.objects).toEqual([2]);
  });

  it('is judged by the latest in time alone', () => {
    const text = scene(
      'sitting "Second" on 2027-02-04\n  works   bowl\n  photo   "as planned.jpg"',
      `${PAINT}\n  photo   "bowl 2 steps darker.jpg"`,
    );
    expect(rulesOf(told(text))).toEqual([]);
  });

  it('is nothing while the latest is on its way', () => {
    const before = `${PAINT}\n  photo   "bowl 2 steps darker.jpg"`;
    expect(rulesOf(told(scene(before)))).toContain('painted value');
    const text = scene(before, 'sitting "Second" on 2027-02-04\n  works   bowl\n  photo   "later.jpg"');
    expect(told(text)).toEqual([]);
  });

  it('goes by the one before where the latest can’t be read, which is told', () => {
    const text = scene(
      `${PAINT}\n  photo   "bowl 2 steps darker.jpg"`,
      'sitting "Second" on 2027-02-04\n  works   bowl\n  photo   "missing.jpg"',
    );
    expect(rulesOf(told(text))).toEqual(expect.arrayContaining(['unreadable photograph', 'painted value']));
  });

  it('leaves alone what no sitting has painted yet', () => {
    const text = ONE.replace('works   screen, table, bowl', 'works   screen, table');
    expect(photographed(text, [{ object: 'bowl', colour: [10, 0, 0] }])).toEqual([]);
  });

  it('knows no colours of an underpainting', () => {
    const text = ONE.replace('  photo', '  layer   underpainting\n  photo');
    expect(rulesOf(photographed(text, [{ object: 'screen', colour: [51.6, 30, 30] }]))).toEqual([]);
    expect(rulesOf(photographed(text, [{ object: 'screen', colour: [25, 30, 30] }]))).toContain(
      'painted value',
    );
  });

  it('is set aside for one object with a reason', () => {
    const text = `${ONE}allow   painted value for bowl because "the sun moved"\n`;
    expect(rulesOf(photographed(text, [{ object: 'bowl', steps: -1.2 }]))).not.toContain('painted value');
  });

  it('is a hint where the photograph can’t be trusted, and of colour where it has no grey patch', () => {
    const trust = { burntShare: 0.2, blackShare: 0, sharpness: 3, grey: { cast: 1 } };
    const darker = photographed(ONE, [{ object: 'bowl', steps: -1.2 }], { trust });
    expect(darker.find(({ rule }) => rule === 'painted value')?.severity).toBe('hint');
    const unbalanced = { burntShare: 0, blackShare: 0, sharpness: 3 };
    const redder = photographed(ONE, [{ object: 'bowl', colour: [71.6, 40, 20] }], { trust: unbalanced });
    expect(redder.map(({ rule, severity }) => [rule, severity])).toEqual([['painted colour', 'hint']]);
  });

  it('is nothing where a line of the sitting can’t be read', () => {
    const text = ONE.replace('works   screen, table, bowl', 'works   screen, tble, bowl');
    expect(photographed(text, [{ object: 'bowl', steps: -1.2 }])).toEqual([]);
  });

  it('says what to mix where there is a palette, and what to match where there is none', () => {
    const off = [{ object: 'bowl', steps: -1.2 }];
    const palette = 'palette\n  paint   white PW6\n  paint   ochre PY43\n  paint   lemon PY3\n';
    const mixed = photographed(`${ONE}${palette}`, off).find(({ rule }) => rule === 'painted value');
    expect(mixed?.advice).toMatch(
      /^Lighten it by 1\.2 steps: its planned colour is mixed from \d+.white : .*\.$/u,
    );
    const jug = 'object  jug\n  shape   rectangle (5, 10) to (15, 26)\n  value   4\n';
    const text = ONE.replace('sitting', `${jug}sitting`).replace('table, bowl', 'table, bowl, jug');
    const matched = photographed(text, off).find(({ rule }) => rule === 'painted value');
    expect(matched?.advice).toBe(
      'Lighten it by 1.2 steps, until it is as light as `jug`, which is on its step.',
    );
  });

  it('takes spots of light on dark for glare, and a light object not', () => {
    const glaring = told(ONE, (plan) => {
      const { width, height, lab } = photographOf(plan, 0, { longerSide: 240 });
      for (let row = 120; row < 130; row++) lab.fill(99, 3 * (row * width + 20), 3 * (row * width + 60));
      return photographsAt({ 'one.jpg': pictureOfPixels({ width, height, lab }) });
    });
    expect(rulesOf(glaring)).toEqual(['doubtful photograph']);
    expect(glaring[0]?.message).toContain('most of it on `table`: it looks like glare');
    const painted = photographed(ONE, [{ object: 'table', colour: [97, 0, 0] }]);
    expect(rulesOf(painted)).not.toContain('doubtful photograph');
  });
});
