import type { Colour } from '../../plan/colour/colour.js';
import type { PaintFamily, Pigment } from '../../plan/materials/pigments.js';

/** What is worked out about the palette of a plan. */
export interface PaletteMeasure {
  /** In the order of `plan.palette.paints`. */
  readonly paints: readonly PaintMeasure[];
  /** How many tubes of paint stand on the palette. */
  readonly tubes: number;
  /** Yellow, red, blue: which paints give their warm and their cool side. */
  readonly primaries: readonly PrimaryMeasure[];
  /** Missing while the mixtures are still being worked out, which is done beside the typing. */
  readonly mixing?: MixingMeasure;
}

export interface PaintMeasure {
  /**
   * What its mixtures are worked out from: measured spectra, a full tone and a tint that the painter gave, or nothing.
   */
  readonly basis: 'measured' | 'estimated' | 'unknown';
  /** Known by its full tone alone: how strong it is in a mixture is guessed. */
  readonly strengthGuessed?: true;
  readonly pigment?: Pigment;
  readonly family?: PaintFamily;
  /** Of a yellow, red or blue; `sideFrom` says whether the plan states it or it is the pigment's or the hue's own. */
  readonly side?: 'warm' | 'cool';
  readonly sideFrom?: 'plan' | 'pigment' | 'hue';
  /** Its full tone. */
  readonly full?: Colour;
  /** One part of it in ten of white. */
  readonly tint?: Colour;
}

export interface PrimaryMeasure {
  readonly primary: 'yellow' | 'red' | 'blue';
  /** Indices into `plan.palette.paints`. */
  readonly warm: readonly number[];
  readonly cool: readonly number[];
  /** The paints of this primary of which nothing says to which side they lean. */
  readonly undecided: readonly number[];
  readonly lacks: readonly ('warm' | 'cool')[];
}

export interface MixingMeasure {
  /** One for each colour as it will be painted, the largest share of the picture first. */
  readonly swatches: readonly Swatch[];
  /**
   * In the order of `plan.objects`: its swatch as an index into `swatches`; missing for an object without colour or
   * value.
   */
  readonly ofObjects: readonly (number | undefined)[];
  /** In the order of `plan.objects`. */
  readonly glazes: readonly (GlazeMeasure | undefined)[];
  /** For each hue of the plan that is painted in more than one value, its mixtures from dark to light. */
  readonly strings: readonly ValueString[];
  /** In the order of `plan.palette.paints`: what the whole picture takes of each. */
  readonly amounts: readonly PaintAmount[];
  /**
   * Colours that the plan gives to an object or to the ground, as indices into `swatches`, that no mixture comes near
   * enough to (over the limit of 5).
   */
  readonly beyond: readonly number[];
  /** The one known paint that, added to the palette, would bring the colours beyond it nearest. */
  readonly addition?: PaintAddition;
  /**
   * The outline of all that the palette can mix, as the most C*ab at each of 72 hue angles of CIELAB (5 degrees apart,
   * from 0), whatever the lightness.
   */
  readonly reach: readonly number[];
}

/** Paint in whole parts by volume, those of most parts first. */
export interface Mixture {
  readonly parts: readonly MixturePart[];
  /** The colour that it is predicted to dry to. */
  readonly colour: Colour;
  /** Some of its paints are known by a full tone and a tint only, so that this is an estimate. */
  readonly isEstimate: boolean;
}

export interface MixturePart {
  /** Index into `plan.palette.paints`. */
  readonly paint: number;
  readonly parts: number;
}

/** One colour of the picture and the mixture that comes nearest to it. */
export interface Swatch {
  /** The colour as it will be painted. */
  readonly wanted: Colour;
  /**
   * The objects painted with it, as indices into `plan.objects`, the largest first; empty for the toned ground alone.
   */
  readonly objects: readonly number[];
  /** It is the colour of the toned ground too. */
  readonly isGround: boolean;
  /**
   * The plan gives this colour to an object or to the ground; else it is the grey of objects that have a value only.
   */
  readonly isStated: boolean;
  /** Part of the picture that shows it. */
  readonly share: number;
  /** Missing when the palette holds no paint that mixtures can be worked out of. */
  readonly mixture?: Mixture;
  /** CIEDE2000 from `wanted` to the mixture. */
  readonly difference?: number;
  /** How much paint it takes, millilitres: visible area x film. */
  readonly millilitres: number;
}

/** A transparent layer over the dry body colour. */
export interface GlazeMeasure {
  readonly object: number;
  /** The colour of the glaze as the plan gives it: what it looks like over white. */
  readonly wanted: Colour;
  /** Paints of the glaze, in whole parts to `medium` parts of medium; missing where the palette can't give it. */
  readonly mixture?: Mixture & { readonly medium: number };
  /** CIEDE2000 from `wanted` to the mixture over white. */
  readonly difference?: number;
  /** What is seen: the body colour through the glaze. */
  readonly seen: Colour;
  /** Not worked out from measured spectra. */
  readonly isEstimate: boolean;
}

export interface ValueString {
  /** The name of the colour in the plan, or of its Munsell hue. */
  readonly name: string;
  /** From dark to light, one for each step of the scale at which the hue is painted and those between. */
  readonly steps: readonly {
    readonly step: number;
    readonly wanted: Colour;
    readonly mixture?: Mixture;
    readonly difference?: number;
  }[];
}

export interface PaintAmount {
  readonly millilitres: number;
  /** So many tubes, a fraction; missing without the size of a tube. */
  readonly tubes?: number;
}

export interface PaintAddition {
  readonly pigment: Pigment;
  /** For each of `beyond`: the difference that is left with it. */
  readonly differences: readonly { readonly swatch: number; readonly difference: number }[];
}
