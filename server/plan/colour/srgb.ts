import { lab65, rgb } from 'culori/css';
import { clampChroma } from 'culori/fn';
import { memoise } from './memo.js';
import { computedColour, type Colour, type Lab } from './model.js';

/** Red, green and blue of sRGB with its transfer curve, 0 to 1 each. */
export type Rgb = readonly [red: number, green: number, blue: number];

/**
 * How far a channel may lie outside 0 to 1 and still be shown as it is: a quarter of one of the 256 steps of a
 * screen, which rounding would hide.
 */
const CHANNEL_SLACK = 0.25 / 255;

/** sRGB of a CIELAB (D65) colour, unclipped: outside 0 to 1 where a screen can't show it. */
export function labToRgb([l, a, b]: Lab): Rgb {
  const { r, g, b: blue } = rgb({ mode: 'lab65', l, a, b });
  return [r, g, blue];
}

/** CIELAB (D65) of sRGB. */
export function rgbToLab([r, g, b]: Rgb): Lab {
  const lab = lab65({ mode: 'rgb', r, g, b });
  return [lab.l, lab.a, lab.b];
}

/** Whether a screen of the sRGB kind can show a CIELAB colour. */
export function isDisplayable(lab: Lab): boolean {
  return labToRgb(lab).every((channel) => channel >= -CHANNEL_SLACK && channel <= 1 + CHANNEL_SLACK);
}

const remember = memoise<Rgb>(8192);

/**
 * The sRGB colour to show for a colour, every channel in 0 to 1. One outside sRGB loses CIELAB chroma until it
 * fits, its hue angle and lightness kept: the value of a picture must not move for want of a brighter screen.
 */
export function toRgb(colour: Colour): Rgb {
  return remember(colour.lab.join(' '), () => displayRgb(colour.lab));
}

function displayRgb(lab: Lab): Rgb {
  const clip = (channel: number) => Math.min(1, Math.max(0, channel));
  const [l, a, b] = lab;
  const fitting = isDisplayable(lab) ? { l, a, b } : clampChroma({ mode: 'lab65', l, a, b }, 'lch65');
  const [red, green, blue] = labToRgb([fitting.l, fitting.a, fitting.b]);
  return [clip(red), clip(green), clip(blue)];
}

/** Hex code `#rrggbb` to show for a colour, mapped into sRGB as `toRgb` says. */
export function toHex(colour: Colour): string {
  return `#${toRgb(colour)
    .map((channel) =>
      Math.round(channel * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** The colour of sRGB channels from 0 to 1, as a colour picker gives them. */
export function fromRgb(channels: Rgb): Colour {
  return computedColour(rgbToLab(channels));
}
