import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mended, planOf } from '../../tests/support/plan.js';
import { measure } from '../measure/measure.js';
import type { Rule, RuleFinding } from './finding.js';
import { chromaOutOfReach } from './rules/chroma-out-of-reach.js';
import { mergedNeighbours } from './rules/merged-neighbours.js';
import { noLeadingTone } from './rules/no-leading-tone.js';
import { planeOrder } from './rules/plane-order.js';
import { spots } from './rules/spots.js';
import { valueAgainstColour } from './rules/value-against-colour.js';
import { valueBudget } from './rules/value-budget.js';

const RULES: readonly Rule[] = [
  valueBudget,
  noLeadingTone,
  planeOrder,
  spots,
  mergedNeighbours,
  valueAgainstColour,
  chromaOutOfReach,
];

type Found = RuleFinding & Pick<Rule, 'id' | 'severity'>;

function found(text: string): readonly Found[] {
  const plan = planOf(text);
  const measures = measure(plan);
  return RULES.flatMap((rule) =>
    rule
      .check(plan, measures, rule.limit?.value ?? 0)
      .map((finding) => ({ ...finding, id: rule.id, severity: rule.severity })),
  );
}

interface Sketch {
  readonly trend: string;
  readonly budget: readonly number[];
  readonly objects: readonly {
    readonly box: readonly [number, number, number, number];
    readonly step: number;
    readonly plane: string;
    readonly role: string;
    readonly edges: string;
    readonly colour: string;
  }[];
}

const place = fc.integer({ min: 0, max: 40 });
const sketches: fc.Arbitrary<Sketch> = fc.record({
  trend: fc.constantFrom('lighten', 'darken'),
  budget: fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })),
  objects: fc.array(
    fc.record({
      box: fc.tuple(place, place, fc.integer({ min: 2, max: 30 }), fc.integer({ min: 2, max: 30 })),
      step: fc.integer({ min: 1, max: 5 }),
      plane: fc.constantFrom('background', 'middle', 'foreground'),
      role: fc.constantFrom('', ', secondary', ''),
      edges: fc.constantFrom('hard', 'firm', 'soft'),
      colour: fc.constantFrom('5PB 4/10', '5Y 8/8', 'N 5/', 'rose'),
    }),
    { minLength: 2, maxLength: 10 },
  ),
});

/** A canvas of 48 x 36 cm; mirrored left to right or so many times as large when asked. */
function textOf({ trend, budget, objects }: Sketch, times = 1, mirrored = false): string {
  const across = (x: number): number => times * (mirrored ? 48 - x : x);
  const [dark = 0, light = 0] = budget;
  return [
    `canvas  ${48 * times} x ${36 * times} cm`,
    `scale   5\n  planes  ${trend} with distance`,
    `budget  value dark ${dark}%, light ${light}% within 10%`,
    'colour  rose 2.5R 6/12',
    ...objects.map(({ box: [x, y, width, height], step, plane, role, edges, colour }, index) =>
      [
        `object  o${index}${role}`,
        `  shape   rectangle (${across(x)}, ${times * y}) to (${across(x + width)}, ${times * (y + height)})`,
        `  plane   ${plane}\n  colour  ${colour}\n  value   ${step}\n  edges   ${edges}`,
      ].join('\n'),
    ),
  ].join('\n');
}

describe('what is found about light and dark', () => {
  it('is mended by its fix, which breaks nothing that the plan states', () => {
    fc.assert(
      fc.property(sketches, (sketch) => {
        const text = textOf(sketch);
        const before = found(text);
        const warned = new Set(before.filter(({ severity }) => severity === 'warning').map(({ id }) => id));
        for (const { id, message, fix } of before) {
          if (!fix) continue;
          const after = found(mended(text, fix));
          const messages = after.filter((other) => other.id === id).map((other) => other.message);
          expect(messages).not.toContain(message);
          const news = after.filter((other) => other.severity === 'warning' && !warned.has(other.id));
          expect(news.map((other) => `${message} -> ${fix.title} -> ${other.message}`)).toEqual([]);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('is the same in the mirror', () => {
    fc.assert(
      fc.property(sketches, (sketch) => {
        const said = (all: readonly Found[]) => all.map(({ message, advice }) => [message, advice]);
        expect(said(found(textOf(sketch, 1, true)))).toEqual(said(found(textOf(sketch))));
      }),
      { numRuns: 12 },
    );
  });

  it('is the same on a larger canvas, but for the lengths that are told', () => {
    fc.assert(
      fc.property(sketches, (sketch) => {
        const said = (all: readonly Found[]) =>
          all.map(({ message, advice }) => [message.replace(/[\d.]+ cm/gu, 'so far'), advice]);
        expect(said(found(textOf(sketch, 2.5)))).toEqual(said(found(textOf(sketch))));
      }),
      { numRuns: 12 },
    );
  });
});
