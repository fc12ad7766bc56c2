import type { Length, Node } from '../../../grammar/index.js';
import { type Axis, millimetresPer } from '../../plan/lengths.js';
import type { Canvas, Location } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { FixEdit } from '../finding.js';

/** Keywords stand in a gutter of this many columns, as the formatter sets them. */
const GUTTER = 7;
const DECIMALS = 2;
/** Of a canvas measured in metres, where two places would be centimetres. */
const DECIMALS_IN_METRES = 3;
/** What floating sums leave; a number that is whole but for it is not taken to the next. */
const LEFT_OVER = 1e-6;

/**
 * How a number is rounded to what is written: to the nearest; `onward`, so that the change is at least as large as
 * asked for; or `short`, so that it is at most as large.
 */
export type Rounding = 'nearest' | 'onward' | 'short';

export function replace(location: Location, text: string): FixEdit {
  return { kind: 'replace', location, text };
}

/** Right behind some words, in whatever text they stand. */
export function rightBehind(location: Location): Location {
  return { ...location, start: location.end };
}

/** A statement under another. */
export function addLine(under: Node, keyword: string, words: string): FixEdit {
  return { kind: 'add line', under, text: keywordAndWords(keyword, words) };
}

/** A statement as the formatter sets it. */
export function keywordAndWords(keyword: string, words: string): string {
  return `${keyword.padEnd(GUTTER)} ${words}`;
}

/** A length of the text that becomes another, in the unit it is written in: inches stay inches, % stays %. */
export function lengthWords(
  { unit, value }: Length,
  canvas: Canvas,
  axis: Axis,
  change: (canvasUnits: number) => number,
  rounding: Rounding,
): string {
  const perUnit = canvasUnitsPer(unit, canvas, axis);
  const changed = change(value * perUnit) / perUnit;
  const words = rounded(changed, changed - value, decimalsOf(unit ?? canvas.unit), rounding);
  if (unit === undefined) return words;
  return unit === '%' ? `${words}%` : `${words} ${unit}`;
}

/** A number as it is written, rounded with regard to the change that made it what it is. */
export function rounded(value: number, change: number, decimals: number, rounding: Rounding): string {
  const scale = 10 ** decimals;
  const upward = rounding === 'nearest' || change === 0 ? undefined : change > 0 === (rounding === 'onward');
  if (upward === undefined) return plainNumber(value, decimals);
  const whole = upward ? Math.ceil(value * scale - LEFT_OVER) : Math.floor(value * scale + LEFT_OVER);
  return plainNumber(whole / scale, decimals);
}

export function decimalsOf(unit: Length['unit']): number {
  return unit === 'm' ? DECIMALS_IN_METRES : DECIMALS;
}

function canvasUnitsPer(unit: Length['unit'], canvas: Canvas, axis: Axis): number {
  if (unit === undefined) return 1;
  if (unit === '%') return (axis === 'across' ? canvas.width : canvas.height) / 100;
  return millimetresPer(unit) / canvas.millimetresPerUnit;
}
