/** How a picture is painted: the paints, the sittings, and the photographs and sketches beside it. */

import type { Layer, Node } from '../../grammar/index.js';
import type { Colour } from './colour/colour.js';
import type { Location, Stated } from './in-text.js';

export interface Palette {
  readonly paints: readonly Paint[];
  readonly mother?: Stated<string>;
  /** Millimetres. */
  readonly filmThickness?: Stated<number>;
  /** Millilitres. */
  readonly tube?: Stated<number>;
  readonly location: Location;
}

export interface Paint {
  readonly name: string;
  readonly key: string;
  /** Colour Index name such as `PB29`. */
  readonly index?: string;
  readonly full?: Colour;
  readonly tint?: { readonly colour: Colour; readonly paint: number; readonly white: number };
  readonly temperature?: 'warm' | 'cool';
  readonly location: Location;
}

export interface Sitting {
  readonly title: string;
  /** ISO 8601 date. */
  readonly date?: string;
  readonly dateLocation?: Location;
  /** Indices into `objects`. */
  readonly works: readonly number[];
  readonly layer?: Stated<Layer>;
  readonly body?: 'lean' | 'fat';
  readonly fatShare?: Stated<number>;
  /** Millimetres. */
  readonly filmThickness?: Stated<number>;
  readonly medium?: Stated<string>;
  readonly tasks: readonly Stated<string>[];
  /** Its own line or one under it could not be read or resolved: its day, or what it works on, may be lost. */
  readonly faulty: boolean;
  readonly photo?: Picture & { readonly grey?: PicturePlace };
  readonly notes: readonly Stated<string>[];
  readonly location: Location;
  /** Missing where it stands in a plan that this one builds on alone. */
  readonly lines?: { readonly first: number; readonly last: number };
  readonly node: Node;
}

/** A photograph or sketch beside the plan. */
export interface Picture {
  readonly file: string;
  /** Where the corners of the canvas lie in it: upper left, upper right, lower right, lower left. */
  readonly corners: readonly PicturePlace[];
  readonly opacity?: number;
  readonly location: Location;
}

/** A place in a photograph or sketch, from its upper left corner. */
export interface PicturePlace {
  readonly across: PictureLength;
  readonly down: PictureLength;
}

/** Pixels, or a part of the width or height that it runs along. */
export interface PictureLength {
  readonly value: number;
  readonly in: 'pixels' | 'parts';
}
