import type { Reason } from '../../../grammar/index.js';
import type { PicturePlace } from '../../plan/plan.js';

/** How a photograph of the canvas is to be squared up. */
export interface Squaring {
  /** As the plan has it, relative to the plan. */
  readonly path: string;
  /**
   * Where the corners of the canvas lie in the upright photograph: upper left, upper right, lower right, lower left;
   * none when its own are meant.
   */
  readonly corners: readonly PicturePlace[];
  /** A place in it that is a neutral grey. */
  readonly grey?: PicturePlace;
  /** Width of the canvas over its height. */
  readonly proportion: number;
}

/** The longer side of a squared-up photograph as it is measured, in pixels. */
export const measuredSide = 480;
/** The longer side of a squared-up photograph as it is shown, in pixels; less where the photograph itself has less. */
export const shownSide = 1080;

/**
 * A photograph seen square: the canvas alone, resampled in linear light. Immutable; the same `id` is the same object as
 * long as it is known, so it can be a key of what is worked out from it.
 */
export interface SquaredPicture {
  /** Made of the content of the file, its corners, its grey patch and the proportion of the canvas. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** CIELAB under D65, three numbers a pixel, row by row from the upper left. */
  readonly lab: Float32Array;
  /** The same picture larger, as a JPEG in sRGB. */
  readonly shown: { readonly width: number; readonly height: number; readonly jpeg: Uint8Array };
  readonly source: PhotographSource;
  readonly trust: PhotographTrust;
}

export interface PhotographSource {
  readonly type: 'JPEG' | 'PNG' | 'WebP';
  /** Upright, in pixels. */
  readonly width: number;
  readonly height: number;
  /** The colours it is in, in words: `Display P3`, `sRGB`. */
  readonly profile: string;
  /** Whether the file says so; otherwise sRGB is taken. */
  readonly profileStated: boolean;
  /** ISO 8601 date on which the camera says it was taken. */
  readonly taken?: string;
}

/** What tells how far a photograph can be trusted. Shares are parts of the canvas in it. */
export interface PhotographTrust {
  /** Burnt out: some channel is at its upper end, so nothing lighter could be told. */
  readonly burntShare: number;
  /** As dark as the file can say. */
  readonly blackShare: number;
  /**
   * How the grey patch was: what the channels were multiplied with in linear light, greatest over smallest; `fault`
   * where the patch could not be used, as a sentence.
   */
  readonly grey?: { readonly cast: number; readonly fault?: string };
  /** Pixels of the photograph for one pixel across as it is measured; below 1 it is coarser than what is measured. */
  readonly sharpness: number;
}

/** Why something can't be had: a sentence to the painter, or the makings of one. */
export interface NoPhotograph {
  readonly ok: false;
  readonly reason: string | Reason;
}

export type SquaredAnswer = { readonly ok: true; readonly picture: SquaredPicture } | NoPhotograph;

export type SizeAnswer =
  /** Upright, in pixels. */
  { readonly ok: true; readonly width: number; readonly height: number } | NoPhotograph;

/**
 * The photographs and sketches beside a plan, as far as they are known. Asked at once and answered at once; `undefined`
 * while a picture is on its way, after which the plan is told to be another.
 */
export interface Photographs {
  readonly squared: (squaring: Squaring) => SquaredAnswer | undefined;
  /** From the head of the file, without decoding it. */
  readonly sizeOf: (path: string) => SizeAnswer | undefined;
}

/** Where no photograph can be had: all stay on their way. */
export const noPhotographs: Photographs = { squared: () => undefined, sizeOf: () => undefined };
