import { blurAt } from '../viewing.js';
import { flatShapes } from './flat.js';
import type { PictureMarks, Reading } from './reading.js';

/** The colours laid in flat as they are seen with half-shut eyes from a distance: what is left are the masses. */
export function drawSquint(reading: Reading): PictureMarks {
  const { plan, viewing } = reading;
  return {
    shapes: flatShapes(reading),
    blur: blurAt(viewing, plan.canvas),
    construction: [],
    names: [],
    taken: [],
    leftOut: 0,
  };
}
