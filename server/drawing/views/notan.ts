import type { Colour } from '../../plan/colour/colour.js';
import { stepValue } from '../../plan/colour/value.js';
import { computedColour } from '../../plan/colour/model.js';
import type { Plan } from '../../plan/plan.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { type PictureMarks, type Reading, stepOf } from './reading.js';
import { shapeMarks } from '../picture/shapes.js';

/** Ink, and paper left bare; what lies between is mixed from the two. */
const INK = computedColour([12, 0, 1]);
const PAPER = computedColour([95.5, 0, 3]);

/** The plan as flat tones, one to each group of steps, and nothing else. */
export function drawNotan(reading: Reading): PictureMarks {
  const { plan } = reading;
  const ground = toneOf(plan.canvas.ground.step, plan);
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const step = stepOf(object, plan);
    const tone = step === undefined ? ground : toneOf(step, plan);
    // The line closes the hair of light that viewers leave between two shapes that meet.
    return {
      fill: hexOf(tone),
      stroke: { ink: hexOf(tone), weight: 'hair' },
      hatch: hexOf(mix(tone, lineOn(tone), 0.6)),
    };
  });
  return { shapes, construction: [], names: [], taken: [], leftOut: 0 };
}

/** The tone of the group that holds a step, or of the nearest group for a step that none holds. */
export function toneOf(step: number, plan: Plan): Colour {
  const groups = [...plan.scale.groups].sort((a, b) => a.from + a.to - b.from - b.to);
  if (groups.length < 2) return mix(INK, PAPER, stepValue(step, plan.scale.steps) / 10);
  const away = ({ from, to }: { readonly from: number; readonly to: number }) =>
    Math.max(0, from - step, step - to);
  const nearest = groups.reduce(
    (best, group, index) => (away(group) < away(groups[best] ?? group) ? index : best),
    0,
  );
  return mix(INK, PAPER, nearest / (groups.length - 1));
}
