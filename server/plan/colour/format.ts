import { a98, hsl, hwb, lab, lch, lrgb, oklab, oklch, p3, prophoto, rec2020, xyz50, xyz65 } from 'culori/css';
import type { Colour, Notation } from './model.js';
import { toMunsell } from './munsell.js';
import { rec2020FromCulori } from './rec2020.js';
import { toHex, toRgb } from './srgb.js';

/**
 * Texts that say a colour, the likeliest first: in the notation that the painter used (by default the colour's
 * own), then as hex code, as Munsell notation, and as `rgb()`. Each reads back as the colour to within the rounding
 * of its notation; a hex code and the `rgb` family hold the nearest colour of sRGB (`toRgb`). No text comes twice.
 */
export function presentations(colour: Colour, asWritten: Notation = colour.notation): readonly string[] {
  const likeWritten = formatLike(colour, asWritten);
  const texts = [likeWritten, toHex(colour), toMunsell(colour).text, formatCssFunction(colour, 'rgb')];
  return [...new Set(texts)];
}

/** A colour in the notation of another text: in Munsell's, as a hex code in its case, or by its CSS function. */
export function formatLike(colour: Colour, notation: Notation): string {
  switch (notation.kind) {
    case 'computed':
      return toHex(colour);
    case 'munsell':
      return toMunsell(colour).text;
    case 'hex':
      return /[A-F]/.test(notation.text) ? toHex(colour).toUpperCase() : toHex(colour);
    case 'css':
      return formatLikeCss(colour, notation.text);
  }
}

function formatLikeCss(colour: Colour, text: string): string {
  const [, name = '', space] = /^([a-z]+)\(\s*([a-z][a-z0-9-]*)?/.exec(text.toLowerCase()) ?? [];
  const styled = formatCssFunction(colour, name === 'color' && space !== undefined ? space : name);
  const commas = text.includes(',');
  return commas ? styled.replaceAll(' ', ', ') : styled;
}

/** `name` is a function of CSS Color 4 or a space of its `color()`; a hex code is given for any other word. */
function formatCssFunction(colour: Colour, name: string): string {
  const [l, a, b] = colour.lab;
  const exact = { mode: 'lab65', l, a, b } as const;
  const [red, green, blue] = toRgb(colour);
  const inSrgb = { mode: 'rgb', r: red, g: green, b: blue } as const;
  switch (name) {
    case 'rgb':
    case 'rgba':
      return `rgb(${[red, green, blue].map((channel) => Math.round(channel * 255)).join(' ')})`;
    case 'hsl':
    case 'hsla': {
      const { h, s, l: lightness } = hsl(inSrgb);
      return `hsl(${round(h, 1)} ${percent(s)} ${percent(lightness)})`;
    }
    case 'hwb': {
      const { h, w, b: black } = hwb(inSrgb);
      return `hwb(${round(h, 1)} ${percent(w)} ${percent(black)})`;
    }
    case 'lab': {
      const d50 = lab(exact);
      return `lab(${round(d50.l, 2)} ${round(d50.a, 2)} ${round(d50.b, 2)})`;
    }
    case 'lch': {
      const d50 = lch(exact);
      return `lch(${round(d50.l, 2)} ${round(d50.c, 2)} ${round(d50.h, 2)})`;
    }
    case 'oklab': {
      const ok = oklab(exact);
      return `oklab(${round(ok.l, 4)} ${round(ok.a, 4)} ${round(ok.b, 4)})`;
    }
    case 'oklch': {
      const ok = oklch(exact);
      return `oklch(${round(ok.l, 4)} ${round(ok.c, 4)} ${round(ok.h, 2)})`;
    }
    default: {
      const channels = inSpace(colour, name);
      return channels
        ? `color(${name} ${channels.map((channel) => round(channel, 4)).join(' ')})`
        : toHex(colour);
    }
  }
}

function inSpace(colour: Colour, space: string): readonly number[] | undefined {
  const [l, a, b] = colour.lab;
  const exact = { mode: 'lab65', l, a, b } as const;
  const channels = (c: { readonly r: number; readonly g: number; readonly b: number }) =>
    [c.r, c.g, c.b] as const;
  const stimulus = (c: { readonly x: number; readonly y: number; readonly z: number }) => [c.x, c.y, c.z];
  switch (space) {
    case 'srgb':
      return toRgb(colour);
    case 'srgb-linear':
      return channels(lrgb(exact));
    case 'display-p3':
      return channels(p3(exact));
    case 'a98-rgb':
      return channels(a98(exact));
    case 'prophoto-rgb':
      return channels(prophoto(exact));
    case 'rec2020':
      return rec2020FromCulori(channels(rec2020(exact)));
    case 'xyz':
    case 'xyz-d65':
      return stimulus(xyz65(exact));
    case 'xyz-d50':
      return stimulus(xyz50(exact));
    default:
      return undefined;
  }
}

function round(number: number | undefined, decimals: number): string {
  // Adding 0 turns -0 into 0, which nobody would write.
  return String(Number((number ?? 0).toFixed(decimals)) + 0);
}

function percent(fraction: number): string {
  return `${round(fraction * 100, 1)}%`;
}
