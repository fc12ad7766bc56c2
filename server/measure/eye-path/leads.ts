import type { Side } from '../../../grammar/index.js';
import { type Point, distance, lengthAlong } from '../../plan/geometry/point.js';
import { AT_EDGE } from '../../plan/leads-frame.js';
import type { Canvas, Lead, Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import type { LeadAngle, LeadMeasure } from './eye-path.js';
import { type Aims, aimOf, aimsOf, passesBy } from './leads-aim.js';
import { cornerNear, edgeNear, wayOut } from './leads-edge.js';

type CanvasSize = Pick<Canvas, 'width' | 'height' | 'diagonal'>;

/** Part of the diagonal over which the direction of a line is taken where it ends. */
const LAST_STRETCH = 0.05;
/** Part of the diagonal within which two leads arrive at one place. */
const TOGETHER = 0.05;
/** Part by which one length may be the other and differ through rounding. */
const ROUNDING = 1e-9;
/** Directions that differ by less are the same; degrees. */
const ONE_DIRECTION = 1e-6;

/** Where each lead comes from, how it goes, and how near it passes the focal point; in the order of the leads. */
export function measureLeads(plan: Plan, areas: VisibleAreas): readonly LeadMeasure[] {
  if (plan.leads.length === 0) return [];
  const aims = aimsOf(plan, areas);
  return plan.leads.map((lead) => measureLead(lead, plan.canvas, aims));
}

/** One lead; its length, places and distances in canvas units. */
export function measureLead(lead: Lead, canvas: CanvasSize, aims: Aims): LeadMeasure {
  const { focus } = aims;
  const seen = seenPart(lead);
  const end = seen.at(-1) ?? { x: NaN, y: NaN };
  const heading = headingOf(seen, canvas);
  const nearest = focus && nearestTo(focus, seen, unitTowards(heading));
  const miss = focus && nearest && distance(focus, nearest);
  const leaves = wayOut(end, unitTowards(heading), canvas);
  const aim = aimOf(lead, aims);
  const isCarried = seen.length < lead.points.length;
  const passes =
    aim && (isCarried || aim.kind === 'focus')
      ? passesBy(aim, [...seen, ...(leaves ? [leaves.at] : [])], miss ?? 0, aims)
      : 0;
  return {
    from: startOf(lead, canvas),
    length: lengthAlong(lead.points),
    end,
    heading,
    arrival: headingOf(lead.points, canvas),
    ...(miss === undefined || !nearest ? {} : { miss, missShare: miss / canvas.diagonal, nearest }),
    ...(aim ? { aim, ...(passes === undefined ? {} : { passes }) } : {}),
    ...(leaves ? { leaves } : {}),
  };
}

/**
 * For leads that arrive within 5 % of the diagonal of the focal point, or at the same object: the angle between each
 * and the next one round. In the order of the leads.
 */
export function anglesBetween(
  { leads, canvas, focus }: Plan,
  measured: readonly LeadMeasure[],
): readonly LeadAngle[] {
  const meetings = new Map<number | 'focus', number[]>();
  leads.forEach(({ points, to }, index) => {
    const end = points.at(-1);
    const isAtFocus = focus && end && distance(end, focus.at) <= TOGETHER * canvas.diagonal * (1 + ROUNDING);
    const place = isAtFocus ? 'focus' : to.names === 'object' ? to.object : undefined;
    if (place === undefined) return;
    const meeting = meetings.get(place);
    if (meeting) meeting.push(index);
    else meetings.set(place, [index]);
  });
  return [...meetings.values()]
    .flatMap((meeting) => neighboursRound(meeting, measured))
    .sort((a, b) => a.one - b.one || a.other - b.other);
}

/** How many leads come in over each edge of the canvas; one from a corner over both. */
export function sidesOfLeads(measured: readonly LeadMeasure[]): Readonly<Record<Side, number>> {
  const counts = { left: 0, right: 0, top: 0, bottom: 0 };
  for (const side of measured.flatMap(sidesOfStart)) counts[side]++;
  return counts;
}

/** The edges of the canvas that a lead comes in over: none, one, or two at a corner. */
export function sidesOfStart({ from }: LeadMeasure): readonly Side[] {
  if (from.kind === 'edge') return [from.side];
  if (from.kind !== 'corner') return [];
  const [upright, level] = from.corner.split(' ');
  return [level === 'left' ? 'left' : 'right', upright === 'upper' ? 'top' : 'bottom'];
}

/** The smaller angle between two directions, degrees 0 to 180. */
export function turnBetween(one: number, other: number): number {
  const turn = Math.abs(one - other) % 360;
  return Math.min(turn, 360 - turn);
}

/** Beyond the edge of the object that carries it nothing is seen of a lead, unless it names further places. */
function seenPart({ points, along, through }: Lead): readonly Point[] {
  const stretch = along?.stretch;
  return stretch && through.length === 0 ? points.slice(0, stretch.last + 1) : points;
}

function startOf({ points, along, from }: Lead, canvas: CanvasSize): LeadMeasure['from'] {
  const [start] = points;
  const reach = AT_EDGE * canvas.diagonal;
  const corner = start && cornerNear(start, canvas, reach);
  if (corner) return { kind: 'corner', corner };
  const side = start && edgeNear(start, canvas, reach);
  if (side) return { kind: 'edge', side };
  if (from?.names === 'object') return { kind: 'object', object: from.object };
  if (!from && along) return { kind: 'object', object: along.object };
  return { kind: 'inside' };
}

/** Over the last 5 % of the diagonal, so that a small turn at the very end does not decide; degrees. */
function headingOf(line: readonly Point[], { diagonal }: CanvasSize): number {
  const end = line.at(-1);
  if (!end) return 0;
  let left = LAST_STRETCH * diagonal;
  let back = end;
  for (let i = line.length - 2; i >= 0 && left > 0; i--) {
    const before = line[i];
    if (!before) break;
    const step = distance(back, before);
    const part = step > left ? left / step : 1;
    back = { x: back.x + (before.x - back.x) * part, y: back.y + (before.y - back.y) * part };
    left -= step;
  }
  const degrees = (Math.atan2(end.y - back.y, end.x - back.x) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

function unitTowards(degrees: number): Point {
  const radians = (degrees * Math.PI) / 180;
  return { x: Math.cos(radians), y: Math.sin(radians) };
}

/**
 * On the ray from the end of a line or on the line; of places as near that on the ray, then the first along the line.
 */
function nearestTo(place: Point, line: readonly Point[], onward: Point): Point | undefined {
  const end = line.at(-1);
  if (!end) return undefined;
  const ahead = Math.max(0, (place.x - end.x) * onward.x + (place.y - end.y) * onward.y);
  let nearest = { x: end.x + ahead * onward.x, y: end.y + ahead * onward.y };
  line.forEach((to, index) => {
    const from = line[index - 1];
    if (!from) return;
    const length = distance(from, to);
    const along =
      length > 0 ? ((place.x - from.x) * (to.x - from.x) + (place.y - from.y) * (to.y - from.y)) / length : 0;
    const part = length > 0 ? Math.min(1, Math.max(0, along / length)) : 0;
    const on = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
    if (distance(on, place) < distance(nearest, place) * (1 - ROUNDING)) nearest = on;
  });
  return nearest;
}

/**
 * Leads from one direction are each beside the next of them; the first of them stands for all beside those from the
 * next direction round, so that it does not matter which way round one goes.
 */
function neighboursRound(meeting: readonly number[], measured: readonly LeadMeasure[]): readonly LeadAngle[] {
  const arrival = (lead: number): number => measured[lead]?.arrival ?? 0;
  const directions = directionsOf(meeting, arrival);
  const angle = (lead: number, next: number): LeadAngle => ({
    one: Math.min(lead, next),
    other: Math.max(lead, next),
    degrees: turnBetween(arrival(lead), arrival(next)),
  });
  const firsts = directions.flatMap(([first]) => first ?? []);
  const pairs = firsts.length === 2 ? firsts.slice(0, 1) : firsts.length < 2 ? [] : firsts;
  return [
    ...directions.flatMap((leads) => leads.slice(1).map((next, index) => angle(leads[index] ?? next, next))),
    ...pairs.map((lead, index) => angle(lead, firsts[(index + 1) % firsts.length] ?? lead)),
  ];
}

/** Leads by the direction that they arrive in, once round; those of one direction in their own order. */
function directionsOf(
  leads: readonly number[],
  arrival: (lead: number) => number,
): readonly (readonly number[])[] {
  const round = [...leads].sort((a, b) => arrival(a) - arrival(b));
  const directions: number[][] = [];
  for (const lead of round) {
    const last = directions.at(-1);
    const before = last?.[0];
    if (last && before !== undefined && turnBetween(arrival(before), arrival(lead)) <= ONE_DIRECTION)
      last.push(lead);
    else directions.push([lead]);
  }
  const [first, last] = [directions[0], directions.at(-1)];
  const [one, other] = [first?.[0], last?.[0]];
  // Just below 360 degrees is the direction of 0.
  if (first && last && first !== last && one !== undefined && other !== undefined) {
    if (turnBetween(arrival(one), arrival(other)) <= ONE_DIRECTION)
      directions[0] = [...first, ...(directions.pop() ?? [])];
  }
  return directions.map((direction) => direction.sort((a, b) => a - b));
}
