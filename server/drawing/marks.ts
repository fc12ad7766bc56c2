import { rounded } from './path-data.js';
import type {
  Box,
  Face,
  ImageMark,
  Ink,
  MarkBase,
  PathMark,
  PictureData,
  Stroke,
  TextMark,
} from './scene.js';

type Extras = Pick<MarkBase, 'subject' | 'tip'>;

/** Leaves out what is undefined, as exact optional properties ask. */
function extras({
  subject,
  tip,
}: {
  readonly subject?: string | undefined;
  readonly tip?: string | undefined;
}): Extras {
  return { ...(subject === undefined ? {} : { subject }), ...(tip === undefined ? {} : { tip }) };
}

export interface PathStyle {
  readonly fill?: Ink | undefined;
  readonly fillRule?: 'evenodd' | undefined;
  readonly stroke?: Stroke | undefined;
  readonly subject?: string | undefined;
  readonly tip?: string | undefined;
}

export function pathMark(key: string, d: string, style: PathStyle): PathMark {
  const { fill, fillRule, stroke } = style;
  return {
    kind: 'path',
    key,
    ...extras(style),
    d,
    ...(fill === undefined ? {} : { fill }),
    ...(fillRule === undefined ? {} : { fillRule }),
    ...(stroke === undefined ? {} : { stroke }),
  };
}

export interface TextStyle {
  readonly size: number;
  readonly ink: Ink;
  readonly anchor?: TextMark['anchor'];
  readonly face?: Face;
  readonly halo?: Ink | undefined;
  readonly subject?: string | undefined;
  readonly tip?: string | undefined;
}

export function textMark(key: string, text: string, x: number, y: number, style: TextStyle): TextMark {
  return {
    kind: 'text',
    key,
    ...extras(style),
    text,
    x: rounded(x),
    y: rounded(y),
    size: rounded(style.size),
    anchor: style.anchor ?? 'start',
    face: style.face ?? 'text',
    ink: style.ink,
    ...(style.halo === undefined ? {} : { halo: style.halo }),
  };
}

export interface ImageStyle {
  readonly subject?: string | undefined;
  readonly tip?: string | undefined;
}

export function imageMark(key: string, href: PictureData, box: Box, style: ImageStyle = {}): ImageMark {
  const { x, y, width, height } = box;
  return {
    kind: 'image',
    key,
    ...extras(style),
    box: { x: rounded(x), y: rounded(y), width: rounded(width), height: rounded(height) },
    href,
  };
}
