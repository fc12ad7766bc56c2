import type { MixingMeasure } from '../../measure/mixing/mixing.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Layer } from '../../../grammar/index.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { greyOf, mix } from '../picture/ink.js';
import { isUnplanned, paintOf } from '../views/reading.js';

/** An imprimatura is a thin tone over the ground. */
const THIN = 0.3;
/** A scumble is dragged over, and what lies below shows through. */
const BROKEN = 0.6;

/** What an object shows after a sitting; missing while it is bare. */
export interface Painted {
  readonly colour: Colour;
  /** What is seen of it through a glaze. */
  readonly glazed?: Colour;
  /** Colour of its own, rather than a tone that prepares it. */
  readonly isBody: boolean;
}

/** What each object shows after each of the sittings in time, in the order of `plan.objects`. */
export function paintedAfter(
  plan: Plan,
  schedule: ScheduleMeasure,
  mixing: MixingMeasure | undefined,
): readonly (readonly (Painted | undefined)[])[] {
  let now: readonly (Painted | undefined)[] = plan.objects.map(() => undefined);
  return schedule.sittings.map(({ sitting, layer, works }) => {
    // A toned ground that names nothing is the ground itself, which is there from the first.
    const isGround = layer === 'imprimatura' && plan.sittings[sitting]?.works.length === 0;
    const worked = new Set(isGround ? [] : works);
    now = plan.objects.map((object, index) =>
      worked.has(index)
        ? laid(layer, object, now[index], { plan, seen: mixing?.glazes[index]?.seen })
        : now[index],
    );
    return now;
  });
}

/**
 * What a layer makes of what an object showed: an imprimatura is a thin wash of its colour, an underpainting the grey of its
 * value, block-in and body colour its colour laid in flat, a scumble that colour broken over what was there, a glaze what is
 * seen through it; details lie on what is there, and varnish changes nothing.
 */
function laid(
  layer: Layer,
  object: PlanObject,
  before: Painted | undefined,
  { plan, seen }: { readonly plan: Plan; readonly seen: Colour | undefined },
): Painted | undefined {
  const ground = plan.canvas.ground.colour;
  const own = isUnplanned(object) ? ground : paintOf(object, plan);
  const body = { colour: own, isBody: true };
  switch (layer) {
    case 'imprimatura':
      return before ?? { colour: mix(ground, own, THIN), isBody: false };
    case 'underpainting':
      return { colour: object.value === undefined ? own : greyOf(object.value), isBody: false };
    case 'block-in':
    case 'body colour':
      return body;
    case 'scumble':
      return { colour: mix(before?.glazed ?? before?.colour ?? ground, own, BROKEN), isBody: true };
    case 'glaze':
      return { ...(before ?? body), ...(seen === undefined ? {} : { glazed: seen }) };
    case 'detail':
      return before?.isBody === true ? before : body;
    case 'varnish':
      return before;
  }
}
