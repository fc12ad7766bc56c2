import type { Dom } from '@svgdotjs/svg.js';
import { number } from './path-data.js';
import { isPictureData } from './picture-data.js';
import {
  type Dash,
  type ImageMark,
  type Ink,
  type PathMark,
  type Stroke,
  type TextMark,
  isHex,
} from './scene.js';
import { type ThemeName, faces, themes, weightInEms } from './theme.js';

/** What a node is to have; `undefined` for what it is not to have. */
export type Attributes = Readonly<Record<string, string | undefined>>;

export interface Paper {
  readonly theme: ThemeName;
  readonly em: number;
}

/** @param stroke the line that is drawn, which may be none where the mark has one */
export function pathAttributes(mark: PathMark, stroke: PathMark['stroke'], { theme, em }: Paper): Attributes {
  const colour = (ink: Ink) => inkColour(ink, theme);
  return {
    d: mark.d,
    fill: mark.fill === undefined ? 'none' : colour(mark.fill),
    'fill-rule': mark.fillRule,
    stroke: stroke && colour(stroke.ink),
    'stroke-width': stroke && number(strokeWidth(stroke, em)),
    'paint-order': stroke?.under && 'stroke',
    'stroke-dasharray': stroke?.dash && dashes(stroke.dash, em),
    'stroke-linejoin': stroke && 'round',
    'stroke-linecap': stroke?.dash === 'dotted' ? 'round' : undefined,
  };
}

export function textAttributes(mark: TextMark, { theme, em }: Paper): Attributes {
  const face = faces[mark.face];
  return {
    x: number(mark.x),
    y: number(mark.y),
    'font-size': number(mark.size),
    'font-family': face.family,
    'font-weight': face.weight,
    'font-style': face.style,
    'text-anchor': mark.anchor === 'start' ? undefined : mark.anchor,
    fill: inkColour(mark.ink, theme),
    stroke: mark.halo && inkColour(mark.halo, theme),
    'stroke-width': mark.halo && number(HALO_EMS * em),
    'stroke-linejoin': mark.halo && 'round',
    'paint-order': mark.halo && 'stroke',
  };
}

/**
 * Nothing is shown of an address that is not a picture of our own.
 * @param addressOf turns a picture into an address that may be shown where it is
 */
export function imageAttributes(
  { box, href }: ImageMark,
  addressOf: (href: ImageMark['href']) => string = (same) => same,
): Attributes {
  return {
    x: number(box.x),
    y: number(box.y),
    width: number(box.width),
    height: number(box.height),
    preserveAspectRatio: 'none',
    href: isPictureData(href) ? addressOf(href) : undefined,
  };
}

export function strokeWidth({ weight, under }: Stroke, em: number): number {
  // Half of a line that lies under its fill is hidden.
  return weightInEms[weight] * em * (under ? 2 : 1);
}

/** How wide the line round letters with a halo is; half of it lies under them. */
export const HALO_EMS = 0.22;

/** Drawn and left out, in turn, in ems. */
export const dashesInEms: Readonly<Record<Dash, readonly number[]>> = {
  dashed: [0.55, 0.4],
  dotted: [0.01, 0.3],
  'dot-dashed': [0.7, 0.28, 0.1, 0.28],
  long: [1.3, 0.4],
};

function dashes(dash: Dash, em: number): string {
  return dashesInEms[dash].map((length) => number(length * em)).join(' ');
}

/** A CSS colour. */
export function inkColour(ink: Ink, theme: ThemeName): string {
  return isHex(ink) ? ink : themes[theme][ink];
}

export function setText(element: Dom, text: string): void {
  if (element.node.textContent !== text) element.words(text);
}

/** Straight to the node: svg.js would read numbers and colours into some of the strings. */
export function setAttributes(element: Dom, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) element.node.removeAttribute(name);
    else if (element.node.getAttribute(name) !== value) element.node.setAttribute(name, value);
  }
}

/**
 * The text with what XML 1.0 has no place for (control characters, halves of pairs) replaced by U+FFFD, and so are
 * overrides of the writing direction, which would show a name as another.
 */
export function safeText(text: string): string {
  return text.replace(
    /[\p{Surrogate}\u0000-\u0008\u000B\u000C\u000E-\u001F\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]/gu,
    '\uFFFD',
  );
}
