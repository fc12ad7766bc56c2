import { type Point, distance, lengthAlong } from '../../plan/geometry/point.js';
import { polygonPath } from '../path-data.js';

export interface RibbonWidths {
  readonly start: number;
  readonly end: number;
  /** Length of the arrow's head; its width follows. */
  readonly head: number;
}

/**
 * A line of points as a stroke that swells from its start to its end and has an arrow's head there, as path data.
 * Empty for a line without length.
 */
export function ribbonPath(points: readonly Point[], { start, end, head }: RibbonWidths): string {
  const line = points.filter(
    (point, index) => index === 0 || distance(point, points[index - 1] as Point) > 1e-9,
  );
  const total = lengthAlong(line);
  const tip = line.at(-1);
  if (tip === undefined || line.length < 2 || !(total > 0)) return '';
  const headLength = Math.min(head, 0.6 * total);
  const shaft = shortened(line, headLength * 0.8);
  const left: Point[] = [];
  const right: Point[] = [];
  let run = 0;
  shaft.forEach((point, index) => {
    if (index > 0) run += distance(shaft[index - 1] as Point, point);
    const half = (start + (end - start) * (run / total)) / 2;
    const normal = normalAt(shaft, index);
    left.push({ x: point.x + normal.x * half, y: point.y + normal.y * half });
    right.unshift({ x: point.x - normal.x * half, y: point.y - normal.y * half });
  });
  const neck = shaft.at(-1) as Point;
  const angle = Math.atan2(tip.y - neck.y, tip.x - neck.x);
  const wing = (side: 1 | -1): Point => ({
    x: tip.x - headLength * Math.cos(angle) - side * 0.38 * headLength * Math.sin(angle),
    y: tip.y - headLength * Math.sin(angle) + side * 0.38 * headLength * Math.cos(angle),
  });
  return polygonPath([...left, wing(1), tip, wing(-1), ...right]);
}

/** The line without the last `by` of its length. */
function shortened(line: readonly Point[], by: number): readonly Point[] {
  let left = by;
  for (let last = line.length - 1; last > 0; last--) {
    const from = line[last - 1] as Point;
    const to = line[last] as Point;
    const length = distance(from, to);
    if (length > left) {
      const part = (length - left) / length;
      const end = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
      return [...line.slice(0, last), end];
    }
    left -= length;
  }
  return line;
}

/** To the left of the way; at a bend, of the mean direction. */
function normalAt(line: readonly Point[], index: number): Point {
  const from = line[Math.max(0, index - 1)] as Point;
  const to = line[Math.min(line.length - 1, index + 1)] as Point;
  const here = line[index] as Point;
  const before = unit(from, here);
  const after = unit(here, to);
  const sum = { x: before.x + after.x, y: before.y + after.y };
  const length = Math.hypot(sum.x, sum.y);
  const direction = length < 1e-6 ? after : { x: sum.x / length, y: sum.y / length };
  return { x: -direction.y, y: direction.x };
}

function unit(from: Point, to: Point): Point {
  const length = distance(from, to);
  return length === 0 ? { x: 0, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
