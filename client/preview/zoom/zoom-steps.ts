/** How large the drawing is, as a part of what it is when it fits the page; and what of it stands in the middle. */
export interface Zoom {
  readonly factor: number;
  /** Parts of the width and height of the sheet. */
  readonly x: number;
  readonly y: number;
}

export const zoomLimits = { least: 0.25, most: 16 } as const;

const steps = [0.25, 0.33, 0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 6, 8, 12, 16] as const;

/** A wheel that is turned by so many pixels makes the drawing twice as large, or half. */
const PIXELS_TO_DOUBLE = 240;
const PIXELS_A_LINE = 16;

/** The next larger step, or the next smaller; at the ends it stays. */
export function stepFrom(factor: number, direction: 'in' | 'out'): number {
  // What is all but at a step is at it.
  const next =
    direction === 'in'
      ? steps.find((step) => step > factor * 1.01)
      : steps.findLast((step) => step < factor / 1.01);
  return next ?? within(factor);
}

/** @param mode `deltaMode` of the event: pixels (0), lines (1) or pages (2) */
export function turned(factor: number, delta: number, mode: number): number {
  const pixels = mode === 0 ? delta : mode === 1 ? delta * PIXELS_A_LINE : delta * PIXELS_TO_DOUBLE;
  // One notch of a coarse wheel is no leap.
  const one = Math.min(PIXELS_TO_DOUBLE / 2, Math.max(-PIXELS_TO_DOUBLE / 2, pixels));
  return within(factor * 2 ** (-one / PIXELS_TO_DOUBLE));
}

export function within(factor: number): number {
  const near = Math.abs(factor - 1) < 0.005 ? 1 : factor;
  return Math.min(zoomLimits.most, Math.max(zoomLimits.least, near));
}

export function inPerCent(factor: number): string {
  return `${Math.round(100 * factor)} %`;
}

/**
 * How far to scroll the box, and how much of it is left for the page, so that something moves by `delta`: a box that is
 * at its end scrolls no further.
 * @param at how far the box is scrolled; `most` how far it can be
 */
export function scrollShares(
  delta: number,
  at: number,
  most: number,
): { readonly box: number; readonly page: number } {
  const to = Math.min(Math.max(0, most), Math.max(0, at + delta));
  return { box: to - at, page: delta - (to - at) };
}
