import type { Layer } from '../../../grammar/index.js';
import type { Colour } from '../../plan/colour/colour.js';
import { greyOf, mix } from '../../plan/colour/grey.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { MixingMeasure } from '../mixing/mixing.js';
import type { ScheduledSitting } from './schedule.js';

/** An imprimatura is a thin tone over the ground. */
const THIN = 0.3;
/** A scumble is dragged over, and what lies below shows through. */
const BROKEN = 0.6;

/** What an object shows after a sitting; missing while it is bare. */
export interface Standing {
  readonly colour: Colour;
  /** What is seen of it through a glaze. */
  readonly glazed?: Colour;
  /** A thin wash that tones the ground, the grey of its value, or colour of its own. */
  readonly as: 'tone' | 'grey' | 'body';
  /** A glaze has been laid, be it known what is seen through it or not. */
  readonly isGlazed?: true;
}

/**
 * What each object shows after each of these sittings, which are in the order of time; in the order of `plan.objects`.
 */
export function standingAfter(
  plan: Plan,
  sittings: readonly Pick<ScheduledSitting, 'sitting' | 'layer' | 'works'>[],
  mixing: Pick<MixingMeasure, 'glazes'> | undefined,
): readonly (readonly (Standing | undefined)[])[] {
  let now: readonly (Standing | undefined)[] = plan.objects.map(() => undefined);
  return sittings.map(({ sitting, layer, works }) => {
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
 * What a layer makes of what an object showed: an imprimatura is a thin wash of its colour, an underpainting the grey
 * of its value, block-in and body colour its colour laid in flat, a scumble that colour broken over what was there, a
 * glaze what is seen through it; details lie on what is there, and varnish changes nothing.
 */
function laid(
  layer: Layer,
  object: PlanObject,
  before: Standing | undefined,
  { plan, seen }: { readonly plan: Plan; readonly seen: Colour | undefined },
): Standing | undefined {
  const ground = plan.canvas.ground.colour;
  const own = object.painted ?? object.colour?.colour ?? ground;
  const body = { colour: own, as: 'body' } as const;
  switch (layer) {
    case 'imprimatura':
      return before ?? { colour: mix(ground, own, THIN), as: 'tone' };
    case 'underpainting':
      return { colour: object.value === undefined ? own : greyOf(object.value), as: 'grey' };
    case 'block-in':
    case 'body colour':
      return body;
    case 'scumble':
      return { colour: mix(before?.glazed ?? before?.colour ?? ground, own, BROKEN), as: 'body' };
    case 'glaze':
      return { ...(before ?? body), isGlazed: true, ...(seen === undefined ? {} : { glazed: seen }) };
    case 'detail':
      return before?.as === 'body' ? before : body;
    case 'varnish':
      return before;
  }
}
