/** What a paint is to the painter who looks for a hue in the box. */
export type PaintFamily =
  'white' | 'yellow' | 'orange' | 'red' | 'violet' | 'blue' | 'green' | 'brown' | 'black' | 'metallic';

export type Transparency = 'transparent' | 'semi-transparent' | 'semi-opaque' | 'opaque';

/** Where a figure or a statement comes from. */
export type Source =
  /** Read in a published source, which is named in full in the reference. */
  'maker’s drying guide' | 'Saitzyk 1987' | 'REACH Annex XVII' | 'CLP Annex VI' | 'NFPA' | 'from memory';

/** What in a material can hurt someone. */
export type Hazard =
  | 'cadmium'
  | 'cobalt'
  | 'lead'
  | 'chromium'
  | 'manganese'
  | 'mercury'
  | 'arsenic'
  | 'antimony'
  | 'nickel'
  | 'zinc';

/** How fast a thin film of it in drying oil gets dry to the touch, by one source. */
export interface DryingFigure {
  /** Days. */
  readonly days: number;
  readonly source: Source;
}

/** What is known of a pigment under its Colour Index generic name. */
export interface Pigment {
  /** `PB29`, upper case but for two-letter colours: `PBk9`, `PBr7`. */
  readonly index: string;
  /** What painters call it: `ultramarine blue`. */
  readonly name: string;
  readonly family: PaintFamily;
  /** For a yellow, red or blue: which side it leans to. From memory. */
  readonly side?: 'warm' | 'cool';
  /** From memory: tubes of one pigment differ by maker. */
  readonly transparency: Transparency;
  /** Where sources disagree, each figure; the slower counts. */
  readonly drying: readonly [DryingFigure, ...DryingFigure[]];
  readonly hazards: readonly Hazard[];
  /** Its full tone as measured, where its spectrum is known. */
  readonly masstone?: `#${string}`;
}

const pigments: readonly Pigment[] = [];

const byIndex = new Map(pigments.map((pigment) => [pigment.index.toUpperCase(), pigment]));

/** What is known of a Colour Index name, however its letters are cased; nothing for one that is not in the table. */
export function pigmentOf(index: string): Pigment | undefined {
  return byIndex.get(index.toUpperCase());
}

/** Every pigment that something is known of. */
export function knownPigments(): readonly Pigment[] {
  return pigments;
}
