import {
  type Coordinates,
  type Extent,
  type Length,
  type LengthUnit,
  type Node,
  t,
} from '../../grammar/index.js';
import type { CanvasSides } from './division.js';
import { isUsable, type Point } from './geometry/point.js';
import { locate, type Problems } from './problems.js';

/** International inch, 25.4 mm (ISO 31-1). */
const MILLIMETRES: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

export type Axis = 'across' | 'down';

export function millimetresPer(unit: LengthUnit): number {
  return MILLIMETRES[unit];
}

export interface CanvasUnits extends CanvasSides {
  readonly millimetresPerUnit: number;
}

/** A length in canvas units; a percentage is part of the canvas's width (`across`) or height (`down`). */
export function canvasUnits(length: Length, canvas: CanvasUnits, axis: Axis): number {
  const { unit, value } = length;
  if (unit === undefined) return value;
  if (unit === '%') return (value / 100) * (axis === 'across' ? canvas.width : canvas.height);
  return (value * MILLIMETRES[unit]) / canvas.millimetresPerUnit;
}

/** A division line's place: as {@link canvasUnits}, but a bare fraction (`1/3`) is that part of the side. */
export function divisionPlace(length: Length, canvas: CanvasUnits, axis: Axis): number {
  if (length.unit !== undefined || !length.fraction) return canvasUnits(length, canvas, axis);
  return length.value * (axis === 'across' ? canvas.width : canvas.height);
}

export function pointAt(coordinates: Coordinates, canvas: CanvasUnits): Point {
  return {
    x: canvasUnits(coordinates.x, canvas, 'across'),
    y: canvasUnits(coordinates.y, canvas, 'down'),
  };
}

/** The two sides of an extent in canvas units; reports one that is nothing, less than nothing, or beyond drawing. */
export function sidesOf(
  extent: Extent,
  canvas: CanvasUnits,
  node: Pick<Node, 'line'>,
  problems: Problems,
): Point | undefined {
  const x = sideLength(extent.width, canvas, 'across', node, problems);
  const y = sideLength(extent.height, canvas, 'down', node, problems);
  return x === undefined || y === undefined ? undefined : { x, y };
}

/** A length that something has, in canvas units; reports one that is nothing, less than nothing, or beyond drawing. */
export function sideLength(
  length: Length,
  canvas: CanvasUnits,
  axis: Axis,
  node: Pick<Node, 'line'>,
  problems: Problems,
): number | undefined {
  const units = canvasUnits(length, canvas, axis);
  if (units > 0 && isUsable(units)) return units;
  const message = units > 0 ? t('This is too large to be drawn.') : t('A size is larger than nothing.');
  problems.error('number out of range', message, locate(node, length));
  return undefined;
}
