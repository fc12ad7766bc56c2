import { stepValue } from '../../plan/colour/value.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { greyOf, hexOf } from '../picture/ink.js';
import type { Handling, Painted, Photograph, Sketch } from './handles.js';
import type { Reading } from '../views/reading.js';
import { holdsOf } from './grips.js';
import { guidesOf } from './guides.js';

/** How strongly a sketch shows unless the plan says: it and the shapes over it alike. */
const USUAL_OPACITY = 0.5;

/** What a hand can do in the drawing of a plan. */
export function handlingOf({ plan, subjects }: Reading): Handling {
  const { steps } = plan.scale;
  return {
    grips: holdsOf(plan, subjects).map(({ grip }) => grip),
    guides: guidesOf(plan),
    tones: Array.from({ length: steps }, (_, index) => hexOf(greyOf(stepValue(index + 1, steps)))),
    colours: plan.colours.map(({ name, colour }) => ({ name, hex: hexOf(colour) })),
    painted: Object.fromEntries(
      plan.objects.flatMap((object) => {
        const subject = subjects.objects[object.index];
        return subject === undefined ? [] : [[subject, paintedAs(object, plan)] as const];
      }),
    ),
    unit: plan.canvas.unit,
    ...sketchOf(plan),
  };
}

function paintedAs({ step, colour }: PlanObject, { colours }: Plan): Painted {
  const named = colour?.named === undefined ? undefined : colours[colour.named];
  return {
    ...(step === undefined ? {} : { step }),
    ...(colour ? { colour: named ? { name: named.name } : { hex: hexOf(colour.colour) } } : {}),
  };
}

/** The photographs of the sittings, in the order of the text. */
export function photographsOf({ sittings }: Plan): readonly Photograph[] {
  return sittings.flatMap(({ title, photo }, sitting) => {
    if (photo === undefined) return [];
    const { file, corners, grey } = photo;
    return [{ sitting, name: title, file, corners, ...(grey === undefined ? {} : { grey }) }];
  });
}

function sketchOf({ sketch }: Plan): { readonly sketch?: Sketch } {
  if (!sketch) return {};
  const { file, corners, opacity = USUAL_OPACITY } = sketch;
  return { sketch: { file, corners, opacity } };
}
