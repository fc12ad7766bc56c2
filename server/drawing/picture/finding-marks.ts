import type { Finding, Severity } from '../../findings/finding.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, polygonPath } from '../path-data.js';
import { boxAround, overlap } from './boxes.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Reading } from '../views/reading.js';
import type { Box, Mark } from '../scene.js';
import type { ShownFinding } from './findings-for.js';

const RADIUS_EMS = 0.58;

/** Numbered marks in the picture, where the findings are, clear of names and of each other. */
export function findingMarks(
  shown: readonly ShownFinding[],
  { layout: { em }, picture }: Pick<Reading, 'layout' | 'picture'>,
  taken: readonly Box[],
): readonly Mark[] {
  const radius = RADIUS_EMS * em;
  const used = [...taken];
  return shown.flatMap(({ finding, mark, subject }) => {
    if (mark === undefined) return [];
    const at = freePlace(mark.wanted, radius, used, picture);
    used.push(boxAround(at, { width: 2 * radius, height: 2 * radius }));
    return badge(subject, finding, mark.number, at, em, subject);
  });
}

/** The mark of a severity, told by its form and not its colour alone, with the number in it if there is one. */
export function badge(
  key: string,
  { severity, message }: Pick<Finding, 'severity' | 'message'>,
  number: number | undefined,
  at: Point,
  em: number,
  subject: string,
): readonly Mark[] {
  const form = pathMark(key, badgePath(severity, at, RADIUS_EMS * em), {
    fill: severity,
    stroke: { ink: 'onFinding', weight: 'fine' },
    subject,
    tip: message,
  });
  if (number === undefined) return [form];
  const size = (number > 9 ? 0.62 : 0.78) * em;
  const low = severity === 'warning' ? 0.08 * em : 0;
  return [
    form,
    textMark(`${key}:number`, String(number), at.x, at.y + low + 0.36 * size, {
      size,
      ink: 'onFinding',
      face: 'strong',
      anchor: 'middle',
      subject,
    }),
  ];
}

export function badgePath(severity: Severity, { x, y }: Point, radius: number): string {
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
