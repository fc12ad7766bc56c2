import { stepValue } from '../plan/colour/value.js';
import { constructionBoxes, focusMarks } from './construction.js';
import { greyOf, hexOf, lineOn, mix } from './ink.js';
import { nameMarks } from './names.js';
import { type PictureMarks, type Reading, seenObjects, stepOf } from './reading.js';
import { shapeMarks } from './shapes.js';

/** Every object in the grey of its step, with the step's number on it. */
export function drawValues(reading: Reading): PictureMarks {
  const { plan } = reading;
  const { steps } = plan.scale;
  const ground = greyOf(stepValue(plan.canvas.ground.step, steps));
  const greyAt = (step: number | undefined) => (step === undefined ? ground : greyOf(stepValue(step, steps)));
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const grey = greyAt(stepOf(object, plan));
    // Just enough to tell neighbours on one step apart without breaking the mass that they form.
    const edge = hexOf(mix(grey, lineOn(grey), 0.28));
    return {
      fill: hexOf(grey),
      stroke: { ink: edge, weight: 'hair' },
      hatch: hexOf(mix(grey, lineOn(grey), 0.6)),
    };
  });
  const { kept } = constructionBoxes(reading);
  const planned = seenObjects(reading).filter(({ object }) => object.step !== undefined);
  const names = nameMarks(
    reading,
    planned,
    ({ object }) => {
      const grey = greyAt(stepOf(object, plan));
      return {
        text: String(Number((object.step ?? 0).toFixed(1))),
        ink: hexOf(lineOn(grey)),
        halo: hexOf(grey),
      };
    },
    { kept, spared: [] },
  );
  const atFocus = greyAt(plan.canvas.ground.step);
  return {
    shapes,
    construction: focusMarks(reading, atFocus),
    names: names.marks,
    taken: names.taken,
    leftOut: names.leftOut,
  };
}
