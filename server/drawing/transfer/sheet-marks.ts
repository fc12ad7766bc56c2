import type { Point } from '../../plan/geometry/point.js';
import { pathMark } from '../marks.js';
import { linePath, polygonPath } from '../path-data.js';
import type { Hex, Mark } from '../scene.js';
import type { Sheet, SheetLayout } from './sheets.js';

const ARM = 3;
const LOZENGE = 1.5;
/** Where along the side of a sheet the marks of its strip stand. */
const ALONG = [0.25, 0.75];

/**
 * Where the marks stand by which sheets are laid over each other, on the canvas in millimetres: in the middle of every
 * strip that two neighbours show, and where four meet.
 */
export function fittingPlaces({ sheets, overlap, columns, rows }: SheetLayout): readonly Point[] {
  return sheets.flatMap(({ column, row, window }): readonly Point[] => {
    const right = window.x + window.width - overlap / 2;
    const below = window.y + window.height - overlap / 2;
    const hasRight = column + 1 < columns;
    const hasBelow = row + 1 < rows;
    return [
      ...(hasRight ? ALONG.map((part) => ({ x: right, y: window.y + part * window.height })) : []),
      ...(hasBelow ? ALONG.map((part) => ({ x: window.x + part * window.width, y: below })) : []),
      ...(hasRight && hasBelow ? [{ x: right, y: below }] : []),
    ];
  });
}

/** A lozenge on a cross at those of the places that a sheet shows: it fits when one covers the other. */
export function fittingMarks(
  places: readonly Point[],
  overlap: number,
  { window }: Sheet,
  ink: Hex,
): readonly Mark[] {
  const shown = places.filter(
    ({ x, y }) =>
      x > window.x - ARM &&
      x < window.x + window.width + ARM &&
      y > window.y - ARM &&
      y < window.y + window.height + ARM,
  );
  if (shown.length === 0) return [];
  const part = Math.min(1, (0.45 * overlap) / ARM);
  const d = shown.map(({ x, y }) => {
    const at = (across: number, down: number): Point => ({ x: x + part * across, y: y + part * down });
    return (
      linePath([at(-ARM, 0), at(ARM, 0)]) +
      linePath([at(0, -ARM), at(0, ARM)]) +
      polygonPath([at(0, -LOZENGE), at(LOZENGE, 0), at(0, LOZENGE), at(-LOZENGE, 0)])
    );
  });
  return [pathMark('fitting', d.join(''), { stroke: { ink, weight: 'hair' } })];
}

/**
 * Broken lines at the right and below, on which the cut edge of the neighbour there is laid. On the canvas,
 * millimetres.
 */
export function edgeMarks(
  { column, row, window }: Sheet,
  { columns, rows, overlap }: SheetLayout,
  ink: Hex,
): readonly Mark[] {
  const { x, y, width, height } = window;
  const upright = (at: number) =>
    linePath([
      { x: at, y },
      { x: at, y: y + height },
    ]);
  const level = (at: number) =>
    linePath([
      { x, y: at },
      { x: x + width, y: at },
    ]);
  const lays = [
    ...(column + 1 < columns ? [upright(x + width - overlap)] : []),
    ...(row + 1 < rows ? [level(y + height - overlap)] : []),
  ];
  return lays.length === 0
    ? []
    : [pathMark('laid-on', lays.join(''), { stroke: { ink, weight: 'hair', dash: 'dashed' } })];
}
