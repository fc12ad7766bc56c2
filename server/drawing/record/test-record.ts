import { encode } from 'jpeg-js';
import { parse } from '../../../grammar/index.js';
import { check } from '../../findings/check.js';
import { measure } from '../../measure/measure.js';
import { Memory } from '../../measure/memory.js';
import { Mixer } from '../../measure/mixing/mixer.js';
import type { Photographs, SquaredPicture } from '../../measure/photograph/photographs.js';
import { photographsAsTold } from '../../measure/photograph/test-support.js';
import { labToRgb } from '../../plan/colour/srgb.js';
import type { ReadFile } from '../../plan/plan.js';
import { resolvePlan } from '../../plan/resolve.js';
import { type ComposeOptions, compose } from '../compose.js';
import type { Scene, View } from '../scene.js';
import type { Worked } from '../test-plans.js';
import { blueJug } from '../test-studio.js';

/** A small plan with three sittings, whose photographs are what their names say (`photographsAsTold`). */
export const photographedPlan = `plan "Blue jug"
canvas 40 x 30 cm
  ground #b79a63
focus (16, 17)
scale 5
  group dark 1-2, middle 3, light 4-5
budget value dark 30%, middle 20%, light 50% within 5%
${blueJug}
sitting "Lay in" on 2027-01-11
  works wall, jug
  layer body colour
  photo "jug 1.5 steps lighter.jpg"
sitting "Colour" on 2027-01-13
  works jug, fruit
  layer body colour
  photo "jug 0.4 steps lighter, fruit #a05030.jpg"
sitting "Look again" on 2027-02-08
  works fruit
  layer body colour
`;

/** A plan's text with the photographs that it names, measured. */
export function photographed(
  text: string,
  photographs: (plan: Worked['plan']) => Photographs = photographsAsTold,
  readFile?: ReadFile,
): Worked {
  const plan = resolvePlan(parse(text), readFile === undefined ? {} : { readFile });
  const measures = measure(plan, new Memory(), Mixer.eager(), shown(photographs(plan)));
  return { plan, measures, findings: check(plan, measures) };
}

export function photographedScene(
  text: string,
  options: ComposeOptions = {},
  view: View = 'record',
  photographs: (plan: Worked['plan']) => Photographs = photographsAsTold,
): Scene {
  const { plan, measures, findings } = photographed(text, photographs);
  return compose(plan, measures, findings, view, options);
}

/** With what is seen of them as a JPEG, which made-up ones lack. */
function shown({ squared, sizeOf }: Photographs): Photographs {
  const known = new Map<SquaredPicture, SquaredPicture>();
  const jpeg = (picture: SquaredPicture): SquaredPicture => {
    const made = known.get(picture) ?? {
      ...picture,
      shown: { width: picture.width, height: picture.height, jpeg: jpegOf(picture) },
    };
    known.set(picture, made);
    return made;
  };
  return {
    squared: (squaring) => {
      const answer = squared(squaring);
      return answer?.ok === true ? { ok: true, picture: jpeg(answer.picture) } : answer;
    },
    sizeOf,
  };
}

function jpegOf({ width, height, lab }: SquaredPicture): Uint8Array {
  const data = Buffer.alloc(4 * width * height, 255);
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const [l = 0, a = 0, b = 0] = lab.subarray(3 * pixel, 3 * pixel + 3);
    labToRgb([l, a, b]).forEach((channel, index) => {
      data[4 * pixel + index] = Math.round(255 * Math.min(1, Math.max(0, channel)));
    });
  }
  return Uint8Array.from(encode({ width, height, data }, 85).data);
}
