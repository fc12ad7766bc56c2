import type { FrameHandle, SketchCorner, Spot } from '../../drawing/scene.js';

/**
 * What a hand does in the drawing. Places are those of the plan, in canvas units.
 *
 * Only what is taken hold of moves: what lies on it stays, unless the text places it by what is moved. A place that the
 * text gives by another one keeps to it (`focus, 2 cm right`), but a lead's place and the focal point become
 * coordinates where they are named without a way from there. A lead's place near the edge that it lies on (2 % of the
 * diagonal) stays on that edge; in the middle of an object (0.5 %) or on the focal point it takes that name.
 */
export type HandChange =
  /**
   * A grip of the drawing comes to lie at a place. A focal point that is set down on a crossing is written as that
   * crossing.
   */
  | { readonly kind: 'move'; readonly grip: string; readonly to: Spot }
  /** An object becomes so many times as wide and as high, about its middle. */
  | { readonly kind: 'resize'; readonly subject: string; readonly factor: number }
  /**
   * A handle of the frame round an object comes to lie at a place, while the opposite corner or side stays. A size
   * stays a size and corners stay corners; what neither says gets a `resize`.
   */
  | {
      readonly kind: 'size';
      readonly subject: string;
      readonly handle: FrameHandle;
      readonly to: Spot;
      readonly keepsProportion: boolean;
    }
  /**
   * A corner of the canvas comes to lie at a place in the sketch under the drawing, or in the photograph of a sitting,
   * pixels from its upper left corner. It is written as that corner is written; where the plan gives no corners yet, as
   * the others too, in per cent.
   */
  | {
      readonly kind: 'sketch corner';
      readonly corner: SketchCorner;
      /** The sitting whose photograph it is, by its index in the plan; left out, it is the sketch. */
      readonly sitting?: number | undefined;
      readonly to: Spot;
      /** Of the sketch or photograph, upright, pixels. */
      readonly width: number;
      readonly height: number;
    }
  /** A place in the photograph of a sitting is the neutral grey one; measured and written as a corner is. */
  | {
      readonly kind: 'grey patch';
      readonly sitting: number;
      readonly to: Spot;
      readonly width: number;
      readonly height: number;
    }
  /** An object takes a step of the value scale. */
  | { readonly kind: 'value'; readonly subject: string; readonly step: number }
  /** An object takes a colour: the name of one of the plan, or one written out. */
  | { readonly kind: 'colour'; readonly subject: string; readonly colour: string }
  /** A new object, spanned by two corners of the box round it. */
  | {
      readonly kind: 'new box';
      readonly form: 'rectangle' | 'ellipse';
      readonly from: Spot;
      readonly to: Spot;
    }
  /** A new object by its outline, or a new lead by its places from where it starts. */
  | { readonly kind: 'new line'; readonly form: 'outline' | 'lead'; readonly points: readonly Spot[] }
  /** The focal point is put on a crossing, by its name among the guides of the scene. */
  | { readonly kind: 'crossing'; readonly name: string };
