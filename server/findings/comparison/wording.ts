import { warmthOf, LEAST_CHROMA } from '../../plan/colour/hue-warmth.js';
import { difference } from '../../plan/colour/difference.js';
import type { Colour } from '../../plan/colour/model.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import { formatLike } from '../../plan/colour/format.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Canvas } from '../../plan/plan.js';
import type { Frame } from '../../measure/comparison/frame.js';
import { counted, length, percent } from '../words/words.js';

/**
 * `6 cm to the right and 2 cm up`; on canvases of different sizes `7 % of the width to the right`. Empty when it
 * rounds to nothing.
 */
export function moveInWords(
  { right, down }: { readonly right: number; readonly down: number },
  { canvas, isSameSize }: Frame,
): string {
  const told = (by: number, side: 'width' | 'height'): string | undefined => {
    const size = Math.abs(by);
    const words = isSameSize ? length(size, canvas) : `${percent(size / canvas[side])} of the ${side}`;
    return /^(?:0 |under )/u.test(words) ? undefined : words;
  };
  const across = told(right, 'width');
  const upright = told(down, 'height');
  return inWords([
    ...(across === undefined ? [] : [`${across} to the ${right < 0 ? 'left' : 'right'}`]),
    ...(upright === undefined ? [] : [`${upright} ${down < 0 ? 'up' : 'down'}`]),
  ]);
}

/** `90 × 60 cm` */
export function sizeInWords({ width, height, unit }: Canvas): string {
  return `${plainNumber(width, 3)} × ${plainNumber(height, 3)} ${unit}`;
}

/** Least difference that is told of shares of the picture, parts of one: less is rounded away in whole per cent. */
export const LEAST_SHARE = 0.005;

/** `71 % of the picture instead of 68 %` */
export function shareInWords(now: number, before: number): string {
  return `${percent(now)} of the picture instead of ${percent(before)}`;
}

/**
 * Munsell chroma and value, and the part of the warm side, by which colours must differ for it to be said how.
 * Heuristic.
 */
const TOLD = { chroma: 1, value: 0.5, warmth: 0.1 } as const;

/** How a colour came to be another: `CIEDE2000 12, warmer and duller`. */
export function colourChange(before: Colour, now: Colour): string {
  const [one, other] = [toMunsell(before), toMunsell(now)];
  const [warmth, was] = [warmthOf(now), warmthOf(before)];
  const hasHues = Math.min(one.chroma, other.chroma) >= LEAST_CHROMA;
  const warmer = hasHues && warmth !== undefined && was !== undefined ? warmth - was : 0;
  const ways = [
    ...compared(other.value - one.value, TOLD.value, 'lighter', 'darker'),
    ...compared(warmer, TOLD.warmth, 'warmer', 'cooler'),
    ...compared(other.chroma - one.chroma, TOLD.chroma, 'stronger', 'duller'),
  ];
  const far = `CIEDE2000 ${plainNumber(difference(before, now), 1)}`;
  return ways.length === 0 ? far : `${far}, ${inWords(ways)}`;
}

function compared(by: number, least: number, more: string, less: string): readonly string[] {
  return Math.abs(by) < least ? [] : [by > 0 ? more : less];
}

/** A colour as the painter wrote it. */
export function colourText(colour: Colour): string {
  return colour.notation.kind === 'computed' ? formatLike(colour, colour.notation) : colour.notation.text;
}

/** CIEDE2000 under which nobody sees that a colour is another. */
export const LEAST_DIFFERENCE = 0.5;

/** `half a step`, `one step`, `two steps`, `1.5 steps` */
export function stepsInWords(steps: number): string {
  if (Math.abs(steps - 0.5) < 0.05) return 'half a step';
  const told = plainNumber(steps, 1);
  return told === '1' ? 'one step' : `${Number.isInteger(Number(told)) ? counted(Number(told)) : told} steps`;
}

/** Words of the plan in quotation marks, cut where they are long. */
export function said(text: string): string {
  const line = text.replace(/\s+/gu, ' ').trim();
  return `“${line.length <= LONGEST_SAID ? line : `${line.slice(0, LONGEST_SAID - 2).trimEnd()} …`}”`;
}

const LONGEST_SAID = 90;
