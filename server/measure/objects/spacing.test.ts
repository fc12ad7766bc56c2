import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { visibleAreas } from '../areas/areas.js';
import { partsOf } from '../areas/parts.js';
import { type SpacingMeasure, measureSpacing } from './spacing.js';

interface Block {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const LARGEST: Block = { left: 10, top: 10, width: 20, height: 30 };

function spacingOf(blocks: readonly Block[], size = 1, across = (x: number) => x, more = ''): SpacingMeasure {
  const text = blocks.map(
    ({ left, top, width, height }, index) =>
      `object  block-${index}, ${index === 0 ? 'dominant' : 'secondary'}\n  shape   rectangle (${across(left) * size}, ${top * size}) to (${across(left + width) * size}, ${(top + height) * size})`,
  );
  const plan = planOf(`canvas  ${120 * size} x ${90 * size} cm\n${text.join('\n')}${more}`);
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureSpacing(plan, visibleAreas(plan.canvas, layers), partsOf(plan));
}

describe('sizes', () => {
  it('are compared with the next smaller, as a part of the larger', () => {
    const { principals, sizePairs } = spacingOf([
      LARGEST,
      { left: 40, top: 10, width: 19, height: 30 },
      { left: 70, top: 10, width: 10, height: 10 },
    ]);
    expect(principals.map(({ object }) => object)).toEqual([0, 1, 2]);
    // 600, 570 and 100 square centimetres: 30 of 600, 470 of 570.
    expect(sizePairs.map(({ one, other }) => [one, other])).toEqual([
      [0, 1],
      [1, 2],
    ]);
    expect(sizePairs.map(({ difference }) => Number(difference.toFixed(6)))).toEqual([0.05, 0.824561]);
  });

  it('count what lies on a thing, and of several shapes the largest', () => {
    const { principals } = spacingOf(
      [LARGEST],
      1,
      (x) => x,
      `\nobject  patch\n  shape   rectangle (12, 12) to (28, 28)
object  pair, secondary\n  shape   rectangle (40, 10) to (60, 30)\n  shape   rectangle (70, 10) to (80, 30)`,
    );
    const canvas = 120 * 90;
    expect(principals.map(({ size }) => Math.round(size * canvas))).toEqual([600, 400]);
    expect(principals.map(({ share }) => Math.round(share * canvas))).toEqual([600, 600]);
  });
});

describe('gaps', () => {
  it('lie between neighbours beside and over each other', () => {
    const { gaps, gapPairs } = spacingOf([
      LARGEST,
      { left: 40, top: 20, width: 10, height: 10 },
      { left: 60, top: 5, width: 10, height: 30 },
      { left: 62, top: 60, width: 20, height: 20 },
    ]);
    expect(gaps.map(({ along, between, size }) => [along, ...between, Math.round(size)])).toEqual([
      ['across', 0, 1, 10],
      ['across', 1, 2, 10],
      ['down', 2, 3, 25],
    ]);
    // 10 cm of a diagonal of 150 cm.
    expect(gaps[0]?.shareOfDiagonal).toBeCloseTo(10 / 150, 9);
    expect(gapPairs).toHaveLength(1);
    expect(gapPairs[0]?.difference).toBeCloseTo(0, 9);
  });

  it('are held against all others of one row, as far apart as they lie in it', () => {
    const row = [0, 15, 34, 49, 74].map((left) => ({ left, top: 10, width: 10, height: 20 }));
    // Gaps of 5, 9, 5 and 15 cm, and another row below.
    const below = [0, 15].map((left) => ({ left, top: 60, width: 10, height: 20 }));
    const { gapPairs } = spacingOf([...row, ...below]);
    expect(
      gapPairs.map(({ one, other, apart, difference }) => [
        Math.round(one.size),
        Math.round(other.size),
        apart,
        Math.round(difference * 100),
      ]),
    ).toEqual([
      [5, 5, 1, 0],
      [9, 15, 1, 40],
      [5, 9, 0, 44],
      [9, 5, 0, 44],
      [5, 15, 0, 67],
      [5, 15, 2, 67],
    ]);
  });

  it('are none between things that overlap, stand close, or pass each other by', () => {
    const close = { left: 31, top: 10, width: 10, height: 10 };
    const below = { left: 60, top: 50, width: 10, height: 10 };
    expect(spacingOf([LARGEST, close]).gaps).toEqual([]);
    expect(spacingOf([LARGEST, below]).gaps).toEqual([]);
  });
});

describe('the spacing of any picture', () => {
  const block = fc.record({
    left: fc.integer({ min: 0, max: 100 }),
    top: fc.integer({ min: 0, max: 80 }),
    width: fc.integer({ min: 3, max: 20 }),
    height: fc.integer({ min: 3, max: 20 }),
  });
  const summary = ({ gaps, sizePairs }: SpacingMeasure) => ({
    gaps: gaps
      .map(({ along, between, shareOfDiagonal }) => [
        along,
        Math.min(...between),
        Math.max(...between),
        shareOfDiagonal.toFixed(9),
      ])
      .sort(),
    sizes: sizePairs.map(({ difference }) => difference.toFixed(6)).sort(),
  });

  it('is the same in the mirror and at another size', () => {
    fc.assert(
      fc.property(
        fc.array(block, { minLength: 2, maxLength: 7 }),
        fc.constantFrom(2, 0.5),
        (blocks, size) => {
          const here = summary(spacingOf(blocks));
          expect(summary(spacingOf(blocks, 1, (x) => 120 - x))).toEqual(here);
          expect(summary(spacingOf(blocks, size))).toEqual(here);
        },
      ),
      { numRuns: 60, seed: 32 },
    );
  });
});
