import { t } from '../../../grammar/index.js';
import { boxCentre } from '../../plan/geometry/point.js';
import type { Lead, LeadPlace, Plan, PlanObject } from '../../plan/plan.js';
import { type PlaceSurroundings, resolvePlace } from '../../plan/places.js';
import { every } from '../../plan/select.js';
import type { Grip, Spot } from './handles.js';
import type { Subjects } from '../views/reading.js';
import { frameOf } from './framing.js';
import { type OutlinePoint, outlinePoints } from './outline-points.js';
import { surroundingsOf } from './surroundings.js';

/** Points of outlines that can be taken hold of in one drawing; what comes after in the text can't. */
const MOST_POINTS = 2_000;

/** What in the plan a grip takes hold of. */
export type Held =
  | { readonly kind: 'object'; readonly object: PlanObject }
  | { readonly kind: 'point'; readonly object: PlanObject; readonly point: OutlinePoint }
  | { readonly kind: 'focus' }
  | { readonly kind: 'lead'; readonly lead: Lead }
  | { readonly kind: 'lead place'; readonly lead: Lead; readonly place: LeadPlace };

export interface Hold {
  readonly grip: Grip;
  readonly held: Held;
}

/** All that can be taken hold of: the objects in the order of the text, their points, the focal point, the leads. */
export function holdsOf(plan: Plan, subjects: Subjects): readonly Hold[] {
  const surroundings = surroundingsOf(plan);
  return [
    ...plan.objects.flatMap((object) => objectHolds(object, subjects.objects[object.index], surroundings)),
    ...pointHolds(plan, subjects, surroundings),
    ...focusHold(plan),
    ...plan.leads.flatMap((lead, index) => leadHolds(lead, subjects.leads[index])),
  ];
}

/** The places of a lead from its start, with the part of a grip's key and name that says which it is. */
export function placesOfLead({ from, through, to }: Lead): readonly {
  readonly place: LeadPlace;
  readonly key: string;
  readonly words: string;
}[] {
  return [
    ...(from ? [{ place: from, key: 'from', words: 'start' }] : []),
    ...through.map((place, index) => ({
      place,
      key: `through:${index + 1}`,
      words: through.length === 1 ? 'middle place' : `middle place ${index + 1}`,
    })),
    { place: to, key: 'to', words: 'end' },
  ];
}

/** Whether a place is the lead's own, rather than that of an object or the focal point. */
export function isOwnPlace({ names }: LeadPlace): boolean {
  return names === 'place';
}

function objectHolds(
  object: PlanObject,
  subject: string | undefined,
  surroundings: PlaceSurroundings,
): readonly Hold[] {
  if (subject === undefined || object.outline.path.length === 0) return [];
  const at = spot(boxCentre(object.outline.box));
  const frame = frameOf(object, surroundings);
  return [
    {
      grip: {
        key: subject,
        subject,
        kind: 'object',
        at,
        name: object.name,
        ...whyFixed(object, surroundings),
        ...(frame ? { frame } : {}),
      },
      held: { kind: 'object', object },
    },
  ];
}

function whyFixed({ name, node }: PlanObject, surroundings: PlaceSurroundings): Pick<Grip, 'fixed'> {
  const { children } = node;
  const at = every(children, 'at').at(-1);
  if (at) {
    return resolvePlace(at.statement.place, at, surroundings)
      ? {}
      : { fixed: t('Where `{0}` lies can’t be told from its `at`: mend that, and it can be moved.', name) };
  }
  // Where the first copy of a repeated object lies can't be told of a part of a file, which is not at hand here.
  const isFromFile = every(children, 'shape').some(({ statement }) => statement.shape.form === 'file');
  if (!isFromFile || every(children, 'repeat').length === 0) return {};
  return {
    fixed: t('`{0}` is repeated and has no place of its own: give it an `at`, and it can be moved.', name),
  };
}

function pointHolds(plan: Plan, subjects: Subjects, surroundings: PlaceSurroundings): readonly Hold[] {
  const holds: Hold[] = [];
  for (const object of plan.objects) {
    const subject = subjects.objects[object.index];
    if (subject === undefined || object.outline.path.length === 0) continue;
    outlinePoints(object, surroundings).forEach((point, index) => {
      const name = `point ${index + 1} of ${object.name}`;
      const key = `${subject}:point:${index + 1}`;
      holds.push({
        grip: { key, subject, kind: 'point', at: spot(point.at), name },
        held: { kind: 'point', object, point },
      });
    });
    if (holds.length >= MOST_POINTS) break;
  }
  return holds.slice(0, MOST_POINTS);
}

function focusHold({ focus }: Plan): readonly Hold[] {
  if (!focus) return [];
  return [
    {
      grip: { key: 'focus', subject: 'focus', kind: 'focus', at: spot(focus.at), name: 'focal point' },
      held: { kind: 'focus' },
    },
  ];
}

function leadHolds(lead: Lead, subject: string | undefined): readonly Hold[] {
  if (subject === undefined) return [];
  const places = placesOfLead(lead);
  const own = places.find(({ place }) => isOwnPlace(place));
  const at = own?.place.at ?? lead.points[0] ?? lead.to.at;
  const fixed = t(
    '`{0}` has no place of its own, only those of other things: move one of its ends by itself.',
    lead.name,
  );
  return [
    {
      grip: {
        key: subject,
        subject,
        kind: 'lead',
        at: spot(at),
        name: `lead ${lead.name}`,
        ...(own ? {} : { fixed }),
      },
      held: { kind: 'lead', lead },
    },
    ...places.map(({ place, key, words }): Hold => ({
      grip: {
        key: `${subject}:${key}`,
        subject,
        kind: 'lead place',
        at: spot(place.at),
        name: `${words} of lead ${lead.name}`,
      },
      held: { kind: 'lead place', lead, place },
    })),
  ];
}

function spot({ x, y }: Spot): Spot {
  return { x, y };
}
