import { describe, expect, it } from 'vitest';
import type { SketchPlace } from '../../../server/drawing/scene.js';
import { cornerInWords, cornerPlaces, seenBox, stepIn, withinReach } from './corner-places.js';

const size = { width: 800, height: 600 };
const at = (part: number, pixels: number): SketchPlace => ({
  across: { value: part, in: 'parts' },
  down: { value: pixels, in: 'pixels' },
});

describe('where corners lie in a sketch', () => {
  it('is as the plan says, or at its own corners', () => {
    const places = cornerPlaces(size, [at(0.25, 60), at(0.8, 100), at(0.9, 560), at(0.05, 540)]);
    expect([...places]).toEqual([
      ['upper left', { x: 200, y: 60 }],
      ['upper right', { x: 640, y: 100 }],
      ['lower right', { x: 720, y: 560 }],
      ['lower left', { x: 40, y: 540 }],
    ]);
    const own = [
      { x: 0, y: 0 },
      { x: 800, y: 0 },
      { x: 800, y: 600 },
      { x: 0, y: 600 },
    ];
    expect([...cornerPlaces(size, []).values()]).toEqual(own);
    expect([...cornerPlaces(size, [at(0.5, 1), at(1, 1)]).values()]).toEqual(own);
  });

  it('has the grey patch of a photograph beside them', () => {
    const places = cornerPlaces(size, [], at(0.75, 300));
    expect(places.get('grey')).toEqual({ x: 600, y: 300 });
    expect([...cornerPlaces(size, []).keys()]).not.toContain('grey');
    expect(cornerInWords('grey', { x: 600, y: 300 })).toBe(
      'grey patch, 600 pixels from the left, 300 from the top',
    );
  });

  it('is seen with a margin, beside the sketch too', () => {
    expect(seenBox(size, cornerPlaces(size, []))).toEqual({ x: -40, y: -40, width: 880, height: 680 });
    const beside = cornerPlaces(size, [at(-0.25, 60), at(1, 0), at(1, 700), at(0, 600)]);
    expect(seenBox(size, beside)).toEqual({ x: -240, y: -40, width: 1_080, height: 780 });
  });

  it('is in whole pixels, not far beside the sketch', () => {
    expect(withinReach({ x: 12.6, y: -4.2 }, size)).toEqual({ x: 13, y: -4 });
    expect(withinReach({ x: -4_000, y: 4_000 }, size)).toEqual({ x: -400, y: 900 });
  });

  it('is told and moved in steps that can be seen', () => {
    expect(stepIn(size, false)).toBe(1);
    expect(stepIn({ width: 3_000, height: 4_000 }, true)).toBe(40);
    expect(cornerInWords('lower left', { x: 39.6, y: 540 })).toBe(
      'lower left corner of the canvas, 40 pixels from the left, 540 from the top',
    );
  });
});
