import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import {
  canvasChoices,
  crossingChoices,
  divisionsOf,
  hasLongerSide,
  planSnippet,
  readCanvas,
  turned,
} from './plan-text.js';

/** A snippet with what stands in its places. */
const filledIn = (snippet: string): string => snippet.replace(/\$\{\d+:([^}]*)\}|\$0/gu, '$1');

const canvases = canvasChoices.flatMap(({ choices }) => choices);

describe('a new plan', () => {
  it.each(canvases.map(({ canvas }) => canvas))(
    'on %s reads without a problem in every division',
    (canvas) => {
      const ways = hasLongerSide(canvas) ? (['upright', 'landscape'] as const) : (['landscape'] as const);
      for (const way of ways) {
        for (const division of divisionsOf(canvas)) {
          for (const crossing of crossingChoices) {
            const text = filledIn(planSnippet({ canvas: turned(canvas, way), division, crossing }));
            const tree = parse(text);
            expect(tree.problems).toEqual([]);
            const plan = resolvePlan(tree);
            expect(plan.problems).toEqual([]);
            expect(plan.focus?.crossing).toEqual({ system: division, name: crossing });
            expect(plan.canvas.height > plan.canvas.width).toBe(way === 'upright' && hasLongerSide(canvas));
            expect(plan.objects[0]?.outline.rings).toHaveLength(1);
          }
        }
      }
    },
  );

  it('names the sides of stock sizes', () => {
    expect(canvases.find(({ canvas }) => canvas === 'figure 20')?.sides).toBe('73 x 60 cm');
    expect(canvases.filter(({ canvas, sides }) => /^[a-z]/iu.test(canvas) && sides === undefined)).toEqual(
      [],
    );
  });

  it.each([
    ['80x50', { canvas: '80 x 50 cm' }],
    [' 7.5 × 10 IN ', { canvas: '7.5 x 10 in' }],
    ['80', { wrong: 'Write width and height with their unit, such as 80 x 50 cm.' }],
    ['80 x 50 ft', { wrong: 'Write width and height with their unit, such as 80 x 50 cm.' }],
    ['0 x 50 cm', { wrong: 'A canvas is from 1 mm to 100 m a side.' }],
    ['101 x 1 m', { wrong: 'A canvas is from 1 mm to 100 m a side.' }],
  ])('takes the typed size %j as %j', (typed, read) => {
    expect(readCanvas(typed)).toEqual(read);
  });

  it.each([
    ['20 x 16 in', 'upright', '16 x 20 in'],
    ['16 x 20 in', 'upright', '16 x 20 in'],
    ['20 x 16 in', 'landscape', '20 x 16 in'],
    ['figure 20', 'upright', 'figure 20 upright'],
    ['figure 20', 'landscape', 'figure 20'],
  ] as const)('turns %s %s into %s', (canvas, way, expected) => {
    expect(turned(canvas, way)).toBe(expected);
  });
});
