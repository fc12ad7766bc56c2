import type { EyePathMeasure, LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { GROUND } from '../../measure/borders/borders.js';
import type { Colour } from '../../plan/colour/colour.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import { length } from '../../findings/words/words.js';
import type { Lead, Plan } from '../../plan/plan.js';
import type { Side } from '../../../grammar/index.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, polygonPath, rectanglePath } from '../path-data.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { boxAround } from './boxes.js';
import { accentOn, beddingOn, hexOf, lineOn } from './ink.js';
import { pointsAlong } from './construction.js';

/** Nearer than this part of the diagonal a lead is drawn as running into what it aims at: about its own breadth. */
export const HIT = 0.01;
const PLATE_EMS = 1.1;
/** The most that is drawn of a way out. */
const EXIT_EMS = 4;

/** Whether a lead passes what it aims at by so far that it can be seen. */
export function misses({ passes = 0 }: LeadMeasure, { canvas }: Plan): boolean {
  return Number.isFinite(passes) && passes > HIT * canvas.diagonal;
}

interface Missed {
  readonly lead: Lead;
  readonly subject: string;
  /** Where what is seen of it ends. */
  readonly end: Point;
  /**
   * Where the eye goes on to: out of the canvas, or where it is nearest to the focal point when it ends off the canvas.
   */
  readonly on: Point;
  /** Canvas units. */
  readonly miss: number;
  /** Where its line passes the focal point. */
  readonly nearest: Point;
  readonly focus: Point;
}

/** The leads that pass the focal point by. */
export function missed({ plan, subjects }: Reading, { leads }: EyePathMeasure): readonly Missed[] {
  const focus = plan.focus?.at;
  if (focus === undefined) return [];
  return plan.leads.flatMap((lead, index): Missed[] => {
    const measure = leads[index];
    const subject = subjects.leads[index];
    if (measure?.nearest === undefined || subject === undefined) return [];
    if (measure.aim?.kind !== 'focus' || !misses(measure, plan)) return [];
    const { miss = 0, nearest, end, leaves } = measure;
    return [{ lead, subject, miss, nearest, focus, end, on: leaves?.at ?? nearest }];
  });
}

/** Small boxes along the ways on which leads are carried on, for names to keep clear of. */
export function missedBoxes(reading: Reading, path: EyePathMeasure): readonly Box[] {
  const { em } = reading.layout;
  return missed(reading, path)
    .flatMap(({ end, on, nearest, focus }) => [
      ...pointsAlong([end, on], em, 60),
      ...pointsAlong([nearest, focus], em, 60),
    ])
    .map((point) => boxAround(point, { width: 0.5 * em, height: 0.5 * em }));
}

/** A lead that misses, carried on to where it leaves the canvas, and how far off it passes the focal point. */
export function carriedOnMarks(reading: Reading, path: EyePathMeasure, on: Colour): readonly Mark[] {
  const accent = hexOf(accentOn(on));
  return missed(reading, path).flatMap(({ lead, subject, end, on: out, miss, nearest, focus }): Mark[] => [
    ...(distance(end, out) < 1e-6
      ? []
      : [
          pathMark(`${subject}:on`, linePath([end, out]), {
            stroke: { ink: accent, weight: 'medium', dash: 'dashed' },
            subject,
          }),
        ]),
    pathMark(`${subject}:miss`, linePath([nearest, focus]), {
      stroke: { ink: hexOf(lineOn(on)), weight: 'fine' },
      subject,
      tip: `Lead ${lead.name} passes ${length(miss, reading.plan.canvas)} from the focal point.`,
    }),
  ]);
}

/** A wedge on the mount where each lead comes in over the edge. */
export function entryMarks(
  { plan, layout, picture, subjects }: Reading,
  { leads }: EyePathMeasure,
): readonly Mark[] {
  const { em } = layout;
  return plan.leads.flatMap((lead, index): Mark[] => {
    const from = leads[index]?.from;
    const start = lead.points[0];
    const subject = subjects.leads[index];
    if (start === undefined || from === undefined || subject === undefined) return [];
    if (from.kind !== 'edge' && from.kind !== 'corner') return [];
    const middle = { x: picture.width / 2, y: picture.height / 2 };
    const inward =
      from.kind === 'edge'
        ? INWARD[from.side]
        : { x: Math.sign(middle.x - start.x), y: Math.sign(middle.y - start.y) };
    const tip = { x: start.x - 0.3 * em * inward.x, y: start.y - 0.3 * em * inward.y };
    return [
      pathMark(`${subject}:entry`, wedge(tip, inward, 0.75 * em), {
        fill: 'ink',
        subject,
        tip: `Lead ${lead.name} comes in here.`,
      }),
    ];
  });
}

const INWARD: Readonly<Record<Side, Point>> = {
  left: { x: 1, y: 0 },
  right: { x: -1, y: 0 },
  top: { x: 0, y: 1 },
  bottom: { x: 0, y: -1 },
};

/** A triangle whose point lies at a place and looks along a direction. */
function wedge(tip: Point, { x, y }: Point, size: number): string {
  const long = Math.hypot(x, y) || 1;
  const along = { x: (x / long) * size, y: (y / long) * size };
  return polygonPath([
    tip,
    { x: tip.x - along.x - 0.5 * along.y, y: tip.y - along.y + 0.5 * along.x },
    { x: tip.x - along.x + 0.5 * along.y, y: tip.y - along.y - 0.5 * along.x },
  ]);
}

/** The way from stop to stop, an arrow's point in the middle of each stretch. */
export function stopLineMarks({ layout }: Reading, places: readonly Point[], on: Colour): readonly Mark[] {
  const { em } = layout;
  const ink = hexOf(lineOn(on));
  const bedding = hexOf(beddingOn(on));
  return places.slice(1).flatMap((to, index): Mark[] => {
    const from = places[index];
    if (from === undefined || distance(from, to) < 1.6 * PLATE_EMS * em) return [];
    const part = { x: (to.x - from.x) / distance(from, to), y: (to.y - from.y) / distance(from, to) };
    const middle = { x: (from.x + to.x) / 2 + 0.4 * em * part.x, y: (from.y + to.y) / 2 + 0.4 * em * part.y };
    const line = linePath([from, to]);
    const key = `stop:${index + 1}:way`;
    return [
      pathMark(`${key}:bedding`, line, { stroke: { ink: bedding, weight: 'heavy' } }),
      pathMark(key, line, { stroke: { ink, weight: 'medium', dash: 'dotted' } }),
      pathMark(`${key}:head`, wedge(middle, part, 0.8 * em), {
        fill: ink,
        stroke: { ink: bedding, weight: 'hair' },
      }),
    ];
  });
}

/** The stops, numbered in their order. */
export function stopMarks(
  { plan, layout, subjects }: Reading,
  { stops }: EyePathMeasure,
  places: readonly Point[],
  on: Colour,
): readonly Mark[] {
  return stops.flatMap(({ object, at }, index) =>
    numberPlate(`stop:${index + 1}`, index + 1, places[index] ?? at, layout.em, on, {
      subject: subjects.objects[object],
      tip: `Stop ${index + 1} of ${stops.length}: ${plan.objects[object]?.name ?? ''}.`,
    }),
  );
}

/** Of the square that a numbered plate covers with its edge. */
export function plateSide(em: number): number {
  return 1.15 * PLATE_EMS * em;
}

/**
 * A number on a square of the line's ink, edged so that it stands out from whatever lies there; findings have other
 * forms.
 */
export function numberPlate(
  key: string,
  count: number,
  at: Point,
  em: number,
  on: Colour,
  about: { readonly subject?: string | undefined; readonly tip?: string | undefined },
): readonly Mark[] {
  const size = (count > 9 ? 0.68 : 0.84) * em;
  const paper = hexOf(beddingOn(on));
  return [
    pathMark(key, rectanglePath(boxAround(at, { width: PLATE_EMS * em, height: PLATE_EMS * em })), {
      fill: hexOf(lineOn(on)),
      stroke: { ink: paper, weight: 'medium' },
      ...about,
    }),
    textMark(`${key}:number`, String(count), at.x, at.y + 0.36 * size, {
      size,
      ink: paper,
      face: 'strong',
      anchor: 'middle',
      subject: about.subject,
    }),
  ];
}

/** An arrow along a strong border that runs out of the picture, up to the edge there. */
export function exitMarks(
  { plan, layout, subjects }: Reading,
  { exits }: EyePathMeasure,
  on: Colour,
): readonly Mark[] {
  const { em } = layout;
  const ink = hexOf(lineOn(on));
  const bedding = hexOf(beddingOn(on));
  return exits.flatMap(({ at, side, areas, heading, length: run }, index): Mark[] => {
    const angle = (heading * Math.PI) / 180;
    const outward = { x: Math.cos(angle), y: Math.sin(angle) };
    const inside = (by: number): Point => ({ x: at.x - by * outward.x, y: at.y - by * outward.y });
    const tail = inside(Math.min(EXIT_EMS * em, Math.max(run, 2.2 * em)));
    const neck = inside(0.7 * em);
    const [front] = areas;
    const about = {
      subject: front === GROUND ? undefined : subjects.objects[front],
      tip: `A way out at the ${side} edge, between ${areas.map((area) => areaName(area, plan.objects)).join(' and ')}.`,
    };
    const key = `exit:${index + 1}`;
    return [
      pathMark(`${key}:bedding`, linePath([tail, neck]), { stroke: { ink: bedding, weight: 'bold' } }),
      pathMark(`${key}:shaft`, linePath([tail, neck]), { stroke: { ink, weight: 'heavy' }, ...about }),
      pathMark(key, wedge(at, outward, 1.1 * em), {
        fill: ink,
        stroke: { ink: bedding, weight: 'fine' },
        ...about,
      }),
    ];
  });
}

/** How an area of a border is called: its object's name, or the ground. */
export function areaName(area: number, objects: readonly { readonly name: string }[]): string {
  return area === GROUND ? 'the bare ground' : (objects[area]?.name ?? '');
}
