/** Nine places: no figure that is measured loses anything, and sums still come to one within 1e-6. */
export function round(value: number): number {
  return Number(value.toFixed(9)) + 0;
}

/** A place on the canvas for a document. */
export function pointOf({ x, y }: { readonly x: number; readonly y: number }) {
  return { x: round(x), y: round(y) };
}
