import { parseColour, type Colour } from './colour.js';
import { formatLike } from './format.js';
import { hueDistance, hueOn, labHueOnPaintersWheel, turn, type Wheel } from './hue.js';
import { memoise } from './memo.js';
import { type Lab, labHueDegrees } from './model.js';
import { fromMunsell, munsellToLab, toMunsell } from './munsell.js';
import { CHROMA_STEP, atValue } from './painted.js';
import { isDisplayable } from './srgb.js';
import { valueOf } from './value.js';

/** A colour changed, and how a painter would write it in the notation of the colour that it was. */
export interface Rewritten {
  readonly text: string;
  /** What the text reads as; its notation may round. */
  readonly colour: Colour;
}

const ROUNDS = 24;
const remember = memoise<Rewritten | undefined>(2048);

/**
 * A colour turned to another place of a wheel (degrees), its Munsell value and chroma kept; where sRGB has no such
 * colour, the most chroma that it has there. Undefined for a neutral, which has no hue to turn.
 */
export function turnedTo(colour: Colour, hueDegrees: number, wheel: Wheel): Rewritten | undefined {
  return remember(`${keyOf(colour)} ${hueDegrees} ${wheel}`, () => {
    if (hueOn(colour, wheel) === undefined) return undefined;
    const { chroma } = toMunsell(colour);
    const value = valueOf(colour);
    const place =
      wheel === 'munsell' ? hueDegrees : munsellPlaceOf(labHueOnPaintersWheel(hueDegrees), value, chroma);
    return rewritten(colour, place, value, reached(place, value, chroma));
  });
}

/** A colour at another Munsell chroma, its hue and value kept, as far as sRGB holds it. Undefined for a neutral. */
export function withChroma(colour: Colour, chroma: number): Rewritten | undefined {
  const { hueDegrees } = toMunsell(colour);
  if (hueDegrees === undefined) return undefined;
  return remember(`${keyOf(colour)} /${chroma}`, () => {
    const value = valueOf(colour);
    return rewritten(colour, hueDegrees, value, reached(hueDegrees, value, chroma));
  });
}

function keyOf({ lab, notation }: Colour): string {
  return `${lab.join(' ')} ${notation.kind === 'computed' ? '' : notation.text}`;
}

function rewritten(colour: Colour, place: number, value: number, chroma: number): Rewritten | undefined {
  const text = formatLike(fromMunsell(turn(place), value, chroma), colour.notation);
  const reading = parseColour(text);
  return reading.ok ? { text, colour: reading.colour } : undefined;
}

function reached(place: number, value: number, chroma: number): number {
  return atValue(fromMunsell(turn(place), value, chroma), value).chromaReached;
}

/**
 * The place on Munsell's circle whose colours at a value, and a chroma as far as it is reached, have a CIELAB hue
 * angle. The two circles run the same way round and are never a quarter turn apart, so the place is found by halving.
 */
function munsellPlaceOf(labHue: number, value: number, chroma: number): number {
  // 10RP, where Munsell's circle begins, lies near 0 degrees in CIELAB.
  let low = labHue - 90;
  let high = labHue + 90;
  for (let round = 0; round < ROUNDS && high - low > 0.01; round++) {
    const middle = (low + high) / 2;
    if (isShortOf(labHue, turn(middle), value, chroma)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Whether a place comes before the one that has a CIELAB hue angle. What chroma is reached there is found no more
 * exactly than it takes: to find Munsell's terms of a colour is costly, and most places lie far off.
 */
function isShortOf(labHue: number, place: number, value: number, chroma: number): boolean {
  const hueAt = (reachedChroma: number): number => labHueDegrees(munsellToLab(place, value, reachedChroma));
  return (
    plainlyShortOf(labHue, place, value, chroma) ?? turn(labHue - hueAt(reached(place, value, chroma))) < 180
  );
}

/** `isShortOf` where it can be told by what is about the chroma reached. */
function plainlyShortOf(labHue: number, place: number, value: number, chroma: number): boolean | undefined {
  if (value < STEADY_FROM || value > STEADY_TO) return undefined;
  const whole = munsellToLab(place, value, chroma);
  if (isDisplayable(whole)) return plainly(labHue, whole, INVERTED_TO);
  let held = 0;
  let beyond = chroma;
  while (beyond - held > CHROMA_STEP) {
    const middle = (held + beyond) / 2;
    const lab = munsellToLab(place, value, middle);
    if (isDisplayable(lab)) held = middle;
    else beyond = middle;
    // What is reached may be a step less than what is held.
    const short = plainly(labHue, lab, beyond - held + 2 * CHROMA_STEP);
    if (short !== undefined) return short;
  }
  return undefined;
}

/** Whether the hue of a colour comes short of one, whatever it is with so much chroma more or less. */
function plainly(labHue: number, lab: Lab, chroma: number): boolean | undefined {
  const ahead = turn(labHue - labHueDegrees(lab));
  const most = DEGREES_A_CHROMA * chroma;
  return ahead % 180 > most && 180 - (ahead % 180) > most ? ahead < 180 : undefined;
}

/** Values between which chroma changes a hue little, and Munsell's terms of a colour are found well. */
const STEADY_FROM = 1;
const STEADY_TO = 9;
/** Twice what was the most in three million places: how far the CIELAB hue of a Munsell hue turns with chroma. */
const DEGREES_A_CHROMA = 10;
/** More than chroma is off by when Munsell's terms of a colour are found. */
const INVERTED_TO = 0.002;

/**
 * A colour turned the least until it keeps a rule, tried from `start` a degree at a time towards `end` on a wheel, so
 * that what is written keeps it too in spite of its rounding. Undefined when none does.
 */
export function turnedUntil(
  colour: Colour,
  wheel: Wheel,
  { start, end }: { readonly start: number; readonly end: number },
  keeps: (hueDegrees: number) => boolean,
): Rewritten | undefined {
  const far = hueDistance(start, end);
  const way = turn(end - start) <= 180 ? 1 : -1;
  for (let step = 0; step <= far; step += STEP_DEGREES) {
    const turned = turnedTo(colour, turn(start + way * step), wheel);
    const hue = turned && hueOn(turned.colour, wheel);
    if (turned && hue !== undefined && keeps(hue)) return turned;
  }
  return undefined;
}

const STEP_DEGREES = 1;
