/** Upright; `x` and `y` are those of its upper left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What everything visible in a drawing is. */
export type Mark = PathMark | TextMark | ImageMark;

export interface MarkBase {
  readonly key: string;
  /** Key into `subjects`. */
  readonly subject?: string;
  /** What the mark says when it is pointed at or read aloud. */
  readonly tip?: string;
}

export interface PathMark extends MarkBase {
  readonly kind: 'path';
  /** SVG path data. */
  readonly d: string;
  readonly fill?: Ink;
  readonly fillRule?: 'evenodd';
  readonly stroke?: Stroke;
}

/**
 * A picture in pixels, stretched over a box: a photograph, or figures shown as tones. It is always one that we have
 * made.
 */
export interface ImageMark extends MarkBase {
  readonly kind: 'image';
  readonly box: Box;
  readonly href: PictureData;
}

/** A picture written out in its address; see `isPictureData`. */
export type PictureData = `data:image/${'jpeg' | 'png'};base64,${string}`;

export interface Stroke {
  readonly ink: Ink;
  readonly weight: Weight;
  readonly dash?: Dash;
  /** The fill lies over the line, so that shapes that run into each other are drawn round as one. */
  readonly under?: true;
}

export const dashNames = ['dashed', 'dotted', 'dot-dashed', 'long'] as const;
export type Dash = (typeof dashNames)[number];

export interface TextMark extends MarkBase {
  readonly kind: 'text';
  readonly text: string;
  /** On the base line. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly face: Face;
  readonly ink: Ink;
  /** Drawn round the letters, so that they read over lines. */
  readonly halo?: Ink;
}

export type Face = 'text' | 'strong' | 'title' | 'note';

/** A colour of the picture itself, which no theme changes, or a token of the theme. */
export type Ink = Hex | Token;
export type Hex = `#${string}`;

export const tokens = [
  /** What lies round the mount: the wall. */
  'sheet',
  'mount',
  /** The line round the mount's window. */
  'bevel',
  'ink',
  /** Captions of second rank, still readable. */
  'quiet',
  /** Rules and the frames of bars. */
  'rule',
  /** The empty part of a bar. */
  'track',
  /** The mark of what is wanted. */
  'wanted',
  'error',
  'warning',
  'hint',
  /** Letters on a finding's mark. */
  'onFinding',
] as const;
export type Token = (typeof tokens)[number];

/** From a construction line to the outline of what dominates. */
export const weights = ['hair', 'fine', 'medium', 'heavy', 'bold'] as const;
export type Weight = (typeof weights)[number];

/** Whether an ink is a colour of the picture rather than a token of the theme. */
export function isHex(ink: Ink): ink is Hex {
  return ink.startsWith('#');
}
