import { describe, expect, it } from 'vitest';
import { parse } from '../grammar/index.js';
import { compose } from '../server/drawing/compose.js';
import { check } from '../server/findings/check.js';
import { visibleAreas } from '../server/measure/areas/areas.js';
import { measure } from '../server/measure/measure.js';
import type { Plan } from '../server/plan/plan.js';
import { pointsOf } from '../server/plan/build-outline.js';
import { resolvePlan } from '../server/plan/resolve.js';
import { combText } from './support/combs.js';
import { LARGE_CANVAS, largePlan, leaf, OBJECTS } from './support/large-plan.js';
import { planOf } from './support/plan.js';

/** What all stages make of a plan: none of them may throw, and shares add up. */
function wholeWay(plan: Plan) {
  const measures = measure(plan);
  const findings = check(plan, measures);
  compose(plan, measures, findings, 'drawing');
  const whole = measures.objects.reduce((sum, { share }) => sum + share, measures.areas.bareShare);
  expect(whole).toBeCloseTo(1, 6);
  return { measures, findings };
}

function errorsOf(plan: Plan): readonly string[] {
  return plan.problems.filter(({ severity }) => severity === 'error').map(({ message }) => message);
}

describe('a plan as large as plans get', () => {
  const text = largePlan;

  it('10,000 lines, 2,000 objects and 200,000 points are read, measured, checked and drawn', () => {
    const plan = planOf(text);
    expect(text.split('\n')).toHaveLength(10_001);
    expect(plan.objects).toHaveLength(OBJECTS);
    expect(plan.objects.reduce((sum, { outline }) => sum + (outline.rings[0]?.length ?? 0) / 2, 0)).toBe(
      200_000,
    );
    expect(errorsOf(plan)).toEqual([]);
    wholeWay(plan);
  });

  it('means the same with CRLF and a byte order mark, place for place', () => {
    expect(parse(`\ufeff${text.replaceAll('\n', '\r\n')}`)).toEqual(parse(text));
  });

  it('200,000 points may be one outline, on lines of its own', () => {
    const points = leaf(0, 200_000, 20);
    const rows = Array.from(
      { length: 2_000 },
      (_, row) => `    ${points.slice(row * 100, row * 100 + 100).join(' ')}`,
    );
    const plan = planOf(
      [LARGE_CANVAS, 'object  sea', '  value   2', '  shape   outline', ...rows].join('\n'),
    );
    expect(errorsOf(plan)).toEqual([]);
    expect(wholeWay(plan).measures.objects[0]?.share).toBeGreaterThan(0);
  });
});

describe('a plan that asks for more has one clear error', () => {
  it('for an outline that crosses itself everywhere', () => {
    // Every point is joined to the one most opposite.
    const points = leaf(0, 3_001, 20).map((_, i, all) => all[(i * 1_500) % all.length]);
    const plan = planOf(
      `${LARGE_CANVAS}\nobject  bramble\n  value   1\n  shape   outline ${points.join(' ')}`,
    );
    expect(errorsOf(plan)).toEqual(['The shape can’t be read: it crosses itself too often to be measured.']);
    expect(wholeWay(plan).findings.map(({ rule }) => rule)).not.toContain('empty object');
  });

  it('for outlines that cross each other everywhere, and cuts nothing of them', () => {
    const comb = (way: 'upright' | 'level', teeth: number) =>
      `object  ${way}\n  value   ${way === 'upright' ? 1 : 4}\n  shape   outline ${combText(teeth, way)}`;
    const plan = planOf(['canvas  40 x 30 cm', comb('upright', 200), comb('level', 200)].join('\n'));
    expect(errorsOf(plan)).toEqual([expect.stringMatching(/^`level` crosses what lies under it too often/)]);
    const counter = { clips: 0, differences: 0, intersections: 0, corners: 0 };
    visibleAreas(plan.canvas, plan.objects, counter);
    expect(counter.corners).toBeLessThan(3 * 800);
    expect(plan.objects.map(({ outline }) => pointsOf(outline))).toEqual([800, 0]);
  });

  it('for more points and more parts than can be measured while somebody waits, however few lines ask for them', () => {
    const hedge = (i: number): string =>
      `object  hedge${i}\n  value   1\n  shape   rectangle 1 x 1\n  repeat  500 every (0, 0)`;
    const plan = planOf([LARGE_CANVAS, ...Array.from({ length: 600 }, (_, i) => hedge(i))].join('\n'));
    expect(errorsOf(plan)).toEqual([
      'The plan has more than 1\u{202f}000\u{202f}000 points up to here; what comes after is not drawn.',
      '`hedge20` has too many parts to be measured with the others, so it is not drawn: all shapes of a plan may have 10\u{202f}000 parts. Draw it with fewer. 480 more objects are left out for the same reason.',
    ]);
    expect(plan.objects.filter(({ outline }) => outline.rings.length > 0)).toHaveLength(20);
  });

  it('or two a line for lines indented without end', () => {
    const deep = Array.from({ length: 500 }, (_, depth) => `${' '.repeat(depth)}object  o${depth}`).join(
      '\n',
    );
    const tree = parse(`${LARGE_CANVAS}\n${deep}`);
    expect(tree.problems.length).toBeLessThanOrEqual(2 * 500);
    expect(tree.lineCount).toBe(501);
    wholeWay(resolvePlan(tree));
  });
});
