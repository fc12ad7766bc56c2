import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import type { Plan } from '../../plan/plan.js';
import { containsPoint, visibleAreas } from '../areas/areas.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';
import type { Tone } from './notan.js';

const CANVAS = 'canvas  100 x 50 cm\n  ground  N 9/';

function box(name: string, [left, top, right, bottom]: readonly number[], value: number): string {
  return `object  ${name}\n  shape   rectangle (${left}, ${top}) to (${right}, ${bottom})\n  value   ${value}`;
}

function tones(text: string): readonly Tone[] {
  return checked(text).measures.notan.tones;
}

/** Shares of the pieces of one tone in tenths of a percent. */
function pieces(text: string, key: string): readonly number[] {
  const tone = tones(text).find((candidate) => candidate.key === key);
  return (tone?.pieces ?? []).map(({ share }) => Math.round(share * 1000));
}

describe('the tones of a picture', () => {
  it('are one to each group, with the shares of the groups, ground included', () => {
    const text = [CANVAS, box('wall', [0, 0, 60, 50], 3), box('coat', [10, 10, 30, 50], 1)].join('\n');
    expect(tones(text).map(({ name, share }) => [name, Math.round(share * 100)])).toEqual([
      ['dark', 16],
      ['middle', 44],
      ['light', 40],
    ]);
  });

  it('are three with grey midway, as in Dow’s notan of three values (Composition, 9th ed. 1914)', () => {
    const grey = checked(`${CANVAS}\nscale   3\n${box('wall', [0, 0, 50, 50], 2)}`).measures.values;
    expect(grey.steps[1]?.value).toBe(5);
    expect(tones(`${CANVAS}\nscale   3`).map(({ key }) => key)).toEqual(['dark', 'middle', 'light']);
  });

  it('may be two, and tell two thirds light from one third dark', () => {
    // Speed, The Practice and Science of Drawing (1913), gives the proportion as an old rule and holds no rule binding.
    const text = `${CANVAS}\nscale   2\n${box('barge', [0, 0, 100, 16.6667], 1)}`;
    const [dark, light] = tones(text);
    expect([dark?.share, light?.share]).toEqual([expect.closeTo(1 / 3, 5), expect.closeTo(2 / 3, 5)]);
  });

  it('know nothing of what has no value', () => {
    const text = `${CANVAS}\nobject  door\n  shape   rectangle (0, 0) to (100, 50)`;
    expect(tones(text)).toEqual(
      ['dark', 'middle', 'light'].map((key) => ({ key, name: key, share: 0, pieces: [], largestOfTone: 0 })),
    );
  });
});

describe('the pieces of a tone', () => {
  it('join areas of one tone that lie beside each other, whatever their objects', () => {
    const text = [CANVAS, box('roof', [10, 10, 40, 20], 1), box('wall', [10, 20, 30, 40], 2)].join('\n');
    const [dark] = tones(text);
    expect(dark?.pieces).toEqual([{ share: expect.closeTo(0.14, 9), areas: [1, 0], at: expect.anything() }]);
    expect(dark?.largestOfTone).toBe(1);
  });

  it('join an object with bare ground of its tone', () => {
    const text = [CANVAS, box('sea', [0, 0, 50, 50], 1), box('sail', [60, 0, 70, 50], 5)].join('\n');
    expect(tones(text)[2]?.pieces[0]?.areas).toEqual([-1, 1]);
  });

  it('are apart where only corners meet', () => {
    const text = [CANVAS, box('one', [10, 10, 20, 20], 1), box('other', [20, 20, 40, 30], 1)].join('\n');
    expect(pieces(text, 'dark')).toEqual([40, 20]);
  });

  it('are apart where only a hair joins them', () => {
    const hair = (thick: number): string =>
      [
        CANVAS,
        box('one', [10, 10, 20, 20], 1),
        box('other', [30, 10, 50, 20], 1),
        box('wire', [20, 15, 30, 15 + thick], 1),
      ].join('\n');
    expect(pieces(hair(0.12), 'dark').length).toBe(3);
    expect(pieces(hair(1), 'dark').length).toBe(1);
  });

  it('count a line thinner than a cell as the one thing that it is', () => {
    const line = 'object  mast\n  shape   outline (10, 2) (10.03, 2) (35.03, 48) (35, 48)\n  value   1';
    expect(tones(`${CANVAS}\n${line}`)[0]?.pieces.length).toBe(1);
  });

  it('do not lose a speck', () => {
    const text = [
      CANVAS,
      box('pool', [10, 10, 40, 40], 5),
      box('fly', [20.001, 20.001, 20.004, 20.004], 1),
    ].join('\n');
    const [dark, , light] = tones(text);
    expect(dark?.pieces).toEqual([
      {
        share: expect.closeTo(0.003 ** 2 / 5000, 12),
        areas: [1],
        at: { x: expect.closeTo(20.0025, 6), y: expect.closeTo(20.0025, 6) },
      },
    ]);
    expect(light?.pieces.length).toBe(1);
  });

  it('have a place inside, well away from their border', () => {
    const ring = [CANVAS, box('frame', [10, 5, 90, 45], 1), box('view', [12, 7, 70, 43], 5)].join('\n');
    const [dark, , light] = tones(ring);
    const at = dark?.pieces[0]?.at ?? { x: 0, y: 0 };
    expect(at.x).toBeCloseTo(80, 0);
    expect(light?.pieces.map(({ share }) => Math.round(share * 1000))).toEqual([418, 360]);
  });

  it('are counted in each of two groups that share a step', () => {
    const text = `${CANVAS}\nscale   3\n  group   dusk 1-2, glow 2-3\n${box('wall', [0, 0, 50, 50], 2)}`;
    expect(tones(text).map(({ pieces: all }) => all.map(({ areas }) => areas))).toEqual([[[0]], [[-1, 0]]]);
    expect(tones(text)[1]?.pieces[0]?.at.x).toBeCloseTo(50, 0);
  });
});

describe('tones against a count of places', () => {
  const COLUMNS = 40;
  const ROWS = 40;
  const whole = fc.integer({ min: 0, max: 20 });
  const shape = fc.record({
    from: fc.tuple(whole, whole),
    size: fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 })),
    value: fc.integer({ min: 1, max: 5 }),
  });

  it('agree piece by piece for upright rectangles on a grid', () => {
    fc.assert(
      fc.property(fc.array(shape, { maxLength: 12 }), (shapes) => {
        const text = shapes.map(({ from: [x, y], size: [w, h], value }, index) =>
          box(`o${index}`, [5 * x, 2.5 * y, 5 * (x + w), 2.5 * (y + h)], value),
        );
        const { plan, measures } = checked([CANVAS, ...text].join('\n'));
        const brute = counted(plan, COLUMNS, ROWS);
        measures.notan.tones.forEach((tone, index) => {
          const cells = tone.pieces.map(({ share }) => Math.round(share * COLUMNS * ROWS));
          expect(cells).toEqual(brute[index]);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('are two where only a corner joins them, of the ground too', () => {
    const { measures } = checked(
      [CANVAS, box('post', [5, 0, 10, 5], 1), box('step', [0, 5, 5, 7.5], 1)].join('\n'),
    );
    const pieces = measures.notan.tones.map(({ pieces: all }) => all.length);
    expect(pieces.toSorted()).toEqual([0, 2, 2]);
  });

  it('have each piece’s place in one of its areas', () => {
    fc.assert(
      fc.property(fc.array(shape, { maxLength: 12 }), (shapes) => {
        const text = shapes.map(({ from: [x, y], size: [w, h], value }, index) =>
          box(`o${index}`, [5 * x, 2.5 * y, 5 * (x + w), 2.5 * (y + h)], value),
        );
        const { plan, measures } = checked([CANVAS, ...text].join('\n'));
        const seen = visibleAreas(plan.canvas, plan.objects);
        for (const { at, areas } of measures.notan.tones.flatMap(({ pieces: all }) => all)) {
          const holds = areas.some((area) =>
            containsPoint(area < 0 ? seen.bare : (seen.layers[area]?.visible ?? []), at),
          );
          expect(holds).toBe(true);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('the work', () => {
  const text = [CANVAS, box('wall', [0, 0, 60, 50], 3), box('coat', [10, 10, 30, 50], 1)].join('\n');

  it('of an edit that moves nothing is not done again, and a new value needs no new map', () => {
    const memory = new Memory();
    const first = checked(text).plan;
    const before = measure(first, memory).notan;
    expect(measure(first, memory).notan).toBe(before);
    const relit = { ...first, objects: first.objects.map((object) => ({ ...object, step: 5 })) };
    expect(measure(relit, memory).notan.tones.map(({ pieces: all }) => all.length)).toEqual([0, 0, 1]);
    expect([memory.worked('notan fields'), memory.worked('notan')]).toEqual([1, 2]);
  });
});

/** For each group the sizes of its pieces, largest first, of a picture taken apart into so many places. */
function counted(plan: Plan, columns: number, rows: number): readonly (readonly number[])[] {
  const steps = Array.from({ length: columns * rows }, (_, cell) => {
    const at = {
      x: (((cell % columns) + 0.5) / columns) * plan.canvas.width,
      y: ((Math.floor(cell / columns) + 0.5) / rows) * plan.canvas.height,
    };
    const seen = plan.objects.findLast(({ outline }) => containsPoint(outline.rings, at));
    return seen ? Math.round(seen.step ?? 0) : plan.canvas.ground.step;
  });
  return plan.scale.groups.map(({ from, to }) => {
    const left = new Set(steps.keys());
    const sizes: number[] = [];
    for (const [cell, step] of steps.entries()) {
      if (step < from || step > to || !left.delete(cell)) continue;
      const open = [cell];
      let size = 0;
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        size++;
        const column = next % columns;
        const beside = [
          next - columns,
          next + columns,
          ...(column > 0 ? [next - 1] : []),
          ...(column + 1 < columns ? [next + 1] : []),
        ];
        for (const other of beside) {
          const there = steps[other] ?? 0;
          if (there >= from && there <= to && left.delete(other)) open.push(other);
        }
      }
      sizes.push(size);
    }
    return sizes.sort((a, b) => b - a);
  });
}
