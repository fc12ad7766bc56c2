import type { Lab } from '../../plan/colour/colour.js';
import type { Plan } from '../../plan/plan.js';
import { once } from '../memory.js';
import type { MixingMeasure } from '../mixing/mixing.js';
import { goesOverAll, paintsObjects } from '../sittings/layers.js';
import type { ScheduleMeasure } from '../sittings/schedule.js';
import { type Standing, standingAfter } from '../sittings/standing.js';

/** What is to stand at an object after a sitting, as far as a photograph can be held to it. */
export interface Target {
  /** Painted by a layer that makes it seen. */
  readonly worked: boolean;
  /** Missing while it is bare ground. */
  readonly shown?: Lab;
  /** What counts of `shown`: nothing where the plan does not say or know what is to be seen there. */
  readonly counts: 'value and colour' | 'value' | 'nothing';
}

/**
 * For each sitting, by its index in `plan.sittings`, what is to stand at each object after it, in the order of
 * `plan.objects`.
 */
export function targetsAfter(
  plan: Plan,
  schedule: ScheduleMeasure,
  mixing: MixingMeasure | undefined,
): ReadonlyMap<number, readonly Target[]> {
  const { sittings } = schedule;
  const asStated = once(() => standingAfter(plan, sittings, mixing));
  // Those that don't say what they work on, taken to paint everything.
  const all = plan.objects.map(({ index }) => index);
  const ofAll = sittings.map((sitting) =>
    goesOverAll(sitting.layer) ? sitting : { ...sitting, works: all },
  );
  const asAssumed = once(() => standingAfter(plan, ofAll, mixing));
  let isStated = false;
  return new Map(
    sittings.map(({ sitting, layer, works }, place) => {
      isStated ||= paintsObjects(layer) && works.length > 0;
      const standing = (isStated ? asStated : asAssumed)()[place] ?? [];
      return [sitting, plan.objects.map((object, index) => targetOf(plan, object.index, standing[index]))];
    }),
  );
}

function targetOf(plan: Plan, index: number, standing: Standing | undefined): Target {
  const object = plan.objects[index];
  if (!object || !standing || standing.as === 'tone') return { worked: false, counts: 'nothing' };
  if (object.painted === undefined) return { worked: true, counts: 'nothing' };
  const { colour, glazed, isGlazed, as } = standing;
  const shown = (glazed ?? colour).lab;
  // What is seen through a glaze is known of one whose colour the plan gives, over body colour, once mixtures are
  // known.
  const isKnown = !isGlazed || (as === 'body' && (glazed !== undefined || object.glaze === undefined));
  if (!isKnown) return { worked: true, shown, counts: 'nothing' };
  return { worked: true, shown, counts: as === 'grey' || !object.colour ? 'value' : 'value and colour' };
}
