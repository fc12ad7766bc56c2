import type { Colour } from '../../plan/colour/colour.js';
import type { PlanObject } from '../../plan/plan.js';
import { type Reading, isUnplanned } from '../views/reading.js';
import type { Mark } from '../scene.js';
import { greyOf, hexOf, lineOn, mix } from './ink.js';
import { shapeMarks } from './shapes.js';

/** The Munsell values between which a picture is drawn so quietly that what is shown on it speaks. */
export interface QuietRange {
  readonly darkest: number;
  readonly lightest: number;
}

/** What is seen at an object, or of the bare ground, in greys drawn together into a light range. */
export function quietTone(
  { plan }: Reading,
  { darkest, lightest }: QuietRange,
): (object: PlanObject | undefined) => Colour {
  const { ground } = plan.canvas;
  return (object) => {
    const own = object === undefined || isUnplanned(object) ? ground.value : (object.value ?? ground.value);
    return greyOf(darkest + ((lightest - darkest) * own) / 10);
  };
}

/** The picture in quiet greys, with just enough of an edge to know the shapes by. */
export function quietShapes(reading: Reading, range: QuietRange): readonly Mark[] {
  const toneOf = quietTone(reading, range);
  return shapeMarks(reading, hexOf(toneOf(undefined)), (object) => {
    const tone = toneOf(object);
    return {
      fill: hexOf(tone),
      stroke: { ink: hexOf(mix(tone, lineOn(tone), 0.35)), weight: 'hair' },
      hatch: hexOf(mix(tone, lineOn(tone), 0.3)),
    };
  });
}
