import { transform } from '../../plan/geometry/outline.js';
import { mirrorOf } from '../transfer/line-drawing.js';
import { flatShapes } from './flat.js';
import type { PictureMarks, Reading } from './reading.js';

/**
 * The colours laid in flat as a mirror shows them. The shapes themselves are turned round, not the drawing, so that
 * what is clicked or marked lies where it is seen; nothing is written on them.
 */
export function drawMirror(reading: Reading): PictureMarks {
  const { plan } = reading;
  const matrix = mirrorOf(plan.canvas);
  const objects = plan.objects.map((object) => ({ ...object, outline: transform(object.outline, matrix) }));
  return {
    shapes: flatShapes({ ...reading, plan: { ...plan, objects } }),
    construction: [],
    names: [],
    taken: [],
    leftOut: 0,
  };
}
