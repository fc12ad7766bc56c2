import type { Box, Spot, View } from '../../../server/drawing/scene.js';

/** From the drawing to the screen, as `getScreenCTM` gives it. */
export type ScreenMatrix = Pick<DOMMatrixReadOnly, 'a' | 'b' | 'c' | 'd' | 'e' | 'f'>;

/** The place of the drawing, in canvas units, that lies under a place of the screen, in CSS pixels. */
export function onDrawing({ x, y }: Spot, { a, b, c, d, e, f }: ScreenMatrix): Spot {
  const determinant = a * d - b * c;
  return {
    x: (d * (x - e) - c * (y - f)) / determinant,
    y: (a * (y - f) - b * (x - e)) / determinant,
  };
}

/** How many canvas units a CSS pixel of the screen is. */
export function unitsPerPixel({ a, b }: ScreenMatrix): number {
  return 1 / Math.hypot(a, b);
}

/**
 * A place of the plan as a place of the drawing, and the other way round: they differ in the view that turns the
 * picture round.
 */
export function turned({ x, y }: Spot, picture: Box, view: View): Spot {
  return view === 'mirror' ? { x: 2 * picture.x + picture.width - x, y } : { x, y };
}

export function sum(one: Spot, other: Spot): Spot {
  return { x: one.x + other.x, y: one.y + other.y };
}

export function difference(to: Spot, from: Spot): Spot {
  return { x: to.x - from.x, y: to.y - from.y };
}

export function distance(one: Spot, other: Spot): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
