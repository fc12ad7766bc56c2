import type { Colour } from '../../plan/colour/colour.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Lead, PlanObject } from '../../plan/plan.js';
import { accentOn, beddingOn, hexOf, lineOn, mix } from './ink.js';
import { pathMark } from '../marks.js';
import { circlePath, linePath } from '../path-data.js';
import { ribbonPath } from './ribbon.js';
import { type Reading, paintOf } from '../views/reading.js';
import { ownerAt } from './region.js';
import type { Box, Dash, Mark } from '../scene.js';
import { systemName } from '../captions/words.js';
import { capitalised } from '../../plan/problems.js';

const FOCUS_RADIUS_EMS = 0.62;
const CROSSING_RADIUS_EMS = 0.2;
const LEAD_START_EMS = 0.09;
const LEAD_END_EMS = 0.18;
/** A lead stops short of the focal point, so that the point stays clear. */
const LEAD_SHORT_EMS = 0.95;

/** Several systems are told apart by their dashes, in the order of the plan. */
const DIVISION_DASHES: readonly Dash[] = ['dashed', 'dot-dashed', 'dotted', 'long'];

/** How the lines of a division are drawn, by its place among those of the plan. */
export function divisionDash(index: number): Dash {
  return DIVISION_DASHES[index % DIVISION_DASHES.length] ?? 'dashed';
}

/** Division lines and their crossings, thin and broken, in the line's colour let down with the ground's. */
export function divisionMarks({ plan, layout, subjects }: Reading): readonly Mark[] {
  const ground = plan.canvas.ground.colour;
  return plan.divisions.flatMap((division, index): Mark[] => {
    // Fourteen lines at the weight of four would be a net over the picture.
    const ink = hexOf(mix(ground, lineOn(ground), division.lines.length > 6 ? 0.45 : 0.6));
    const name = systemName(division.system);
    const key = `division:${division.system}:${index}`;
    const subject = subjects.divisions[index];
    if (division.lines.length === 0) return [];
    const lines = division.lines.map(({ from, to }) => linePath([from, to])).join('');
    return [
      pathMark(key, lines, {
        stroke: { ink, weight: 'hair', dash: divisionDash(index) },
        subject,
        tip: `${capitalised(name)}.`,
      }),
      ...division.crossings.map(({ name: crossing, at }) =>
        pathMark(`${key}:${crossing}`, circlePath(at, CROSSING_RADIUS_EMS * layout.em), {
          stroke: { ink, weight: 'fine' },
          subject,
          tip: `${capitalised(crossing)} crossing of the ${name}.`,
        }),
      ),
    ];
  });
}

export function horizonMarks({ plan, subjects }: Reading): readonly Mark[] {
  const { horizon, canvas } = plan;
  if (horizon === undefined) return [];
  const ground = canvas.ground.colour;
  const across = linePath([
    { x: 0, y: horizon.value },
    { x: canvas.width, y: horizon.value },
  ]);
  return [
    pathMark('horizon', across, {
      stroke: { ink: hexOf(mix(ground, lineOn(ground), 0.8)), weight: 'fine' },
      subject: subjects.all['horizon'] === undefined ? undefined : 'horizon',
      tip: 'Horizon.',
    }),
  ];
}

/**
 * A ring with a dot, in the chalk that stands out from what is seen there (`toneOf`), on a bedding of the opposite
 * tone so that it is clear on whatever lies there.
 */
export function focusMarks(
  { plan, layout, cells }: Reading,
  toneOf: (object: PlanObject | undefined) => Colour,
): readonly Mark[] {
  const { focus } = plan;
  if (focus === undefined) return [];
  const owner = ownerAt(cells, focus.at);
  const on = toneOf(owner === undefined ? undefined : plan.objects[owner]);
  const accent = hexOf(accentOn(on));
  const radius = FOCUS_RADIUS_EMS * layout.em;
  const ring = circlePath(focus.at, radius);
  const tip =
    focus.crossing === undefined
      ? 'Focal point.'
      : `Focal point, on the ${focus.crossing.name} crossing of the ${systemName(focus.crossing.system)}.`;
  return [
    pathMark('focus:bedding', ring, {
      stroke: { ink: hexOf(beddingOf(on)), weight: 'bold' },
      subject: 'focus',
    }),
    pathMark('focus', ring, { stroke: { ink: accent, weight: 'medium' }, subject: 'focus', tip }),
    pathMark('focus:dot', circlePath(focus.at, 0.2 * radius), {
      fill: accent,
      stroke: { ink: hexOf(beddingOf(on)), weight: 'hair' },
      subject: 'focus',
    }),
  ];
}

/** A thin ring at the focal point, in a line let down with what is seen there. */
export function faintFocusMarks({ plan, layout, cells }: Reading): readonly Mark[] {
  const { focus } = plan;
  if (focus === undefined) return [];
  const object = plan.objects[ownerAt(cells, focus.at) ?? -1];
  const on = object === undefined ? plan.canvas.ground.colour : paintOf(object, plan);
  return [
    pathMark('focus', circlePath(focus.at, FOCUS_RADIUS_EMS * layout.em), {
      stroke: { ink: hexOf(mix(on, lineOn(on), 0.7)), weight: 'fine' },
      subject: 'focus',
      tip: 'Focal point.',
    }),
  ];
}

/**
 * Leads as strokes of the chalk that swell towards where they aim, with a head.
 * @param strength how many times as broad as beside other construction
 */
export function leadMarks({ plan, layout, subjects }: Reading, on: Colour, strength = 1): readonly Mark[] {
  const accent = hexOf(accentOn(on));
  const bedding = hexOf(beddingOf(on));
  return plan.leads.flatMap((lead, index): Mark[] => {
    const d = ribbonPath(shownPart(lead, plan.focus?.at, LEAD_SHORT_EMS * layout.em), {
      start: strength * LEAD_START_EMS * layout.em,
      end: strength * LEAD_END_EMS * layout.em,
      head: (0.55 + 0.3 * strength) * layout.em,
    });
    const subject = subjects.leads[index];
    if (d === '' || subject === undefined) return [];
    return [
      pathMark(`${subject}:bedding`, d, {
        fill: bedding,
        stroke: { ink: bedding, weight: 'medium' },
        subject,
      }),
      pathMark(subject, d, { fill: accent, subject, tip: `Lead: ${lead.name}.` }),
    ];
  });
}

/** Small boxes along the leads and over the focal point, which names keep clear of. */
export function constructionBoxes({ plan, layout }: Reading): {
  readonly kept: readonly Box[];
  readonly spared: readonly Box[];
} {
  const square = ({ x, y }: Point, half: number): Box => ({
    x: x - half,
    y: y - half,
    width: 2 * half,
    height: 2 * half,
  });
  const { em } = layout;
  const kept = plan.focus === undefined ? [] : [square(plan.focus.at, 1.3 * FOCUS_RADIUS_EMS * em)];
  const along = plan.leads.flatMap(({ points }) => pointsAlong(points, 0.7 * em, 400));
  const crossings = plan.divisions.flatMap((division) => division.crossings.map(({ at }) => at));
  return {
    kept,
    spared: [
      ...along.map((point) => square(point, 0.3 * em)),
      ...crossings.map((point) => square(point, CROSSING_RADIUS_EMS * em)),
    ],
  };
}

function beddingOf(on: Colour): Colour {
  return mix(beddingOn(on), on, 0.15);
}

/** Without its last stretch when it runs into the focal point. */
function shownPart({ points }: Lead, focus: Point | undefined, short: number): readonly Point[] {
  const last = points.at(-1);
  const before = points.at(-2);
  if (last === undefined || before === undefined || focus === undefined) return points;
  const length = distance(before, last);
  if (distance(last, focus) >= short || length <= 1.5 * short) return points;
  const part = (length - (short - distance(last, focus))) / length;
  const end = { x: before.x + (last.x - before.x) * part, y: before.y + (last.y - before.y) * part };
  return [...points.slice(0, -1), end];
}

/** Points `spacing` apart along a line, about `most` of them at most. */
export function pointsAlong(points: readonly Point[], spacing: number, most: number): readonly Point[] {
  const along: Point[] = [];
  for (let i = 0; i + 1 < points.length && along.length < most; i++) {
    const from = points[i] as Point;
    const to = points[i + 1] as Point;
    const pieces = Math.min(most, Math.max(1, Math.ceil(distance(from, to) / spacing)));
    for (let piece = 0; piece <= pieces; piece++) {
      const part = piece / pieces;
      along.push({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part });
    }
  }
  return along;
}
