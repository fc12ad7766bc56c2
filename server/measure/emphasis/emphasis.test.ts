import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Plan } from '../../plan/plan.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { GROUND } from '../borders/borders.js';
import { type EmphasisMeasure, isNearEdge } from './emphasis.js';
import { byPull } from './field.js';
import { counted, fieldGrid, middleOf } from './grid.js';
import type { BorderStretch } from '../borders/borders.js';
import type { Point } from '../../plan/geometry/point.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';

/** Diagonal 100. */
const CANVAS = 'canvas  80 x 60 cm\n  ground  N 5/\nfocus   (20, 30)';

function emphasisOf(...blocks: readonly string[]): EmphasisMeasure {
  return measure(planOf([CANVAS, ...blocks].join('\n'))).emphasis;
}

function ball(name: string, place: string, value: number, rest = ''): string {
  return `object  ${name}\n  shape   rectangle 4 x 4 at ${place}\n  value   ${value}\n  edges   hard${rest}`;
}

describe('one small square on a grey ground, worked out by hand', () => {
  // Step 5 of 5 is Munsell 9, the ground 5: 16 cm of hard edge are 0.16 diagonals x 1 x 0.6 x 4 / 10 = 0.0384.
  const emphasis = emphasisOf(ball('stone', '(20, 30)', 5));

  it('has its strength, in its middle', () => {
    expect(emphasis.places).toHaveLength(1);
    const [place] = emphasis.places;
    expect(place?.strength).toBeCloseTo(0.0384, 4);
    expect(place?.at.x).toBeCloseTo(20, 6);
    expect(place?.at.y).toBeCloseTo(30, 6);
    expect(place?.areas).toEqual([0, GROUND]);
    expect(place?.fromEdge).toBeCloseTo(0.2, 6);
  });

  it('gives the field that strength within 8 % of the diagonal, and none beyond', () => {
    const { columns, strengths, strongest } = emphasis.field;
    const at = (x: number, y: number) =>
      strengths[Math.floor((y / 60) * 72) * columns + Math.floor((x / 80) * columns)] ?? NaN;
    expect(columns).toBe(96);
    expect(strongest).toBeCloseTo(0.0384, 4);
    expect(at(24, 30)).toBeCloseTo(strongest, 9);
    expect(at(31, 30)).toBe(0);
    // The square ends at 22, so all of its near side counts up to 30 and nothing beyond 30 and a quarter.
    expect(at(29.9, 30)).toBeGreaterThan(0);
    expect(at(30.5, 30)).toBe(0);
  });

  it('makes the focal point the first place', () => {
    expect(emphasis.focal?.strength).toBeCloseTo(0.0384, 4);
    expect(emphasis.focal).toMatchObject({ rank: 1, elsewhere: [], rivals: [] });
  });
});

describe('a second square', () => {
  it.each([
    ['firm', '(60, 30)', 0.7, 0],
    ['hard', '(60, 30)', 1, 1],
  ])('with %s edges at %s has its part of the strength', (edges, place, part, rivals) => {
    const { focal, places } = emphasisOf(
      ball('stone', '(20, 30)', 5),
      ball('other', place, 5).replace('hard', edges),
    );
    expect(places).toHaveLength(2);
    expect((focal?.elsewhere[0]?.strength ?? 0) / (focal?.strength ?? 1)).toBeCloseTo(part, 6);
    expect(focal?.rivals).toHaveLength(rivals);
    expect(focal?.rank).toBe(1);
  });

  it('near the edge of the canvas is told from three quarters of the strength on', () => {
    const near = (edges: string, place: string) =>
      emphasisOf(ball('stone', '(20, 30)', 5), ball('other', place, 5).replace('hard', edges)).nearEdge;
    expect(near('hard', '(75, 30)')).toHaveLength(1);
    expect(near('hard', '(74.9, 30)')).toHaveLength(0);
    expect(near('firm', '(75, 30)')).toHaveLength(0);
    expect(isNearEdge(0.05)).toBe(true);
  });

  it('is no other place where it is an edge of the dominant object', () => {
    const stone = ball('stone', '(20, 30)', 5).replace('object  stone', 'object  stone, dominant');
    expect(emphasisOf(stone, ball('other', '(50, 30)', 5)).focal?.elsewhere).toHaveLength(1);
    const twoFold = stone.replace('4 x 4 at (20, 30)', '36 x 20 at (20, 30)');
    expect(emphasisOf(twoFold).places.length).toBeGreaterThan(1);
    expect(emphasisOf(twoFold).focal?.elsewhere).toEqual([]);
  });

  it('is another place at the far end of a long dominant object', () => {
    // A table with a lamp at each end, the focal point at the one or in the middle.
    const table = ball('table', '(40, 30)', 4).replace('object  table', 'object  table, dominant');
    const ends = [table.replace('4 x 4', '60 x 6'), ball('near', '(16, 30)', 1), ball('far', '(64, 30)', 1)];
    const places = (focus: string, ...list: readonly string[]) =>
      measure(planOf([CANVAS.replace('(20, 30)', focus), ...list].join('\n'))).emphasis.focal;
    const atOneEnd = places('(16, 30)', ...ends);
    expect(atOneEnd?.elsewhere.length).toBeGreaterThan(0);
    for (const { at } of atOneEnd?.elsewhere ?? []) expect(at.x).toBeGreaterThan(45);
    expect(places('(40, 30)', ...ends)?.elsewhere).toEqual([]);
    // Once the far end is stronger, the focal point ranks second.
    expect(atOneEnd?.rank).toBe(1);
    expect(places('(16, 30)', ...ends.with(1, ball('near', '(16, 30)', 3)))?.rank).toBe(2);
  });
});

describe('without a focal point on the canvas', () => {
  it('places are told, but nothing of a focal point', () => {
    const plan = planOf(`${CANVAS.replace('(20, 30)', '(90, 30)')}\n${ball('stone', '(20, 30)', 5)}`);
    const { emphasis } = measure(plan);
    expect(emphasis.focal).toBeUndefined();
    expect(emphasis.places).toHaveLength(1);
  });

  it('an empty picture has no places', () => {
    expect(measure(planOf('canvas  80 x 60 cm')).emphasis).toMatchObject({ places: [], nearEdge: [] });
  });
});

const shapes = fc.array(
  fc.record({
    x: fc.integer({ min: 0, max: 80 }),
    y: fc.integer({ min: 0, max: 60 }),
    width: fc.integer({ min: 2, max: 40 }),
    height: fc.integer({ min: 2, max: 30 }),
    value: fc.integer({ min: 1, max: 5 }),
    edges: fc.constantFrom('hard', 'firm', 'soft', 'lost'),
    round: fc.boolean(),
  }),
  { minLength: 1, maxLength: 8 },
);
type Shapes = typeof shapes extends fc.Arbitrary<infer T> ? T : never;

function scene(list: Shapes, change = (x: number) => x, focus = 20.5): Plan {
  const blocks = list.map(
    ({ x, y, width, height, value, edges, round }, index) =>
      `object  thing${index}\n  shape   ${round ? 'ellipse' : 'rectangle'} ${width} x ${height} at (${change(x)}, ${y})\n  value   ${value}\n  edges   ${edges}`,
  );
  return planOf([CANVAS.replace('(20, 30)', `(${change(focus)}, 30)`), ...blocks].join('\n'));
}

/** What is gathered at one place, stretch by stretch, straight from the definition. */
function gatheredAt(stretches: readonly BorderStretch[], { x, y }: Point, diagonal: number): number {
  return stretches.reduce(
    (sum, stretch) =>
      sum +
      (counted(Math.hypot(stretch.at.x - x, stretch.at.y - y), diagonal) * stretch.length * byPull(stretch)) /
        diagonal,
    0,
  );
}

describe('in any picture', () => {
  it('the field is what a sum over all stretches gives, at every cell', () => {
    fc.assert(
      fc.property(
        shapes,
        fc.array(fc.nat({ max: 96 * 72 - 1 }), { minLength: 20, maxLength: 20 }),
        (list, cells) => {
          const plan = scene(list);
          const { borders, emphasis } = measure(plan);
          const grid = fieldGrid(plan.canvas);
          for (const cell of cells) {
            const direct = gatheredAt(borders.stretches, middleOf(grid, cell), plan.canvas.diagonal);
            expect(Math.abs((emphasis.field.strengths[cell] ?? NaN) - direct)).toBeLessThan(1e-12);
          }
        },
      ),
      { numRuns: 60, seed: 41 },
    );
  });

  it('no two places are nearer than 8 % of the diagonal, and none is stronger than the strongest', () => {
    fc.assert(
      fc.property(shapes, (list) => {
        const { places, field } = measure(scene(list)).emphasis;
        places.forEach((one, index) => {
          expect(one.strength).toBeLessThanOrEqual((places[index - 1]?.strength ?? field.strongest) + 1e-12);
          for (const other of places.slice(0, index)) {
            expect(Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y)).toBeGreaterThan(8 - 1e-9);
          }
        });
      }),
      { numRuns: 60, seed: 42 },
    );
  });

  it('mirroring mirrors the places and changes no figure', () => {
    fc.assert(
      fc.property(shapes, (list) => {
        const one = measure(scene(list)).emphasis;
        const other = measure(scene(list, (x) => 80 - x)).emphasis;
        expect(new Set(other.places.map(rounded))).toEqual(
          new Set(one.places.map(({ at, ...rest }) => rounded({ ...rest, at: { x: 80 - at.x, y: at.y } }))),
        );
        expect(other.focal?.strength).toBeCloseTo(one.focal?.strength ?? NaN, 9);
        expect(other.focal?.rank).toBe(one.focal?.rank);
        other.focal?.means.forEach(({ there, elsewhere }, index) => {
          expect(there).toBeCloseTo(one.focal?.means[index]?.there ?? NaN, 3);
          expect(elsewhere).toBeCloseTo(one.focal?.means[index]?.elsewhere ?? NaN, 3);
        });
      }),
      { numRuns: 60, seed: 43 },
    );
  });
});

function rounded({
  at,
  strength,
}: {
  readonly at: { readonly x: number; readonly y: number };
  readonly strength: number;
}) {
  return `${at.x.toFixed(4)} ${at.y.toFixed(4)} ${strength.toFixed(9)}`;
}

describe('from one version to the next', () => {
  const crowd = (x: number, value = 2): string =>
    [
      CANVAS,
      'object  sky\n  shape   rectangle upper left corner to lower right corner\n  value   4',
      ...Array.from({ length: 100 }, (_, index) => {
        const at = index === 55 ? x : 4 + (index % 10) * 8;
        return `object  ball${index}\n  shape   circle 5 at (${at}, ${4 + Math.floor(index / 10) * 5.6})\n  value   ${index === 7 ? value : 2}`;
      }),
    ].join('\n');

  it('only what an edit touches is gathered anew', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const version = (text: string) => measure(planOf(text, { outlines }), memory).emphasis;
    version(crowd(44));
    const gathered = memory.worked('field of pull');
    const moved = version(crowd(44.5));
    expect(memory.worked('field of pull') - gathered).toBeLessThanOrEqual(3);
    expect(moved).toEqual(measure(planOf(crowd(44.5))).emphasis);
    version(crowd(44.5, 3));
    expect(memory.worked('field of pull') - gathered).toBeLessThanOrEqual(6);
  });

  it('another colour leaves what is gathered by value as it was', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const coloured = (colour: string) => crowd(44).replace('ball3\n', `ball3\n  colour  ${colour}\n`);
    measure(planOf(coloured('#884433'), { outlines }), memory);
    const worked = () => [memory.worked('means value'), memory.worked('means colour')];
    const [value = 0, colour = 0] = worked();
    const after = measure(planOf(coloured('#448833'), { outlines }), memory).emphasis;
    expect(worked()).toEqual([value, colour + 1]);
    expect(after).toEqual(measure(planOf(coloured('#448833'))).emphasis);
  });

  it('nothing is gathered where only words change', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const before = measure(planOf(crowd(44), { outlines }), memory).emphasis;
    const worked = memory.worked('emphasis by pull');
    const after = measure(planOf(`${crowd(44)}\nnote    "at noon"`, { outlines }), memory).emphasis;
    expect(memory.worked('emphasis by pull')).toBe(worked);
    expect(after.field.strengths).toBe(before.field.strengths);
  });
});
