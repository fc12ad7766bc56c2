import type { DivisionSystem } from '../../grammar/index.js';
import { circlePath, linePath, number, rectanglePath } from '../drawing/path-data.js';
import { divide } from '../plan/division.js';
import { pathData } from '../plan/geometry/path.js';
import type { Point } from '../plan/geometry/point.js';
import type { Canvas, Division, PlanObject } from '../plan/plan.js';

type Sides = Pick<Canvas, 'width' | 'height'>;

/** The longer side of a small drawing, CSS pixels. */
const LONGER_SIDE = 150;
/** Of path data: a longer outline would make a list of offers heavy, and can't be told apart so small. */
const LONGEST_PATH = 2_000;

/** How a division system lies on a canvas, as SVG; nothing where it gives no lines there, or none of its own. */
export function divisionDrawing(canvas: Sides, system: DivisionSystem): string | undefined {
  const { lines } = divide(canvas, system);
  return lines.length === 0 ? undefined : drawing(canvas, divisionPath(lines), '');
}

/** Where a crossing of a division lies, as SVG. */
export function crossingDrawing(canvas: Canvas, { lines }: Division, at: Point): string {
  return drawing(canvas, divisionPath(lines), circlePath(at, canvas.diagonal / 24));
}

/** An object in its place on the canvas, as SVG; nothing without a shape, or with one that is too long. */
export function objectDrawing(canvas: Canvas, { outline }: PlanObject): string | undefined {
  const path = outline.rings.length === 0 ? '' : pathData(outline, 2);
  return path === '' || path.length > LONGEST_PATH ? undefined : drawing(canvas, '', path, 'fill');
}

function divisionPath(lines: Division['lines']): string {
  return lines.map(({ from, to }) => linePath([from, to])).join('');
}

/** Of numbers alone: no word of a plan comes into it. On paper of its own, so that it reads in dark themes too. */
function drawing(
  { width, height }: Sides,
  lines: string,
  mark: string,
  markedBy: 'line' | 'fill' = 'line',
): string {
  const unit = Math.max(width, height) / LONGER_SIDE;
  const [across, down] = [width, height].map((side) => number(side / unit));
  const frame = { x: unit / 2, y: unit / 2, width: width - unit, height: height - unit };
  const path = (d: string, look: string): string => (d === '' ? '' : `<path d="${d}" ${look}/>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}" height="${down}" viewBox="0 0 ${number(width)} ${number(height)}">`,
    path(rectanglePath(frame), `fill="#f4f0e8" stroke="#6b655b" stroke-width="${number(unit)}"`),
    path(lines, `fill="none" stroke="#6b655b" stroke-width="${number(unit)}"`),
    path(
      mark,
      markedBy === 'fill'
        ? 'fill="#5b564d" fill-rule="evenodd"'
        : `fill="none" stroke="#a3281c" stroke-width="${number(2 * unit)}"`,
    ),
    '</svg>',
  ].join('');
}
