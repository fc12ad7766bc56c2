import { marked } from '../../../grammar/index.js';
import { parseCss, parseHex, type LabReading } from './css.js';
import { memoise } from './memo.js';
import { labChroma, type ColourReading, type Lab, type Notation } from './model.js';
import { munsellToLab } from './munsell.js';
import { parseMunsell } from './munsell-text.js';

export type { Colour, ColourReading, Lab, Notation } from './model.js';

const LONGEST_TEXT = 200;

/** No colour that an eye can see is as far from grey as this in CIELAB. */
const STRONGEST_LAB_CHROMA = 300;

const remember = memoise<ColourReading>(4096);

/**
 * Reads a colour as the painter wrote it: a hex code, a CSS Color 4 colour, or Munsell notation.
 *
 * A colour that is not wholly opaque is refused with the opaque one as suggestion; so is one lighter than white or
 * stronger than any that can be seen. Reasons are in words for a painter. Never throws, whatever the text.
 */
export function parseColour(text: string): ColourReading {
  const trimmed = text.trim();
  if (trimmed === '') return { ok: false, reason: marked('A colour is missing.') };
  if (trimmed.length > LONGEST_TEXT) return { ok: false, reason: marked('This is too long to be a colour.') };
  return remember(trimmed, () => withReadableSuggestion(readColour(trimmed)));
}

function readColour(text: string): ColourReading {
  const hex = parseHex(text);
  if (hex) return finish(hex, { kind: 'hex', text });
  // 5b4 reads as neither: as a hex code it lacks its #, as Munsell notation its chroma. The first is the likelier.
  const bareHex = /^(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(text);
  const munsell = bareHex ? undefined : parseMunsell(text);
  if (!munsell) return finish(parseCss(text), { kind: 'css', text });
  if (!munsell.ok) return munsell;
  const lab = munsellToLab(munsell.hueDegrees, munsell.value, munsell.chroma);
  return finish({ ok: true, lab }, { kind: 'munsell', text });
}

/** A suggestion mends one fault, and the text may have another: such a suggestion is left out. */
function withReadableSuggestion(reading: ColourReading): ColourReading {
  if (reading.ok || reading.suggestion === undefined || readColour(reading.suggestion).ok) return reading;
  return { ok: false, reason: reading.reason };
}

function finish(reading: LabReading, notation: Notation): ColourReading {
  if (!reading.ok) return reading;
  const fault = labFault(reading.lab);
  if (fault !== undefined) return { ok: false, reason: fault };
  const [lightness, a, b] = reading.lab;
  return { ok: true, colour: { lab: [Math.min(100, Math.max(0, lightness)), a, b], notation } };
}

/** The ends of lightness are missed by this much through the rounded figures of the colour spaces. */
const LIGHTNESS_SLACK = 0.01;

function labFault(lab: Lab): string | undefined {
  if (!lab.every(Number.isFinite)) return marked('The numbers are too large for a colour.');
  if (labChroma(lab) > STRONGEST_LAB_CHROMA)
    return marked('This would be stronger than any colour that can be seen.');
  if (lab[0] > 100 + LIGHTNESS_SLACK) return marked('This would be lighter than white.');
  if (lab[0] < -LIGHTNESS_SLACK) return marked('This would be darker than black.');
  return undefined;
}
