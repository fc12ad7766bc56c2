import type { LengthUnit } from '../../grammar/index.js';
import { DISTANCE_LIMITS_MILLIMETRES } from '../drawing/viewing.js';
import type { Canvas } from '../plan/plan.js';
import { millimetresPer } from '../plan/lengths.js';

/** A length as the language writes it; without a unit it counts the canvas's own. */
export interface Distance {
  readonly value: number;
  readonly unit?: LengthUnit;
}

const LENGTH = /^(\d+(?:\.\d+)?)\s*(mm|cm|m|in)?$/i;

/** Reads `3m`, `250 cm`, `120in` or `300`; `undefined` for anything else and for what is out of all reason. */
export function readDistance(text: string): Distance | undefined {
  const [, figures, unit] = LENGTH.exec(text.trim()) ?? [];
  const value = Number(figures);
  if (figures === undefined || !(value > 0)) return undefined;
  if (unit === undefined) return { value };
  const read = { value, unit: unit.toLowerCase() as LengthUnit };
  const millimetres = value * millimetresPer(read.unit);
  const { least, most } = DISTANCE_LIMITS_MILLIMETRES;
  return millimetres >= least && millimetres <= most ? read : undefined;
}

export function millimetresOf({ value, unit }: Distance, canvas: Canvas): number {
  return value * (unit === undefined ? canvas.millimetresPerUnit : millimetresPer(unit));
}
