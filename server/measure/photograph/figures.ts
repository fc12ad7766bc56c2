import type { Plan, Sitting } from '../../plan/plan.js';
import { measureBudget } from '../budget.js';
import type { VisibleAreas } from '../areas/areas.js';
import { type Memory, once } from '../memory.js';
import { changeSince } from './change.js';
import { doubtsOf } from './doubts.js';
import { colourDifferences, plannedAreas, plannedPicture, valueDifferences } from './maps.js';
import { masksOf } from './masks.js';
import type { SquaredPicture } from './photographs.js';
import { pixelsOf, stepShares, valueAt } from './pixels.js';
import type { RecordFigures } from './record.js';
import { type InPhotograph, recordObjects } from './record-objects.js';
import { measureRoles, roleColours } from './roles.js';
import { strongPlaces } from './strong-places.js';
import type { Target } from './targets.js';

/** Left out of the range at either end. */
const TAIL = 0.02;
/** Parts of the picture up to which what is not painted, or not planned, hides nothing. */
const NEARLY_NOTHING = 0.01;

/** What the figures of a photograph rest on. */
export interface Photographed {
  readonly sitting: Sitting;
  /** Index into `plan.sittings`. */
  readonly index: number;
  readonly picture: SquaredPicture;
  /** In the order of `plan.objects`. */
  readonly targets: readonly Target[];
  /** The photograph before it in time. */
  readonly before?: { readonly index: number; readonly picture: SquaredPicture } | undefined;
}

/** What of the other measures they go by. */
export interface SeenInPlan {
  readonly areas: VisibleAreas;
  /** In the order of `plan.objects`. */
  readonly shares: readonly number[];
}

/** What a photograph shows, against what is to stand there after its sitting. */
export function recordFigures(
  plan: Plan,
  { areas, shares }: SeenInPlan,
  { sitting, index, picture, targets, before }: Photographed,
  memory: Memory,
): RecordFigures {
  const { scale, canvas, focus } = plan;
  const measuredIn = (photographed: Pick<Photographed, 'index' | 'picture'>): InPhotograph => ({
    pixels: pixelsOf(photographed.picture, memory),
    masks: masksOf(plan, areas, photographed.picture, memory),
    key: String(photographed.index),
  });
  const now = measuredIn({ index, picture });
  const { pixels, masks, key } = now;
  const earlier = before && measuredIn(before);
  const ofSteps = stepShares(pixels, scale.steps);
  const steps = ofSteps.map((share, at) => ({ step: at + 1, share }));
  const groups = scale.groups.map(({ name, key: group, from, to }) => ({
    name,
    key: group,
    from,
    to,
    share: ofSteps.slice(from - 1, to).reduce((sum, share) => sum + share, 0),
  }));
  const byRole = roleColours(plan, shares, areas.bareShare, targets);
  const roles = measureRoles(pixels, byRole, memory, key);
  const emphasis = strongPlaces(picture, canvas, focus?.at, memory, key);
  const toStand = plannedAreas(plan, masks, targets, picture, memory);
  const planned = memory.recall(
    'planned picture',
    key,
    [picture, ...toStand.flatMap(({ object, runs, lab }) => [object, runs, ...lab])],
    () => once(() => plannedPicture(toStand, picture)),
  );
  const change = once(() =>
    before && earlier
      ? changeSince(now, { sitting: before.index, pixels: earlier.pixels }, memory)
      : undefined,
  );
  const plannedEmphasis = once(() => strongPlaces(planned(), canvas, focus?.at, memory, `${key} as planned`));
  const values = once(() => valueDifferences(picture.lab, planned(), scale.steps));
  const colours = colourDifferences(plan, picture, toStand, memory, key);
  const objects = recordObjects(plan, shares, { targets, colours: byRole, now, before: earlier }, memory);
  return {
    steps,
    groups,
    valueBudget: measureBudget(
      plan.valueBudget,
      (wanted) => groups.find((group) => group.key === wanted)?.share ?? ofSteps[Number(wanted) - 1] ?? 0,
    ),
    ...roles,
    colourBudget:
      roles.roles.length === 0
        ? []
        : measureBudget(
            plan.colourBudget,
            (wanted) => roles.roles.find(({ role }) => role === wanted)?.share ?? 0,
          ),
    isWhole: wholeness(shares, targets),
    key: pixels.value,
    range: { darkest: valueAt(pixels, TAIL), lightest: valueAt(pixels, 1 - TAIL) },
    objects,
    ...(emphasis
      ? {
          emphasis: {
            ...emphasis,
            get planned() {
              return plannedEmphasis();
            },
          },
        }
      : {}),
    doubts: doubtsOf(plan, sitting, picture, { pixels, masks, targets, objects }),
    ...(before ? { comparedWith: before.index } : {}),
    get change() {
      return change();
    },
    get planned() {
      return planned();
    },
    get valueDifference() {
      return values();
    },
    get colourDifference() {
      return colours();
    },
  };
}

/** Whether shares of the whole canvas can be held to the plan's. */
function wholeness(shares: readonly number[], targets: readonly Target[]): RecordFigures['isWhole'] {
  const without = (isThere: (target: Target | undefined) => boolean): boolean =>
    shares.reduce((sum, share, object) => sum + (isThere(targets[object]) ? 0 : share), 0) <= NEARLY_NOTHING;
  return {
    values: without((target) => target?.worked === true && target.counts !== 'nothing'),
    colours: without((target) => target?.counts === 'value and colour'),
  };
}
