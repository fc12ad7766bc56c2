import type { TextMark } from '../scene.js';
import { safeText } from '../attributes.js';
import type { EmbeddedFont, EmbeddedFonts } from './fonts.js';

/** Letters that are set with one font, or one that no font has. */
export type Run =
  | {
      readonly kind: 'letters';
      readonly text: string;
      readonly font: EmbeddedFont;
      readonly x: number;
      readonly width: number;
    }
  | { readonly kind: 'missing'; readonly text: string; readonly x: number; readonly width: number };

/** A letter that no font has is drawn as a box of this width. */
const BOX_EMS = 0.62;
/** Joiners and variation selectors, which say how letters are shown and have no shape. */
const UNSEEN = /^[\p{Default_Ignorable_Code_Point}]$/u;

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** A line of text in runs of one font each, from left to right, with `x` where each begins. */
export function setLine({ text, face, size, anchor, x }: TextMark, fonts: EmbeddedFonts): readonly Run[] {
  const parts = partsOf(safeText(text), fonts[face]).map((part) => ({
    ...part,
    width: part.font === undefined ? BOX_EMS * size : part.font.embedded.widthOfTextAtSize(part.text, size),
  }));
  const width = parts.reduce((sum, part) => sum + part.width, 0);
  let at = x - { start: 0, middle: 0.5, end: 1 }[anchor] * width;
  return parts.map(({ font, ...part }): Run => {
    const run = { ...part, x: at };
    at += part.width;
    return font === undefined ? { kind: 'missing', ...run } : { kind: 'letters', font, ...run };
  });
}

interface Part {
  readonly text: string;
  readonly font: EmbeddedFont | undefined;
}

/** Neighbours in one font stay together, so that they are shaped as words; a letter that is missing stands alone. */
function partsOf(text: string, fonts: readonly EmbeddedFont[]): readonly Part[] {
  const parts: Part[] = [];
  for (const { segment } of segmenter.segment(text.replace(/\s/gu, ' '))) {
    const font = fonts.find((each) => hasAll(each, segment));
    const last = parts.at(-1);
    if (font !== undefined && last?.font === font)
      parts[parts.length - 1] = { text: last.text + segment, font };
    else parts.push({ text: segment, font });
  }
  return parts;
}

function hasAll({ font }: EmbeddedFont, letters: string): boolean {
  return [...letters].every(
    (letter) => UNSEEN.test(letter) || font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0),
  );
}
