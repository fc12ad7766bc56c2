declare module 'svgdom' {
  /** A window of its own whose document has an empty `<svg>` as root. */
  export function createSVGWindow(): Window & typeof globalThis;
  /** The same with an `<html>` root. */
  export function createHTMLWindow(): Window & typeof globalThis;
}
