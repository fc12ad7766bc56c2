import { type Edges, type Means, type Side, t } from '../../../grammar/index.js';
import { GROUND } from '../../measure/borders/borders.js';
import { centreOfInterest } from '../../measure/emphasis/centre.js';
import type { StrongPlace } from '../../measure/emphasis/emphasis.js';
import { areaName } from '../../measure/areas/area-words.js';
import type { Measures } from '../../measure/measures.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { RuleFinding } from '../finding.js';
import { hasFault } from '../limits.js';
import { heading, length } from './words.js';

/** By what a focal point wins. */
export function meansWords(means: Means): string {
  switch (means) {
    case 'value':
      return t('value');
    case 'colour':
      return t('colour');
    case 'edges':
      return t('edges');
    case 'detail':
      return t('detail');
    case 'scale':
      return t('scale');
    case 'isolation':
      return t('isolation');
  }
}

/** `` Make the edges of `jug` soft ``, as an order without a full stop. */
export function edgesTold(name: string, edges: Edges): string {
  switch (edges) {
    case 'hard':
      return t('Make the edges of {0} hard', name);
    case 'firm':
      return t('Make the edges of {0} firm', name);
    case 'soft':
      return t('Make the edges of {0} soft', name);
    case 'lost':
      return t('Make the edges of {0} lost', name);
  }
}

/** The same of the edges against one other object. */
export function edgesAgainst(name: string, edges: Edges, other: string): string {
  switch (edges) {
    case 'hard':
      return t('Make the edges of {0} hard against {1}', name, other);
    case 'firm':
      return t('Make the edges of {0} firm against {1}', name, other);
    case 'soft':
      return t('Make the edges of {0} soft against {1}', name, other);
    case 'lost':
      return t('Make the edges of {0} lost against {1}', name, other);
  }
}

/** One strength as a part of another, in whole per cent: a rule of thumb is no finer. */
export function strengthPercent(strength: number, of: number): string {
  const whole = Math.round((100 * strength) / of);
  return whole === 0 && strength > 0 ? t('under 1 %') : `${whole} %`;
}

/** The objects whose border it is, as `Finding.objects`. */
export function objectsOf({ areas }: Pick<StrongPlace, 'areas'>): readonly number[] {
  return areas.filter((area) => area !== GROUND);
}

/** Where a finding about a place is told, in the text and in the picture. */
export function placeOf(plan: Plan, place: StrongPlace): Pick<RuleFinding, 'location' | 'at' | 'objects'> {
  return {
    location: plan.objects[place.areas[0]]?.location ?? plan.focus?.location ?? heading(plan),
    at: place.at,
    objects: objectsOf(place),
  };
}

/** How far a place is from the edge of the canvas that is nearest: `3 cm from the right edge`. */
export function fromEdge({ at: { x, y }, fromEdge: share }: StrongPlace, canvas: Canvas): string {
  const edges: readonly (readonly [number, Side])[] = [
    [x, 'left'],
    [canvas.width - x, 'right'],
    [y, 'top'],
    [canvas.height - y, 'bottom'],
  ];
  const [, side] = edges.reduce((one, other) => (other[0] < one[0] ? other : one));
  const away = length(share * canvas.diagonal, canvas);
  switch (side) {
    case 'left':
      return t('{0} from the left edge', away);
    case 'right':
      return t('{0} from the right edge', away);
    case 'top':
      return t('{0} from the top edge', away);
    case 'bottom':
      return t('{0} from the bottom edge', away);
  }
}

/** The strongest place of each border, strongest first. */
export function oneABorder(places: readonly StrongPlace[]): readonly StrongPlace[] {
  const seen = new Set<string>();
  return places.filter((place) => {
    const key = borderKey(place);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Tells borders apart. */
export function borderKey({ areas }: Pick<StrongPlace, 'areas'>): string {
  return areas.join(' ');
}

/**
 * `92 % as strongly`, `as strongly`, `1.4 times as strongly`, `twice as strongly`: above the whole, per cent are hard
 * to read.
 */
export function howStrongly(strength: number, of: number): string {
  if (Math.round((100 * strength) / of) < 100) return t('{0} as strongly', strengthPercent(strength, of));
  const times = plainNumber(strength / of, 1);
  if (times === '1') return t('as strongly');
  return times === '2' ? t('twice as strongly') : t('{0} times as strongly', times);
}

/** Said of a place elsewhere that is an edge of the dominant object at the focal point or of what lies on that. */
export function farPart(plan: Plan, measures: Measures, { areas: [front] }: StrongPlace): string {
  if (!centreOfInterest(plan, measures).has(front)) return '';
  const isDominant = plan.objects[front]?.role === 'dominant';
  const told = isDominant
    ? t('It is an edge of the dominant object, but far from that point.')
    : t('{0} lies on the dominant object, but far from that point.', areaName(plan, front));
  return ` ${told}`;
}

/** Whether what is written of the objects of a place could all be read. */
export function isReadable(plan: Plan, place: StrongPlace): boolean {
  return objectsOf(place).every((index) => {
    const object = plan.objects[index];
    return object !== undefined && !hasFault(plan, object);
  });
}
