import type { Hex } from '../mark-kinds.js';

/**
 * What a hand can do in the drawing. Places and lengths are those of the plan, in canvas units: in the view `mirror`,
 * where marks are turned round, they are not.
 */
export interface Handling {
  readonly grips: readonly Grip[];
  /** What a thing that is moved may snap to. */
  readonly guides: Guides;
  /** The greys of the value scale, the darkest first. */
  readonly tones: readonly Hex[];
  /** The colours that the plan names, in the order of the text. */
  readonly colours: readonly NamedTone[];
  /** How objects are painted, by the key of their subject. */
  readonly painted: Readonly<Record<string, Painted>>;
  /** The unit of the canvas. */
  readonly unit: 'cm' | 'mm' | 'm' | 'in';
  /** The sketch that lies under the drawing. */
  readonly sketch?: Sketch;
}

/** Something that can be taken hold of. */
export interface Grip {
  /** Unique in the scene, and the same from scene to scene while the names stay. */
  readonly key: string;
  /** Key into `subjects` of what it belongs to. */
  readonly subject: string;
  readonly kind: 'object' | 'point' | 'focus' | 'lead' | 'lead place';
  /** Of an object the middle of the box round it; of a lead its first place that is not one of another thing. */
  readonly at: Spot;
  /** What is taken hold of, to be read aloud: `tower`, `point 3 of roof`, `end of lead kerb`. */
  readonly name: string;
  /** Why it can't be moved, as a sentence to the painter. */
  readonly fixed?: string;
  /** Of an object that is made larger and smaller by the corners and sides of the box round it. */
  readonly frame?: Frame;
}

/** The box round an object, of a repeated one round its first copy. */
export interface Frame {
  readonly middle: Spot;
  /** Before it is turned. */
  readonly width: number;
  readonly height: number;
  /** Degrees clockwise, about its middle. */
  readonly turn: number;
  /** It has one size for both ways, so that its proportion stays. */
  readonly isEven?: true;
}

/** The handles of a frame, clockwise. Those of a turned one keep their names. */
export const frameHandles = [
  'upper left',
  'upper centre',
  'upper right',
  'middle right',
  'lower right',
  'lower centre',
  'lower left',
  'middle left',
] as const;
export type FrameHandle = (typeof frameHandles)[number];

export interface Guides {
  readonly lines: readonly { readonly from: Spot; readonly to: Spot }[];
  /** `name` is told while something snaps there: `golden upper right`. */
  readonly crossings: readonly { readonly at: Spot; readonly name: string }[];
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface NamedTone {
  readonly name: string;
  readonly hex: Hex;
}

export interface Painted {
  /** On the value scale, fractions allowed. */
  readonly step?: number;
  /** The name of one of `colours`, or a colour of its own. */
  readonly colour?: { readonly name: string } | { readonly hex: Hex };
}

/** A picture beside the plan, to be laid under the drawing. */
export interface Sketch {
  /** As the plan has it, relative to the plan. */
  readonly file: string;
  /**
   * Where the corners of the canvas lie in it: upper left, upper right, lower right, lower left; none when they are its
   * own.
   */
  readonly corners: readonly SketchPlace[];
  /** How strongly it shows, a part of one. */
  readonly opacity: number;
}

/** A photograph of the canvas after a sitting. */
export interface Photograph extends Omit<Sketch, 'opacity'> {
  /** Index of the sitting in the plan. */
  readonly sitting: number;
  /** The title of the sitting. */
  readonly name: string;
  /** A place in it that is a neutral grey. */
  readonly grey?: SketchPlace;
}

/** The corners of the canvas in a sketch, in the order in which a plan gives them. */
export const sketchCorners = ['upper left', 'upper right', 'lower right', 'lower left'] as const;
export type SketchCorner = (typeof sketchCorners)[number];

/** A place in a sketch, from its upper left corner: pixels, or parts of its width and height. */
export interface SketchPlace {
  readonly across: SketchLength;
  readonly down: SketchLength;
}

export interface SketchLength {
  readonly value: number;
  readonly in: 'pixels' | 'parts';
}
