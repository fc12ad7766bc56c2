import type { PlanObject } from '../../plan/plan.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Mark } from '../scene.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { shapeMarks } from '../picture/shapes.js';
import { type Reading, isUnplanned, paintOf } from './reading.js';

/** What is seen at an object once it is painted, or of the bare ground. */
export function flatTone({ plan }: Reading): (object: PlanObject | undefined) => Colour {
  return (object) =>
    object === undefined || isUnplanned(object) ? plan.canvas.ground.colour : paintOf(object, plan);
}

/** The colours laid in flat as they will be painted, nothing drawn round them. */
export function flatShapes(reading: Reading): readonly Mark[] {
  const toneOf = flatTone(reading);
  return shapeMarks(reading, hexOf(reading.plan.canvas.ground.colour), (object) => {
    const tone = toneOf(object);
    // The line closes the hair of light that viewers leave between two shapes that meet.
    return {
      fill: hexOf(tone),
      stroke: { ink: hexOf(tone), weight: 'hair' },
      hatch: hexOf(mix(tone, lineOn(tone), 0.6)),
    };
  });
}
