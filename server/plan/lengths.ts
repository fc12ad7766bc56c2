import type { Coordinates, Length, LengthUnit } from '../../grammar/index.js';
import type { CanvasSides } from './division.js';
import type { Point } from './geometry/point.js';

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

/** Two lengths of which the last may give the unit of both: `24 x 30 cm`. */
export function sharedUnit(first: Length, second: Length): readonly [Length, Length] {
  if (first.unit !== undefined || second.unit === undefined) return [first, second];
  return [{ ...first, unit: second.unit }, second];
}
