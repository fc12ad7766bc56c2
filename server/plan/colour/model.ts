/** CIELAB under D65 for the 2 degree observer: L* 0 to 100, then a* (green to red) and b* (blue to yellow). */
export type Lab = readonly [lightness: number, a: number, b: number];

/** How the painter wrote a colour, so that an editor can write it back the same way. */
export type Notation =
  | { readonly kind: 'hex' | 'css' | 'munsell'; readonly text: string }
  /** Worked out, not written: a colour shown at another value, a mixture, a mean. */
  | { readonly kind: 'computed' };

/** An opaque colour. Never changed after it is made, so one object may be shared by every place that uses it. */
export interface Colour {
  readonly lab: Lab;
  readonly notation: Notation;
}

/** What became of reading a colour; `suggestion` is a text that reads and was probably meant. */
export type ColourReading =
  | { readonly ok: true; readonly colour: Colour }
  | { readonly ok: false; readonly reason: string; readonly suggestion?: string };

/** A colour that was worked out rather than written. */
export function computedColour(lab: Lab): Colour {
  return { lab, notation: { kind: 'computed' } };
}

/** CIELAB chroma C*ab: the distance from grey. Not Munsell chroma, which is about a fifth of it. */
export function labChroma([, a, b]: Lab): number {
  return Math.hypot(a, b);
}

/** CIELAB hue angle in degrees, 0 to 360; 0 for a true grey, which has no hue. */
export function labHueDegrees([, a, b]: Lab): number {
  return (Math.atan2(b, a) * (180 / Math.PI) + 360) % 360;
}

/** Below this C*ab a colour can't be told from grey: a CIELAB distance of about 1 is the least that is seen. */
const NEUTRAL_LAB_CHROMA = 1;

/** Whether a colour is a grey, black or white: one without a hue to speak of. */
export function isNeutral(colour: Colour): boolean {
  return labChroma(colour.lab) < NEUTRAL_LAB_CHROMA;
}
