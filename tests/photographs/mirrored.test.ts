import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { measure } from '../../server/measure/measure.js';
import type { SquaredPicture } from '../../server/measure/photograph/photographs.js';
import type { RecordFigures } from '../../server/measure/photograph/record.js';
import { photographsAt, pictureOf } from '../../server/measure/photograph/test-support.js';
import type { Lab } from '../../server/plan/colour/colour.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { written } from '../findings/picture-text.js';
import { mirrored, type Picture, picture } from '../findings/pictures.js';

const seed = Number(process.env['SEED'] ?? 17);
const runs = Number(process.env['RUNS'] ?? 12);

/** Pixels on the longer side: a whole number of the squares over which colours are evened out. */
const SIDE = 120;

interface Patch {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly lab: Lab;
}

const part = fc.double({ min: 0, max: 1, noNaN: true });
const patch: fc.Arbitrary<Patch> = fc.record({
  left: part,
  top: part,
  width: part,
  height: part,
  lab: fc.tuple(
    fc.double({ min: 5, max: 98, noNaN: true }),
    fc.double({ min: -40, max: 60, noNaN: true }),
    fc.double({ min: -50, max: 70, noNaN: true }),
  ),
});
const patches = fc.array(patch, { minLength: 1, maxLength: 8 });

/** A photograph of anything: patches of colour before a soft passage from dark to light. */
function photograph({ width, height }: Picture, painted: readonly Patch[], isOver: boolean): SquaredPicture {
  const side = (length: number): number => 3 * Math.round((SIDE * length) / Math.max(width, height) / 3);
  return pictureOf({ width: side(width), height: side(height) }, (column, y) => {
    const x = isOver ? 1 - column : column;
    const held = painted.findLast(
      (one) => Math.abs(x - one.left) < one.width / 2 && Math.abs(y - one.top) < one.height / 2,
    );
    return held?.lab ?? [20 + 60 * x * y, 10 * x, 20 * y];
  });
}

const SITTINGS =
  '\nsitting "One" on 2027-01-02\n  photo "one.jpg"\nsitting "Two" on 2027-01-03\n  photo "two.jpg"\n';

function figuresOf(one: Picture, first: readonly Patch[], second: readonly Patch[], isOver: boolean) {
  const text = written(isOver ? mirrored(one) : one).text + SITTINGS;
  const plan = resolvePlan(parse(text));
  const pictures = photographsAt({
    'one.jpg': photograph(one, first, isOver),
    'two.jpg': photograph(one, second, isOver),
  });
  const record = measure(plan, undefined, undefined, pictures).record?.sittings[1];
  if (record?.is !== 'measured') throw new Error('nothing measured');
  return { plan, figures: record.figures };
}

/** What is told, whatever side it lies on; an object of few pixels may have one more or less on its rim. */
function told(figures: RecordFigures) {
  return {
    steps: figures.steps.map(({ share }) => share),
    groups: figures.groups.map(({ share }) => share),
    roles: [...figures.roles.map(({ share }) => share), figures.noRoleShare],
    values: [figures.key, figures.range.darkest, figures.range.lightest],
    change: figures.change?.mean ?? 0,
  };
}

const flat = (value: ReturnType<typeof told>): readonly number[] => Object.values(value).flat();

describe('the record of a painting', { timeout: 60_000 }, () => {
  it('is the same when plan and photographs are turned over', () => {
    fc.assert(
      fc.property(picture, patches, patches, (one, first, second) => {
        const { figures } = figuresOf(one, first, second, false);
        const { figures: over, plan } = figuresOf(one, first, second, true);
        flat(told(figures)).forEach((figure, index) => {
          expect(flat(told(over))[index]).toBeCloseTo(figure, 4);
        });
        for (const { object, step, since } of figures.objects) {
          const there = over.objects.find((seen) => seen.object === object);
          if (!there) continue;
          expect(Math.abs(there.step - step)).toBeLessThan(0.1);
          expect(there.since === undefined).toBe(since === undefined);
        }
        const { emphasis } = figures;
        expect(over.emphasis === undefined).toBe(emphasis === undefined);
        if (emphasis && over.emphasis) {
          expect(over.emphasis.at.y / plan.canvas.height).toBeCloseTo(emphasis.at.y / plan.canvas.height, 4);
          expect(1 - over.emphasis.at.x / plan.canvas.width).toBeCloseTo(
            emphasis.at.x / plan.canvas.width,
            4,
          );
        }
      }),
      { seed, numRuns: runs },
    );
  });

  it('shares out the whole canvas, and what is seen of each object', () => {
    fc.assert(
      fc.property(picture, patches, (one, painted) => {
        const { figures } = figuresOf(one, painted, painted, false);
        const sum = (numbers: readonly number[]): number => numbers.reduce((so, number) => so + number, 0);
        expect(sum(figures.steps.map(({ share }) => share))).toBeCloseTo(1, 9);
        expect(sum(figures.roles.map(({ share }) => share)) + figures.noRoleShare).toBeCloseTo(1, 9);
        for (const { steps, share } of figures.objects)
          expect(Math.abs(sum(steps) - share)).toBeLessThan(0.03);
        expect(figures.change?.mean).toBe(0);
      }),
      { seed, numRuns: runs },
    );
  });
});
