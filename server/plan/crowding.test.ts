import { describe, expect, it } from 'vitest';
import { combText } from '../../tests/support/combs.js';
import { objectNamed, planOf } from '../../tests/support/plan.js';
import { MOST_MUTUAL_CROSSINGS } from './geometry/crossing-bound.js';
import { OutlineCache } from './outline-cache.js';
import type { Plan } from './plan.js';
import { toldBy } from './test-support.js';

/** 4 crossings for each tooth and each tooth. */
const [FEW, MANY] = [158, 159];

function combs(teeth: number, more = ''): string {
  return [
    'canvas  40 x 30 cm',
    `object  reeds\n  shape   outline ${combText(teeth, 'upright')}\n  value   2`,
    `object  rain\n  shape   outline ${combText(teeth, 'level')}\n  value   4`,
    more,
  ].join('\n');
}

const drawn = ({ objects }: Plan) =>
  objects.filter(({ outline }) => outline.rings.length > 0).map(({ name }) => name);

describe('outlines that cross each other', () => {
  it('may do so as often as can be measured', () => {
    expect(4 * FEW * FEW).toBeLessThanOrEqual(MOST_MUTUAL_CROSSINGS);
    const plan = planOf(combs(FEW));
    expect(toldBy(plan)).toEqual([]);
    expect(drawn(plan)).toEqual(['reeds', 'rain']);
  });

  it('more often are one error, at the object that lies over the others, and the rest stands', () => {
    expect(4 * MANY * MANY).toBeGreaterThan(MOST_MUTUAL_CROSSINGS);
    const plan = planOf(
      combs(
        MANY,
        'object  pot\n  shape   rectangle 5 x 5 at (34, 8)\n  value   1\nobject  lid\n  shape   circle 2 at top of rain',
      ),
    );
    expect(plan.problems).toEqual([
      expect.objectContaining({
        severity: 'error',
        code: 'unreadable shape',
        message:
          '`rain` crosses what lies under it too often to be measured, so it is not drawn: all outlines of a plan may cross each other 100\u{202f}000 times. Draw it with fewer points.',
        location: objectNamed(plan, 'rain').location,
      }),
    ]);
    expect(drawn(plan)).toEqual(['reeds', 'pot', 'lid']);
  });

  it('are told of the one in front, whichever is written first', () => {
    const text = combs(MANY).replace('  value   2', '  value   2\n  plane   foreground');
    expect(toldBy(planOf(text))).toEqual([expect.stringMatching(/^`reeds` crosses/)]);
  });

  it('are fewer where something between hides them', () => {
    const [head = '', reeds = '', rain = ''] = combs(MANY).split(/\n(?=object)/);
    const sheet = 'object  sheet\n  shape   rectangle (0, 0) to (40, 30)\n  value   3';
    expect(toldBy(planOf([head, reeds, sheet, rain].join('\n')))).toEqual([]);
    expect(toldBy(planOf([head, sheet, reeds, rain].join('\n')))).toHaveLength(1);
  });

  it('are none between parts of one object that lie over each other', () => {
    const hedge = (name: string, y: number) =>
      `object  ${name}\n  shape   circle 3 at (8, ${y})\n  repeat  300 every (0.02, 0)\n  value   2`;
    const plan = planOf(['canvas  40 x 30 cm', hedge('box', 9), hedge('yew', 10.3)].join('\n'));
    expect(toldBy(plan)).toEqual([]);
    expect(drawn(plan)).toEqual(['box', 'yew']);
  });

  it('leave a lead its edge', () => {
    const plan = planOf(combs(MANY, 'lead    drift along top of rain to (38, 2)'));
    expect(toldBy(plan)).toHaveLength(1);
    expect(plan.leads.map(({ name }) => name)).toEqual(['drift']);
  });

  it('are counted anew only where outlines, their order or the canvas change, and come out as afresh', () => {
    const outlines = new OutlineCache();
    const texts: readonly (readonly [text: string, counted: number])[] = [
      [combs(MANY), 1],
      [combs(MANY).replace('value   2', 'value   5'), 1],
      [combs(FEW), 2],
      [combs(MANY), 3],
      [combs(MANY).replace('  value   2', '  value   2\n  plane   foreground'), 4],
      [combs(MANY).replace('40 x 30', '41 x 30'), 5],
      [combs(MANY, 'object  pot\n  shape   circle 3 at (36, 4)'), 6],
    ];
    for (const [text, counted] of texts) {
      const plan = planOf(text, { outlines });
      expect(plan).toEqual(planOf(text));
      expect(outlines.counted).toBe(counted);
    }
  });
});
