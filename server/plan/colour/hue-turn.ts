import { parseColour, type Colour } from './colour.js';
import { formatLike } from './format.js';
import { hueDistance, hueOn, labHueOnPaintersWheel, turn, type Wheel } from './hue.js';
import { memoise } from './memo.js';
import { labHueDegrees } from './model.js';
import { fromMunsell, munsellToLab, toMunsell } from './munsell.js';
import { atValue, chromaHeld } from './painted.js';
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
 * The place on Munsell's circle whose colours at a value, and a chroma as far as it is reached, have a CIELAB hue angle.
 * The two circles run the same way round and are never a quarter turn apart, so the place is found by halving.
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

/** Whether a place comes before the one that has a CIELAB hue angle. */
function isShortOf(labHue: number, place: number, value: number, chroma: number): boolean {
  const short = (reachedChroma: number): number =>
    turn(labHue - labHueDegrees(munsellToLab(place, value, reachedChroma)));
  // Munsell's terms found of a colour are costly, and most places lie too far off for what that changes.
  const isHeld = isDisplayable(munsellToLab(place, value, chroma));
  if (isHeld || value >= SETTLED_FROM) {
    const about = short(isHeld ? chroma : chromaHeld(place, value, chroma));
    const slack = isHeld ? HELD_SLACK : CUT_SLACK;
    if (Math.abs(about - 180) < 180 - slack && Math.abs(about - 180) > slack) return about < 180;
  }
  return short(reached(place, value, chroma)) < 180;
}

/** Of darker colours, strong beyond all that can be painted, Munsell's terms are found too far off. */
const SETTLED_FROM = 1;
/**
 * Degrees: some dozen times more than hues were off in 400,000 places when chroma was taken as given, in colours that sRGB
 * holds and in those of which it holds less chroma.
 */
const HELD_SLACK = 0.02;
const CUT_SLACK = 0.25;

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
