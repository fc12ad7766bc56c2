import type { Plan, PlanObject } from '../../plan/plan.js';
import { type Carried, carried } from '../carried.js';
import { keptObjects } from '../kept-lists.js';
import { type Memory, once, sameInputs } from '../memory.js';
import type { BorderMeasure, BorderStretch, MeetingAreas } from './borders.js';
import { type Contrast, contrastOf, edgesBetween, tintOf } from './contrast.js';
import { GROUND } from './ground.js';
import type { Meetings } from './meeting.js';

/** Part of the diagonal that a stretch is long at most. */
const STRETCH = 0.005;
/** With more border than so many stretches they are made twice as long, or four times, and so on. */
const MOST_STRETCHES = 100_000;

/** The stretches of one area in front, and all that they were worked out from. */
interface OfFront {
  readonly inputs: readonly unknown[];
  readonly entry: BorderMeasure['byFront'][number];
}

/** Of all areas in front; lists are by the places of the areas that are seen. */
interface OfFronts {
  readonly met: MeetingAreas;
  readonly lengths: Carried<Meetings, number>;
  readonly longest: number;
  readonly objects: readonly PlanObject[];
  readonly ground: readonly unknown[];
  /** None for the bare ground. */
  readonly fronts: readonly (OfFront | undefined)[];
  readonly byFront: BorderMeasure['byFront'];
}

/** The stretches of all areas in front, from back to front; what nothing has changed of is the same one as before. */
export function stretchesByFront(plan: Plan, met: MeetingAreas, memory: Memory): BorderMeasure['byFront'] {
  const { canvas } = plan;
  const objects = keptObjects(plan, memory);
  const ground = [canvas.ground.value, canvas.ground.colour];
  const inputs = [met, canvas.diagonal, objects, ...ground];
  return memory.recall('stretches', '', inputs, (last: OfFronts | undefined): OfFronts => {
    const lengths = carried(met.meetings, last?.lengths, lengthOf);
    const longest = longestStretch(lengths.results, canvas.diagonal);
    const stands = last?.longest === longest ? whatStands({ met, objects, ground }, last) : undefined;
    const byArea = once(() => new Map(last?.fronts.map((of) => [of?.entry.front, of])));
    const fronts = met.meetings.map((meetings, place) => {
      if (meetings.met.length === 0) return undefined;
      if (stands?.(place)) return last?.fronts[place];
      return ofFront(plan, met, place, longest, (area) => byArea().get(area));
    });
    const byFront: OfFront['entry'][] = [];
    for (const of of fronts) if (of) byFront.push(of.entry);
    const isSame = last && sameInputs(byFront, last.byFront);
    return { met, lengths, longest, objects, ground, fronts, byFront: isSame ? last.byFront : byFront };
  }).byFront;
}

/**
 * Whether the stretches of the area at a place can't be others than last: neither it nor what lies behind has changed.
 */
function whatStands(
  { met, objects, ground }: Pick<OfFronts, 'met' | 'objects' | 'ground'>,
  last: OfFronts,
): ((place: number) => boolean) | undefined {
  if (last.met.seen.length !== met.seen.length) return undefined;
  const isOther = Uint8Array.from(met.seen, ({ area }, place) => {
    const before = last.met.seen[place]?.area;
    if (area !== before) return 1;
    return area === GROUND
      ? Number(!sameInputs(ground, last.ground))
      : Number(objects[area] !== last.objects[area]);
  });
  return (place) =>
    isOther[place] === 0 &&
    met.meetings[place]?.met === last.met.meetings[place]?.met &&
    met.seen[place]?.sides === last.met.seen[place]?.sides &&
    !met.meetings[place]?.behind.some((behind) => isOther[behind] === 1);
}

/** How long all pieces are together. */
function lengthOf({ met }: Meetings): number {
  let total = 0;
  for (let i = 0; i < met.length; i += 4) total += (met[i + 2] as number) - (met[i + 1] as number);
  return total;
}

function longestStretch(lengths: readonly number[], diagonal: number): number {
  let total = 0;
  for (const length of lengths) total += length;
  const usual = STRETCH * diagonal;
  const times = total / usual / MOST_STRETCHES;
  return times > 1 ? usual * 2 ** Math.ceil(Math.log2(times)) : usual;
}

/** @param known gives what was last worked out of an area */
function ofFront(
  plan: Plan,
  { seen, meetings }: MeetingAreas,
  place: number,
  longest: number,
  known: (front: number) => OfFront | undefined,
): OfFront | undefined {
  const here = seen[place];
  const of = meetings[place];
  if (!here || !of) return undefined;
  const { area: front, sides } = here;
  const tint = tintOf(plan, front);
  const others = of.behind.map((index) => {
    const behind = (seen[index] as typeof here).area;
    return { index, behind, tint: tintOf(plan, behind), edges: edgesBetween(plan, front, behind) };
  });
  const inputs: unknown[] = [sides, front, longest, of.met, tint?.value, tint?.lab[1], tint?.lab[2]];
  for (const other of others)
    inputs.push(other.behind, other.tint?.value, other.tint?.lab[1], other.tint?.lab[2], other.edges);
  const last = known(front);
  if (last && sameInputs(last.inputs, inputs)) return last;
  const contrasts = new Map(
    others.map(({ index, behind, tint: other, edges }) => [
      index,
      { behind, ...contrastOf(tint, other, edges) },
    ]),
  );
  return {
    inputs,
    entry: { front, stretches: dividedInto(longest, front, here.sides.ends, of.met, contrasts) },
  };
}

/** Of each place behind what lies there, and how it stands against the area in front. */
type Contrasts = ReadonlyMap<number, Pick<BorderStretch, 'behind'> & Contrast>;

/** The pieces where one area in front meets others, divided into stretches of a length at most. */
function dividedInto(
  longest: number,
  front: number,
  ends: Float64Array,
  met: Meetings['met'],
  contrasts: Contrasts,
): readonly BorderStretch[] {
  const stretches: BorderStretch[] = [];
  for (let i = 0; i < met.length; i += 4) {
    const contrast = contrasts.get(met[i + 3] as number);
    if (!contrast) continue;
    const side = 4 * (met[i] as number);
    const ax = ends[side] as number;
    const ay = ends[side + 1] as number;
    const direction = Math.atan2((ends[side + 3] as number) - ay, (ends[side + 2] as number) - ax);
    const [ux, uy] = [Math.cos(direction), Math.sin(direction)];
    const from = met[i + 1] as number;
    const whole = (met[i + 2] as number) - from;
    // A whole number of times the longest stretch is not divided once more for rounding.
    const count = Math.max(1, Math.ceil(whole / longest - 1e-6));
    const length = whole / count;
    for (let part = 0; part < count; part++) {
      const along = from + (part + 0.5) * length;
      stretches.push({
        at: { x: ax + ux * along, y: ay + uy * along },
        length,
        direction: (direction + Math.PI) % Math.PI,
        front,
        ...contrast,
      });
    }
  }
  return stretches;
}
