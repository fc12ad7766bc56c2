import { describe, expect, it } from 'vitest';
import type { Edges } from '../../../grammar/index.js';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';
import { centreOfInterest } from './centre.js';
import { sharpnessRound } from './means-sharpness.js';

const PLAN = [
  'canvas  80 x 60 cm\n  ground  N 9/\nfocus   (20, 30)',
  'object  table\n  shape   rectangle (0, 34) to (80, 60)\n  value   3\n  edges   soft',
  'object  head, dominant\n  shape   rectangle 24 x 24 at (20, 30)\n  value   4\n  edges   firm',
  'object  eye\n  shape   rectangle 2 x 2 at (17, 28)\n  value   1\n  edges   hard',
  'object  lamp\n  shape   rectangle 10 x 20 at (60, 30)\n  value   2\n  edges   hard\n  edges   lost against table',
].join('\n');

describe('the sharpness round the focal point of a plan that paints an object otherwise', () => {
  const now = planOf(PLAN);
  const measures = measure(now);
  const centre = centreOfInterest(now, measures);

  it.each(
    now.objects.flatMap(({ index, name }) =>
      (['hard', 'firm', 'soft', 'lost'] as const).map((edges): [string, Edges, number] => [
        name,
        edges,
        index,
      ]),
    ),
  )('is that of the plan with it: %s with edges that are %s', (_, edges, index) => {
    const object = now.objects[index];
    if (!object) throw new Error('no such object');
    const tried = { ...now, objects: now.objects.with(index, { ...object, edges }) };
    const found = sharpnessRound(tried, measures.borders, centre, index);
    const anew = measure(tried).borders;
    expect(found).toEqual(sharpnessRound(tried, anew, centre));
    expect(found.there).toBeGreaterThan(0);
  });

  it('is that by each stretch', () => {
    const { focus, canvas } = now;
    let [sharpness, length] = [0, 0];
    for (const stretch of measures.borders.stretches) {
      const away = Math.hypot(stretch.at.x - (focus?.at.x ?? 0), stretch.at.y - (focus?.at.y ?? 0));
      // No stretch lies just at 8 %, where a part of it would count.
      if (stretch.pull === 0 || away > 0.08 * canvas.diagonal) continue;
      sharpness += stretch.length * stretch.sharpness;
      length += stretch.length;
    }
    expect(length).toBeGreaterThan(0);
    expect(sharpnessRound(now, measures.borders, centre).there).toBeCloseTo(sharpness / length, 9);
  });

  it('is told for each focal point', () => {
    const { focus } = now;
    if (!focus) throw new Error('no focal point');
    const elsewhere = { ...now, focus: { ...focus, at: { x: 60, y: 30 } } };
    const { there } = sharpnessRound(elsewhere, measures.borders, new Map());
    expect(there).not.toBe(sharpnessRound(now, measures.borders, centre).there);
    expect(sharpnessRound(elsewhere, measure(elsewhere).borders, new Map()).there).toBe(there);
  });
});
