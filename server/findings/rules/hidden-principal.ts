import { type Plane, t } from '../../../grammar/index.js';
import type { SeenAreas } from '../../measure/areas/areas.js';
import type { Measures } from '../../measure/measures.js';
import { partsOf, wholeOf } from '../../measure/areas/parts.js';
import { trialOf } from '../../measure/trial.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { planeEdit } from '../edits.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { firstClear } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import {
  type Shift,
  distanceWords,
  isMovable,
  roundedOn,
  shiftFix,
  shifted,
  withItsParts,
} from '../moves/shift.js';
import { isPrincipal } from '../words/principals.js';
import { planeWords } from '../words/tones.js';
import { percent, quoted } from '../words/words.js';

/** From here on nothing is seen of it, which is another rule's to tell. */
const WHOLLY = 0.999;
const PLANES: readonly Plane[] = ['background', 'middle', 'foreground'];
/** How far it is tried to move, parts of the diagonal. */
const DISTANCES = [0.02, 0.04, 0.07, 0.11, 0.16];

export const hiddenPrincipal: Rule = {
  id: 'hidden principal',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.6, unit: 'part', of: 'the part of the object on the canvas that others cover' },
  perObject: true,
  summary: 'More than half of a dominant or secondary object is covered by others.',
  explanation:
    'A principal that is mostly hidden can’t play its part: the eye has to guess it. What lies on it, as a wing on a bird, does not count as hiding it.',
  formula:
    'area covered by others than what lies on it / area on the canvas > limit, and something of it is seen',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    plan.objects.flatMap((object): readonly RuleFinding[] => {
      if (!isPrincipal(object)) return [];
      const measured = measures.objects[object.index];
      if (!measured || measured.hiddenShare >= WHOLLY || hasFault(plan, object)) return [];
      const hidden = hiddenByOthers(plan, measures, object.index);
      if (!exceeds(hidden, limit)) return [];
      const whole = new Set(wholeOf(measures.parts, object.index));
      const covers = measured.mostCovering
        .filter((cover) => !whole.has(cover))
        .flatMap((cover) => plan.objects[cover] ?? []);
      return [
        {
          message: told(object, covers, hidden, limit),
          remedy: () => remedy(plan, measures, object, covers, limit),
          location: object.location,
          related: covers.map(({ name, location }) => ({
            location,
            message: t('{0} lies in front.', quoted(name)),
          })),
          objects: [object.index],
          excess: hidden - limit,
        },
      ];
    }),
};

function told(
  { name, role }: PlanObject,
  covers: readonly PlanObject[],
  hidden: number,
  limit: number,
): string {
  const figures = [quoted(name), percent(hidden), percent(limit)] as const;
  if (covers.length === 0)
    return role === 'dominant'
      ? t('{0}, which is dominant, is {1} hidden; up to {2} it still plays its part.', ...figures)
      : t('{0}, which is secondary, is {1} hidden; up to {2} it still plays its part.', ...figures);
  const by = inWords(covers.map((cover) => quoted(cover.name)));
  return role === 'dominant'
    ? t('{0}, which is dominant, is {1} hidden by {3}; up to {2} it still plays its part.', ...figures, by)
    : t('{0}, which is secondary, is {1} hidden by {3}; up to {2} it still plays its part.', ...figures, by);
}

/** What others than its own parts cover of an object, part of it on the canvas. */
function hiddenByOthers(
  plan: Plan,
  { areas, parts }: { readonly areas: SeenAreas; readonly parts: Measures['parts'] },
  object: number,
): number {
  const layerOf = (index: number) => areas.layers[plan.coveringOrder.indexOf(index)];
  const own = layerOf(object);
  if (!own || own.onCanvasArea === 0) return 0;
  const [, ...lyingOn] = wholeOf(parts, object);
  const ofParts = lyingOn.reduce((sum, part) => sum + (layerOf(part)?.visibleArea ?? 0), 0);
  return Math.max(0, own.hiddenShare - ofParts / own.onCanvasArea);
}

function remedy(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  covers: readonly PlanObject[],
  limit: number,
): Remedy {
  const plane = remembered(plan, object.index, 'hidden principal, plane', limit, () =>
    nearerPlane(plan, measures, object, limit),
  );
  if (plane) {
    return {
      advice: t(
        'Write `plane {0}` under {1}, which brings it in front, or move it.',
        plane,
        quoted(object.name),
      ),
      fix: {
        title: t('Bring {0} to the {1}', quoted(object.name), planeWords(plane)),
        edits: planeEdit(object, plane),
      },
    };
  }
  const shift = remembered(plan, object.index, 'hidden principal', limit, () =>
    intoSight(plan, measures, object, limit),
  );
  if (shift) {
    const fix = shiftFix(plan, measures.parts, shift);
    return {
      advice: t(
        'Move {0} {1}, which shows enough of it.',
        withItsParts(plan, measures.parts, object.index),
        distanceWords(shift, plan.canvas),
      ),
      ...(fix ? { fix } : {}),
    };
  }
  const last = covers.filter((cover) => cover.plane === object.plane).at(-1);
  return {
    advice: last
      ? t('Write {0} after {1}, or make it minor.', quoted(object.name), quoted(last.name))
      : t('Make {0} larger than what covers it, or make it minor.', quoted(object.name)),
  };
}

/** The next nearer plane in which enough of it is seen and no other principal comes to be hidden. */
function nearerPlane(plan: Plan, measures: Measures, object: PlanObject, limit: number): Plane | undefined {
  if ((measures.parts[object.index] ?? []).length > 0) return undefined;
  return PLANES.slice(PLANES.indexOf(object.plane) + 1).find((plane) => {
    const planeOf = (index: number): number =>
      PLANES.indexOf(index === object.index ? plane : (plan.objects[index]?.plane ?? 'middle'));
    const order = plan.coveringOrder.toSorted((one, other) => planeOf(one) - planeOf(other) || one - other);
    const trial = trialOf(plan, measures.areas, new Map(), { coveringOrder: order, taken: object.index });
    const parts = partsOf({
      ...trial.plan,
      objects: trial.plan.objects.with(object.index, { ...object, plane }),
    });
    return plan.objects.filter(isPrincipal).every(({ index }) => {
      const before = hiddenByOthers(plan, measures, index);
      const after = hiddenByOthers(trial.plan, { areas: trial.areas, parts }, index);
      return !exceeds(after, limit) || (index !== object.index && after <= before);
    });
  });
}

/** The shortest move up, down or sideways after which enough of it is seen. */
function intoSight(plan: Plan, measures: Measures, { index }: PlanObject, limit: number): Shift | undefined {
  if (!isMovable(plan, measures.parts, index)) return undefined;
  const shifts = DISTANCES.flatMap((part) => {
    const far = roundedOn(part * plan.canvas.diagonal, plan.canvas);
    return [
      { object: index, right: 0, down: -far },
      { object: index, right: -far, down: 0 },
      { object: index, right: far, down: 0 },
      { object: index, right: 0, down: far },
    ];
  }).filter((shift) => {
    const { areas, plan: moved } = shifted(plan, measures, shift);
    return !exceeds(hiddenByOthers(moved, { areas, parts: partsOf(moved) }, index), limit);
  });
  return firstClear(plan, measures, shifts, () => false);
}
