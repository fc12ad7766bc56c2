import { marked } from '../../../grammar/index.js';
/** A Munsell notation that was read: hue position as in `Munsell.hueDegrees`, undefined for a neutral. */
export type MunsellReading =
  | {
      readonly ok: true;
      readonly hueDegrees: number | undefined;
      readonly value: number;
      readonly chroma: number;
    }
  | { readonly ok: false; readonly reason: string; readonly suggestion?: string };

/** The ten hues of Munsell's circle, each 10 wide in the hue number, in the order of the spectrum. */
export const MUNSELL_FAMILIES: readonly string[] = ['R', 'YR', 'Y', 'GY', 'G', 'BG', 'B', 'PB', 'P', 'RP'];

const LOOKS_MUNSELL = /^(?:[-+\d.,]*\s*[a-z]{1,2}\s*[-+.\d/]|[-+]?\d[\d.,]*\s*[a-z]{1,2}\s*$)/i;
const NUMBER = String.raw`[-+]?(?:\d+(?:\.\d+)?|\.\d+)`;
const NOTATION = new RegExp(
  String.raw`^(${NUMBER})?\s*([a-z]+)\s*(${NUMBER})?\s*(?:(/)\s*(${NUMBER})?)?$`,
  'i',
);

/**
 * Reads Munsell notation: `7.5R 4/10`, `5BG 6/4`, `N 5/`, in either case and with or without the spaces. Hue
 * number 0 to 10, value 0 to 10, chroma 0 or more. Undefined when the text doesn't look like Munsell notation at
 * all, so that another notation may be tried. Never throws.
 */
export function parseMunsell(text: string): MunsellReading | undefined {
  const trimmed = text.trim();
  if (trimmed.length > 60 || !LOOKS_MUNSELL.test(trimmed)) return undefined;
  const match = NOTATION.exec(trimmed);
  if (!match) return unreadable(trimmed);
  const [, hueNumber, letters = '', value, slash, chroma] = match;
  const family = letters.toUpperCase();
  if (family === 'N') return readNeutral(hueNumber, value, chroma);
  if (!MUNSELL_FAMILIES.includes(family)) return unknownHue(trimmed, letters);
  if (value === undefined) {
    return fail(
      `“${trimmed}” names a hue only: a value and a chroma follow it, as in ${hueNumber ?? 5}${family} 5/6.`,
    );
  }
  if (hueNumber === undefined) {
    const suggestion = chroma === undefined ? undefined : `5${family} ${value}/${chroma}`;
    return fail(
      `${family} needs a number in front, 0 to 10; 5${family} is the middle of that hue.`,
      suggestion,
    );
  }
  if (!slash || chroma === undefined) {
    return fail(
      `A chroma is missing after the value: ${hueNumber}${family} ${value}/6, say. A neutral is N ${value}/.`,
    );
  }
  return readChromatic(Number(hueNumber), family, Number(value), Number(chroma));
}

function readNeutral(
  hueNumber: string | undefined,
  value: string | undefined,
  chroma: string | undefined,
): MunsellReading {
  if (value === undefined) return fail(marked('N needs a value after it, 0 to 10, as in N 5/.'));
  if (hueNumber !== undefined) return fail(marked('A neutral has no hue number.'), `N ${value}/`);
  if (chroma !== undefined && Number(chroma) !== 0)
    return fail(marked('A neutral has no chroma.'), `N ${value}/`);
  return valueFault(Number(value)) ?? { ok: true, hueDegrees: undefined, value: Number(value), chroma: 0 };
}

function readChromatic(hueNumber: number, family: string, value: number, chroma: number): MunsellReading {
  if (!(hueNumber >= 0 && hueNumber <= 10)) {
    return fail(`The number of a Munsell hue goes from 0 to 10, and this is ${hueNumber}.`);
  }
  const fault = valueFault(value);
  if (fault) return fault;
  if (!(chroma >= 0)) return fail(`Chroma starts at 0, which is grey; ${chroma} is less than none.`);
  const hueDegrees = ((MUNSELL_FAMILIES.indexOf(family) * 10 + hueNumber) * 3.6) % 360;
  return { ok: true, hueDegrees, value, chroma };
}

function valueFault(value: number): MunsellReading | undefined {
  if (value >= 0 && value <= 10) return undefined;
  return fail(`Munsell value goes from 0 (black) to 10 (white), and this is ${value}.`);
}

function unknownHue(text: string, letters: string): MunsellReading {
  const turned = [...letters.toUpperCase()].reverse().join('');
  const suggestion = MUNSELL_FAMILIES.includes(turned) ? text.replace(letters, turned) : undefined;
  return fail(
    `“${letters}” is no Munsell hue; the ten are ${MUNSELL_FAMILIES.join(', ')}, and N for neutrals.`,
    suggestion,
  );
}

function unreadable(text: string): MunsellReading {
  const dotted = text.replaceAll(/(\d),(\d)/g, '$1.$2');
  const suggestion = dotted !== text && NOTATION.test(dotted) ? dotted : undefined;
  return fail(
    `“${text}” is not quite a Munsell colour: hue, value, a slash, chroma, as in 7.5R 4/10.`,
    suggestion,
  );
}

function fail(reason: string, suggestion?: string): MunsellReading {
  return suggestion === undefined ? { ok: false, reason } : { ok: false, reason, suggestion };
}
