import { blurAt } from '../viewing.js';
import { faintFocusMarks } from '../picture/construction.js';
import { flatShapes } from './flat.js';
import type { PictureMarks, Reading } from './reading.js';

/**
 * The colours laid in flat as they are seen with half-shut eyes from a distance: what is left are the masses, and
 * a thin ring tells whether one of them holds the focal point.
 */
export function drawSquint(reading: Reading): PictureMarks {
  const { plan, viewing } = reading;
  return {
    shapes: flatShapes(reading),
    blur: blurAt(viewing, plan.canvas),
    construction: faintFocusMarks(reading),
    names: [],
    taken: [],
    leftOut: 0,
  };
}
