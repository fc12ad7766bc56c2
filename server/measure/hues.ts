/** Hues on the plan's wheel and what they do: complement and discords, warm and cool, chroma. Angles are degrees of that wheel. */
export interface HueMeasure {
  readonly wheel: 'painters' | 'munsell';
  /** Area-weighted mean hue of each role in use that has one. */
  readonly roles: readonly RoleHue[];
  /** Every named colour that is seen and has a hue, in the order of `plan.colours`. */
  readonly colours: readonly ColourHue[];
  readonly temperature: TemperatureMeasure;
  /** The object seen with the strongest chroma as painted. */
  readonly strongestChroma?: {
    readonly object: number;
    /** Munsell chroma. */
    readonly chroma: number;
    /** From the focal point to what is seen of it, part of the diagonal; missing without a focal point. */
    readonly fromFocus?: number;
  };
  /** Munsell's area advice for the dominant colours and their complement. Later studies do not bear it out. */
  readonly areaAdvice?: {
    /** Of the two together. */
    readonly dominantWanted: number;
    readonly dominantMeasured: number;
  };
}

export interface RoleHue {
  readonly role: 'dominant' | 'complement' | 'discord' | 'neutral';
  readonly hueDegrees: number;
  readonly name: string;
  /** Area-weighted means as painted, Munsell. */
  readonly value: number;
  readonly chroma: number;
}

export interface ColourHue {
  /** Index into `plan.colours`. */
  readonly colour: number;
  readonly hueDegrees: number;
  /** From the dominant's mean hue, 0 to 180; missing without a dominant hue. */
  readonly fromDominant?: number;
}

/** Parts of the picture. */
export interface TemperatureMeasure {
  readonly warm: number;
  readonly cool: number;
  readonly neutral: number;
}
