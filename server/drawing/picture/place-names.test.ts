import { describe, expect, it } from 'vitest';
import { type Outline, ellipse, polygon } from '../../plan/geometry/outline.js';
import { isWithin, overlap } from './boxes.js';
import type { Room } from './name-place.js';
import { type Placed, placeNames } from './place-names.js';
import { mapCells } from './region.js';

const picture = { x: 0, y: 0, width: 100, height: 60 };

function rectangle(left: number, top: number, right: number, bottom: number): Outline {
  return polygon([
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]);
}

/** Names the shapes, which must not overlap, in their order. */
function placed(
  shapes: readonly (readonly [string, Outline])[],
  more: Partial<Room> = {},
): readonly Placed[] {
  const rings = shapes.map(([, outline]) => outline.rings);
  const map = mapCells(picture.width, picture.height, rings);
  const wanted = shapes.map(([text], owner) => ({
    text,
    owner,
    rings: rings[owner] ?? [],
    before: 0,
    bold: false,
  }));
  return placeNames(wanted, { map, picture, size: 3, kept: [], spared: [], ...more }).placed;
}

describe('names', () => {
  it('stand in the middle of what they name', () => {
    const [hill] = placed([['hill', rectangle(20, 10, 80, 50)]]);
    expect(hill?.leader).toBeUndefined();
    expect((hill?.box.x ?? 0) + (hill?.box.width ?? 0) / 2).toBeCloseTo(50, 0);
    expect((hill?.box.y ?? 0) + (hill?.box.height ?? 0) / 2).toBeCloseTo(30, 0);
  });

  it('stand beside what is too small for them, with a leader to its middle', () => {
    const [bird] = placed([['goldfinch', ellipse({ x: 50, y: 30 }, 1.5, 1.5, 0.01)]]);
    expect(bird?.leader?.to.x).toBeCloseTo(50, 0);
    expect(bird?.leader?.to.y).toBeCloseTo(30, 0);
    expect(overlap(bird?.box ?? picture, { x: 48.5, y: 28.5, width: 3, height: 3 })).toBe(false);
  });

  it('stay in the picture and off each other', () => {
    const dots = Array.from({ length: 16 }, (_, index) => {
      const middle = { x: 3 + 30 * (index % 4), y: 3 + 17 * Math.floor(index / 4) };
      return [`dot ${index}`, ellipse(middle, 1, 1, 0.01)] as const;
    });
    const names = placed(dots);
    expect(names).toHaveLength(16);
    for (const [index, { box }] of names.entries()) {
      expect(isWithin(box, picture)).toBe(true);
      for (const other of names.slice(index + 1)) expect(overlap(box, other.box)).toBe(false);
    }
  });

  it('never cover what is to be kept clear', () => {
    const focus = { x: 45, y: 26, width: 10, height: 8 };
    const [hill] = placed([['hill', rectangle(20, 10, 80, 50)]], { kept: [focus] });
    expect(overlap(hill?.box ?? focus, focus)).toBe(false);
  });

  it('cover what is to be spared only when there is no other place', () => {
    const lead = { x: 0, y: 28, width: 100, height: 4 };
    const [free] = placed([['hill', rectangle(20, 10, 80, 50)]], { spared: [lead] });
    expect(overlap(free?.box ?? lead, lead)).toBe(false);
    const everywhere = picture;
    expect(placed([['hill', rectangle(20, 10, 80, 50)]], { spared: [everywhere] })).toHaveLength(1);
  });

  it('are left out for what is not seen and where there is no room', () => {
    expect(placed([['ghost', polygon([])]])).toEqual([]);
    expect(placed([['hill', rectangle(20, 10, 80, 50)]], { kept: [picture] })).toEqual([]);
  });

  it('are cut when they are too long for the picture', () => {
    const [name] = placed([['x'.repeat(200), rectangle(0, 0, 100, 60)]]);
    expect(name?.text).toMatch(/^x+…$/);
  });

  it('know what they stand on, so that they can stand out from it', () => {
    const [sky, bird] = placed([
      ['sky', rectangle(0, 0, 100, 20)],
      ['goldfinch', ellipse({ x: 50, y: 21.5 }, 1, 1, 0.01)],
    ]);
    expect(sky?.on).toBe(0);
    expect([0, undefined]).toContain(bird?.on);
  });
});
