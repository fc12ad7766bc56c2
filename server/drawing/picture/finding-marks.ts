import type { Finding, Severity } from '../../findings/finding.js';
import { ruleById } from '../../findings/rules.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, polygonPath } from '../path-data.js';
import { boxAround, overlap } from './boxes.js';
import type { Point } from '../../plan/geometry/point.js';
import { regionOf } from './region.js';
import type { Reading } from '../views/reading.js';
import type { Box, Mark } from '../scene.js';
import type { NumberedFinding } from './findings-for.js';

const RADIUS_EMS = 0.58;
/** More marks than this would hide what they are about. */
const MOST_MARKED = 24;

/** Numbered marks in the picture, where the findings are, clear of names and of each other. */
export function findingMarks(
  numbered: readonly NumberedFinding[],
  reading: Reading,
  taken: readonly Box[],
): readonly Mark[] {
  const { em } = reading.layout;
  const radius = RADIUS_EMS * em;
  const used = [...taken];
  return numbered.slice(0, MOST_MARKED).flatMap(({ finding, number, subject }) => {
    const wanted = placeOf(finding, reading);
    if (wanted === undefined) return [];
    const at = freePlace(wanted, radius, used, reading.picture);
    used.push(boxAround(at, { width: 2 * radius, height: 2 * radius }));
    return badge(subject, finding, number, at, em, subject);
  });
}

/** The mark of a severity, told by its form and not its colour alone, with the number in it. */
export function badge(
  key: string,
  { severity, message }: Pick<Finding, 'severity' | 'message'>,
  number: number,
  at: Point,
  em: number,
  subject: string,
): readonly Mark[] {
  const size = (number > 9 ? 0.62 : 0.78) * em;
  const low = severity === 'warning' ? 0.08 * em : 0;
  return [
    pathMark(key, badgePath(severity, at, RADIUS_EMS * em), {
      fill: severity,
      stroke: { ink: 'onFinding', weight: 'fine' },
      subject,
      tip: message,
    }),
    textMark(`${key}:number`, String(number), at.x, at.y + low + 0.36 * size, {
      size,
      ink: 'onFinding',
      face: 'strong',
      anchor: 'middle',
      subject,
    }),
  ];
}

function badgePath(severity: Severity, { x, y }: Point, radius: number): string {
  switch (severity) {
    case 'error': {
      const reach = 1.25 * radius;
      return polygonPath([
        { x, y: y - reach },
        { x: x + reach, y },
        { x, y: y + reach },
        { x: x - reach, y },
      ]);
    }
    case 'warning':
      return polygonPath([
        { x, y: y - 1.3 * radius },
        { x: x + 1.35 * radius, y: y + radius },
        { x: x - 1.35 * radius, y: y + radius },
      ]);
    case 'hint':
      return circlePath({ x, y }, radius);
  }
}

/** At its own place, else at the first object concerned that is seen, else at the focal point for what is said of it. */
function placeOf({ at, objects, rule }: Finding, { plan, measures, cells }: Reading): Point | undefined {
  if (at !== undefined) return at;
  for (const index of objects) {
    const layer = measures.areas.layers[plan.coveringOrder.indexOf(index)];
    if (layer === undefined || layer.share <= 0) continue;
    const heart = regionOf(cells, index)?.heart;
    if (heart !== undefined) return heart;
    const [x, y] = layer.visible[0] ?? [];
    if (x !== undefined && y !== undefined) return { x, y };
  }
  return ruleById(rule)?.chapter === 'centre of interest' ? plan.focus?.at : undefined;
}

const TURNS = 16;

/** The free place nearest to the one wanted, above and to the right of it sooner than elsewhere. */
function freePlace(wanted: Point, radius: number, used: readonly Box[], picture: Box): Point {
  const inside = (value: number, from: number, length: number) =>
    Math.min(from + length - 1.4 * radius, Math.max(from + 1.4 * radius, value));
  for (let ring = 1.2; ring < 14; ring += 0.8) {
    for (let turn = 0; turn < TURNS; turn++) {
      const angle = (2 * Math.PI * (turn % 2 === 0 ? turn / 2 : -(turn + 1) / 2)) / TURNS - Math.PI / 4;
      const at = {
        x: inside(wanted.x + ring * radius * Math.cos(angle), picture.x, picture.width),
        y: inside(wanted.y + ring * radius * Math.sin(angle), picture.y, picture.height),
      };
      const box = boxAround(at, { width: 2.7 * radius, height: 2.7 * radius });
      if (!used.some((other) => overlap(box, other))) return at;
    }
  }
  return { x: inside(wanted.x, picture.x, picture.width), y: inside(wanted.y, picture.y, picture.height) };
}
