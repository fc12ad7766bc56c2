import { memoise } from './memo.js';
import { computedColour, type Colour } from './model.js';
import { munsellToLab, toMunsell } from './munsell.js';
import { isDisplayable } from './srgb.js';
import { valueOf } from './value.js';

/** A colour as it will be painted at a value. Chroma is Munsell chroma. */
export interface Painted {
  readonly shown: Colour;
  readonly chromaWanted: number;
  readonly chromaReached: number;
  /** Whether the chroma is reached, to the tenth that a notation shows. */
  readonly reached: boolean;
}

/** How near to the most chroma that sRGB holds it is looked for. */
export const CHROMA_STEP = 0.005;
const CHROMA_TOLERANCE = 0.05;

const remember = memoise<Painted>(16384);

/** Values kept for one colour: more than the objects of a plan that share it have. */
const MOST_VALUES = 256;

/** The same answers by the colours themselves, which a plan asks for once an object. */
const byColour = new WeakMap<Colour, Map<number, Painted>>();

/**
 * The colour as painted at a Munsell value (0 to 10): hue and chroma kept, and where sRGB holds no such colour,
 * the most chroma that it does hold at that hue and value.
 *
 * Hue and chroma are Munsell's, not CIELAB's. A painter who gives 7.5R 4/10 and paints it at value 3 means
 * 7.5R 3/10; the report of what can be had is then in the painter's own terms; and a CIELAB hue angle held
 * constant turns blues to violet as they get lighter. It costs about a tenth of a millisecond for each colour and
 * value, which is done once: the answers are remembered.
 */
export function atValue(colour: Colour, value: number): Painted {
  const known = byColour.get(colour);
  const met = known?.get(value);
  if (met) return met;
  const painted = byNotation(colour, value);
  if (known && known.size < MOST_VALUES) known.set(value, painted);
  else byColour.set(colour, new Map([[value, painted]]));
  return painted;
}

function byNotation(colour: Colour, value: number): Painted {
  // As written too: a colour at its own value is given back as it was written.
  const written =
    colour.notation.kind === 'computed' ? '' : `${colour.notation.kind} ${colour.notation.text}`;
  return remember(`${colour.lab.join(' ')} ${value} ${written}`, () => paint(colour, value));
}

function paint(colour: Colour, value: number): Painted {
  const { hueDegrees, chroma } = toMunsell(colour);
  const own = Math.abs(value - valueOf(colour)) < 1e-9 && isDisplayable(colour.lab);
  const whole = own ? colour : computedColour(munsellToLab(hueDegrees, value, chroma));
  if (own || isDisplayable(whole.lab)) {
    return { shown: whole, chromaWanted: chroma, chromaReached: chroma, reached: true };
  }
  let held = 0;
  let beyond = chroma;
  while (beyond - held > CHROMA_STEP) {
    const middle = (held + beyond) / 2;
    if (isDisplayable(munsellToLab(hueDegrees, value, middle))) held = middle;
    else beyond = middle;
  }
  return {
    shown: computedColour(munsellToLab(hueDegrees, value, held)),
    chromaWanted: chroma,
    chromaReached: held,
    reached: chroma - held <= CHROMA_TOLERANCE,
  };
}
