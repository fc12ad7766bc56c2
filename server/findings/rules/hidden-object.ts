import { type Plane, t } from '../../../grammar/index.js';
import { boxContains } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { planeEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { middleOf, onCanvas } from '../seen/seen.js';
import { gravityOfUnseen } from '../words/principals.js';
import { planeWords } from '../words/tones.js';
import { percent, quoted } from '../words/words.js';

/** As good as all of it: a sliver that rounding leaves is not seen either. */
const WHOLLY = 0.999;
/** All that covers an object is looked for in so many only: it takes time, and a plan has few that are hidden. */
const MOST_FIXED = 3;

export const hiddenObject: Rule = {
  id: 'hidden object',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: WHOLLY, unit: 'part', of: 'the part of the object on the canvas that others cover' },
  perObject: true,
  summary: 'An object is wholly covered by others.',
  explanation:
    'Later objects cover earlier ones, and nearer planes cover farther ones. An object that nothing is seen of takes no part in the picture; most often it stands in the wrong plane or the wrong order. It is a warning where the object is dominant or secondary, for then the plan gives it a part in the picture.',
  formula: 'covered area / area on the canvas >= limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const hiddenOnes = measures.objects.flatMap((measured, index) => {
      const object = plan.objects[index];
      if (!object || exceeds(limit, measured.hiddenShare)) return [];
      // Read only here: it is worked out on demand.
      const covers = measured.mostCovering.flatMap((cover) => plan.objects[cover] ?? []);
      return covers.length === 0 ? [] : [{ object, measured, covers }];
    });
    return hiddenOnes.map(({ object, measured, covers }, position): RuleFinding => {
      const plane = position < MOST_FIXED ? planeInFront(plan, object, measured.coveredBy) : undefined;
      return {
        message: hidden(object, measured.hiddenShare, covers),
        advice: plane
          ? t('Write `plane {0}` under {1}, or move it.', plane, quoted(object.name))
          : advice(object, covers),
        ...gravityOfUnseen(object),
        location: object.location,
        related: covers.map(({ name, location }) => ({
          location,
          message: t('{0} lies in front.', quoted(name)),
        })),
        objects: [object.index],
        at: onCanvas(middleOf(object), plan.canvas),
        ...(plane
          ? {
              fix: {
                title: t('Bring {0} to the {1}', quoted(object.name), planeWords(plane)),
                edits: planeEdit(object, plane),
              },
            }
          : {}),
      };
    });
  },
};

/** By the usual limit nothing is seen; a plan may set a lower one. */
function hidden(object: PlanObject, share: number, covers: readonly PlanObject[]): string {
  const name = quoted(object.name);
  const coverNames = inWords(covers.map((cover) => quoted(cover.name)));
  if (share >= WHOLLY)
    return covers.length === 1
      ? t('Nothing of {0} is seen: {1} covers it.', name, coverNames)
      : t('Nothing of {0} is seen: {1} cover it.', name, coverNames);
  return covers.length === 1
    ? t('{0} is {1} hidden: {2} covers it.', name, percent(share), coverNames)
    : t('{0} is {1} hidden: {2} cover it.', name, percent(share), coverNames);
}

/** What would bring it before all that covers it: its place in the text within one plane, else its plane. */
function advice(object: PlanObject, covers: readonly PlanObject[]): string {
  const nearer = covers.filter(({ plane }) => plane !== object.plane);
  const plane = nearer.some((cover) => cover.plane === 'foreground') ? 'foreground' : nearer[0]?.plane;
  const beside = covers.filter((cover) => cover.plane === (plane ?? object.plane));
  const last = quoted(beside.reduce((one, other) => (other.index > one.index ? other : one), object).name);
  const name = quoted(object.name);
  if (plane === undefined) return t('Write {0} after {1}, or give it a nearer plane.', name, last);
  return beside.some(({ index }) => index > object.index)
    ? t('Write `plane {0}` under {1} and write it after {2}, or move it.', plane, name, last)
    : t('Write `plane {0}` under {1}, or move it.', plane, name);
}

const NEARER: Readonly<Record<Plane, readonly Plane[]>> = {
  background: ['middle', 'foreground'],
  middle: ['foreground'],
  foreground: [],
};

/** The next plane in which nothing is left in front of it, unless it would then hide something whole itself. */
function planeInFront(plan: Plan, object: PlanObject, coveredBy: readonly number[]): Plane | undefined {
  const isInFront = (other: PlanObject, plane: Plane): boolean =>
    NEARER[plane].includes(other.plane) || (other.plane === plane && other.index > object.index);
  const covers = coveredBy.flatMap((index) => plan.objects[index] ?? []);
  const plane = NEARER[object.plane].find((nearer) => !covers.some((cover) => isInFront(cover, nearer)));
  if (plane === undefined) return undefined;
  const passed = plan.objects.filter((other) => isInFront(other, object.plane) && !isInFront(other, plane));
  return passed.some(({ outline }) => boxContains(object.outline.box, outline.box)) ? undefined : plane;
}
