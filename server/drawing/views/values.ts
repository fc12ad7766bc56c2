import { stepValue } from '../../plan/colour/value.js';
import type { PlanObject } from '../../plan/plan.js';
import { constructionBoxes, focusMarks } from '../picture/construction.js';
import { greyOf, hexOf, lineOn, mix } from '../picture/ink.js';
import { nameMarks } from '../picture/names.js';
import { type PictureMarks, type Reading, seenObjects, stepOf } from './reading.js';
import { shapeMarks } from '../picture/shapes.js';

/** Every object in the grey of its step, with the step's number on it. */
export function drawValues(reading: Reading): PictureMarks {
  const { plan } = reading;
  const { steps } = plan.scale;
  const ground = greyOf(stepValue(plan.canvas.ground.step, steps));
  const greyAt = (object: PlanObject | undefined) => {
    const step = object && stepOf(object, plan);
    return step === undefined ? ground : greyOf(stepValue(step, steps));
  };
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const grey = greyAt(object);
    // Just enough to tell neighbours on one step apart without breaking the mass that they form.
    const edge = hexOf(mix(grey, lineOn(grey), 0.28));
    return {
      fill: hexOf(grey),
      stroke: { ink: edge, weight: 'hair' },
      hatch: hexOf(mix(grey, lineOn(grey), 0.6)),
    };
  });
  const { kept } = constructionBoxes(reading);
  const names = nameMarks(
    reading,
    seenObjects(reading).filter(({ object }) => object.step !== undefined),
    {
      view: 'values',
      text: ({ step }) => String(Number((step ?? 0).toFixed(1))),
      tone: greyAt,
    },
    { kept, spared: [] },
  );
  return {
    shapes,
    construction: focusMarks(reading, greyAt),
    ...names,
    taken: [...names.taken, ...kept],
  };
}
