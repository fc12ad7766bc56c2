import { describe, expect, it } from 'vitest';
import { checked, mended, objectNamed } from '../../../tests/support/plan.js';
import { boxHeight, boxWidth } from '../../plan/geometry/point.js';
import { resized, resizingFix } from './resize.js';

const scene = (lines: string): string =>
  `canvas  80 x 60 cm\nobject  jug\n  shape   ellipse 10 x 16 at (30, 30)${lines}`;

const JUG = 0;
const resizing = { object: JUG, factor: 0.8 };

describe('another size of an object', () => {
  it.each(['', '\n  turn    30', '\n  size    12 x 9', '\n  resize  80% x 120%'])(
    'is tried as the edits then make it, with %j',
    (lines) => {
      const text = scene(lines);
      const { plan, measures } = checked(text);
      const fix = resizingFix(plan, measures.parts, resizing);
      expect(fix?.title).toBe('Make `jug` 80 % as wide and as high');
      const made = objectNamed(checked(mended(text, fix ?? { edits: [] })).plan, 'jug').outline.box;
      const tried = resized(plan, measures, resizing).plan.objects[JUG]?.outline.box;
      expect(tried && boxWidth(tried)).toBeCloseTo(boxWidth(made), 2);
      expect(tried && boxHeight(tried)).toBeCloseTo(boxHeight(made), 2);
    },
  );

  it.each([
    ['copies would stand as far apart as before', '\n  repeat  2 every (14, 0)'],
    ['it would grow from the place it is set down by', '\n  at      (30, 40) by bottom'],
    ['what lies on it would stay as it is', '\nobject  label\n  shape   rectangle 4 x 4 at (30, 31)'],
    [
      'what is placed by it would move',
      '\nobject  lid\n  shape   circle 3\n  at      top edge of jug by bottom',
    ],
  ])('has no edits where %s', (_, lines) => {
    const { plan, measures } = checked(scene(lines));
    expect(resizingFix(plan, measures.parts, resizing)).toBeUndefined();
  });
});
