import { transform } from '../../plan/geometry/outline.js';
import type { Matrix } from '../../plan/geometry/matrix.js';
import { flatShapes } from './flat.js';
import type { PictureMarks, Reading } from './reading.js';

/**
 * The colours laid in flat as a mirror shows them. The shapes themselves are turned round, not the drawing, so that
 * what is clicked or marked lies where it is seen; nothing is written on them.
 */
export function drawMirror(reading: Reading): PictureMarks {
  const { plan } = reading;
  const matrix: Matrix = { a: -1, b: 0, c: 0, d: 1, e: plan.canvas.width, f: 0 };
  const objects = plan.objects.map((object) => ({ ...object, outline: transform(object.outline, matrix) }));
  return {
    shapes: flatShapes({ ...reading, plan: { ...plan, objects } }),
    construction: [],
    names: [],
    taken: [],
    leftOut: 0,
  };
}
