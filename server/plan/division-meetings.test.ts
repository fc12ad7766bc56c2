import { describe, expect, it } from 'vitest';
import type { DivisionSystem } from '../../grammar/index.js';
import { divide } from './division.js';
import { meetingsOf } from './division-meetings.js';
import { distance, type Point } from './geometry/point.js';

const sides = { width: 60, height: 40 };

function meetings(system: DivisionSystem, canvas = sides): readonly Point[] {
  return meetingsOf(divide(canvas, system), canvas);
}

/** In parts of the sides. */
function meetAt(system: DivisionSystem, x: number, y: number): boolean {
  const place = { x: x * sides.width, y: y * sides.height };
  return meetings(system).some((at) => distance(at, place) < 1e-9);
}

describe('the places where lines of a division meet', () => {
  it.each(['golden', 'thirds', 'two to three', 'quarters', 'rabatment'] as const)(
    'are the named crossings alone: %s',
    (system) => {
      expect(meetings(system)).toEqual(divide(sides, system).crossings.map(({ at }) => at));
    },
  );

  it('are more in the armature: by its lines y = x / 2, y = 1 - 2 x, x + y = 1 / 2 and their like', () => {
    expect(meetAt('armature', 1 / 3, 1 / 6)).toBe(true);
    expect(meetAt('armature', 2 / 5, 1 / 5)).toBe(true);
    expect(meetAt('armature', 4 / 5, 2 / 5)).toBe(true);
    expect(meetAt('armature', 1 / 3, 1 / 3)).toBe(true);
    expect(meetAt('armature', 1 / 2, 1 / 3)).toBe(false);
  });

  it('are as many in the armature as its fourteen lines make in whole numbers', () => {
    // On a canvas of 2 x 2 the lines have whole coefficients, so that crossings can be told apart as fractions.
    const lines = divide({ width: 2, height: 2 }, 'armature').lines.map(({ from, to }) => {
      const [a, b] = [to.y - from.y, from.x - to.x];
      return [a, b, a * from.x + b * from.y] as const;
    });
    const fractions = new Set<string>();
    lines.forEach(([a, b, c], index) =>
      lines.slice(index + 1).forEach(([d, e, f]) => {
        const over = a * e - b * d;
        const [x, y] = [(c * e - b * f) / over, (a * f - c * d) / over];
        if (over !== 0 && [x, y].every((part) => part > 0 && part < 2))
          fractions.add(`${Math.round(x * 60)} ${Math.round(y * 60)}`);
      }),
    );
    expect(meetings('armature')).toHaveLength(fractions.size);
  });

  it.each(['diagonals', 'armature', 'root 2', 'root 3', 'root 4', 'root 5'] as const)(
    'hold the named crossings, none twice, all inside the canvas and each on two lines: %s',
    (system) => {
      const { lines, crossings } = divide(sides, system);
      const all = meetings(system);
      for (const { at } of crossings) expect(all).toContainEqual(at);
      all.forEach((place, index) => {
        for (const other of all.slice(index + 1)) expect(distance(place, other)).toBeGreaterThan(1e-6);
        expect(place.x > 0 && place.x < sides.width && place.y > 0 && place.y < sides.height).toBe(true);
        const through = lines.filter(
          ({ from, to }) => Math.abs(distance(from, place) + distance(place, to) - distance(from, to)) < 1e-9,
        );
        expect(through.length).toBeGreaterThanOrEqual(2);
      });
    },
  );

  it('are where two reciprocals meet in the middle of the width', () => {
    // From the upper corners of 60 x 40, at right angles to the diagonals: y = 3/2 x and its mirror image meet at x =
    // 30 below the canvas; those from the upper left and the lower left corner meet at y = 20, x = 40/3.
    expect(meetAt('diagonals', 40 / 3 / 60, 1 / 2)).toBe(true);
  });

  it('do not hang on the unit of the canvas', () => {
    const small = { width: 0.6, height: 0.4 };
    expect(meetings('root 3', small)).toHaveLength(meetings('root 3').length);
  });
});
