import { describe, expect, it } from 'vitest';
import { boxOf, files, messages, objectNamed, planOf } from '../../tests/support/plan.js';

const CANVAS = 'canvas  80 x 50 cm';

describe('shapes', () => {
  const object = (...lines: readonly string[]): string =>
    [CANVAS, 'object  thing', ...lines.map((line) => `  ${line}`)].join('\n');

  it.each([
    ['rectangle corners', ['shape   rectangle (10, 20) to (4, 6)'], [4, 6, 10, 20]],
    ['an ellipse', ['shape   ellipse 8 x 4 at (10, 10)'], [6, 8, 14, 12]],
    [
      'an outline over several lines',
      ['shape   outline (1, 1)', '  (5, 1)', '  (5, 9) (1, 9)'],
      [1, 1, 5, 9],
    ],
    [
      'an outline with all its points below',
      ['shape   outline', '  (1, 1) (5, 1)', '  (5, 9) (1, 9)'],
      [1, 1, 5, 9],
    ],
    ['path data', ['shape   path "M 2 3 h 4 v 5 z"'], [2, 3, 6, 8]],
    ['several shapes', ['shape   circle 2 at (5, 5)', 'shape   circle 2 at (9, 5)'], [4, 4, 10, 6]],
    ['turned', ['shape   rectangle 8 x 2 at (10, 10)', 'turn    90'], [9, 6, 11, 14]],
    ['sized', ['shape   rectangle 8 x 2 at (10, 10)', 'size    4 x 4'], [8, 8, 12, 12]],
    ['sized along one side', ['shape   rectangle 8 x 2 at (10, 10)', 'size    4 cm high'], [2, 8, 18, 12]],
    ['resized', ['shape   rectangle 8 x 2 at (10, 10)', 'resize  50% x 200%'], [8, 8, 12, 12]],
    ['mirrored', ['shape   outline (0, 0) (4, 0) (0, 4)', 'mirror  left to right'], [0, 0, 4, 4]],
    ['repeated', ['shape   rectangle (0, 0) to (2, 2)', 'repeat  3 every (4, 1)'], [0, 0, 10, 4]],
  ])('draws %s', (_, lines, box) => {
    const plan = planOf(object(...lines));
    expect(messages(plan)).toEqual([]);
    expect(boxOf(plan, 'thing')).toEqual(box);
  });

  it('mirrors about the middle of the shape', () => {
    const plan = planOf(object('shape   outline (0, 0) (4, 0) (0, 4)', 'mirror  left to right'));
    expect([...(objectNamed(plan, 'thing').outline.rings[0] ?? [])].map(Math.round)).toEqual([
      4, 0, 0, 0, 4, 4,
    ]);
  });

  it('takes a part of an SVG file by its id', () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg"><rect id="door" x="1" y="2" width="3" height="6"/></svg>';
    const text = object('shape   from "parts.svg" part "door"', 'size    12 cm high', 'at      (20, 20)');
    expect(boxOf(planOf(text, files({ 'parts.svg': svg })), 'thing')).toEqual([17, 14, 23, 26]);
  });

  it('names the nearest part when the file has none of that id, and says when there is no file', () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect id="door" width="3" height="6"/></svg>';
    const plan = planOf(object('shape   from "parts.svg" part "dor"'), files({ 'parts.svg': svg }));
    expect(plan.problems[0]).toMatchObject({ code: 'unreadable shape', fix: { replacement: '"door"' } });
    const missing = planOf(object('shape   from "gone.svg" part "door"'), files({}));
    expect(missing.problems[0]).toMatchObject({
      code: 'unreadable file',
      message: '`gone.svg` cannot be read. there is no gone.svg',
    });
  });

  it('waits for a file that is still being read', () => {
    const plan = planOf(object('shape   from "parts.svg" part "door"'));
    expect(objectNamed(plan, 'thing').waiting).toBe(true);
    expect(plan.problems).toEqual([]);
  });
});
