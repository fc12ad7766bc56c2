import type {
  ColourRole,
  DivisionSystem,
  Edges,
  LengthUnit,
  Means,
  Node,
  ObjectRole,
  Plane,
  Side,
} from '../../grammar/index.js';
import type { Bases } from './based-on/bases.js';
import type { Colour } from './colour/colour.js';
import type { Outline } from './geometry/outline.js';
import type { Point } from './geometry/point.js';
import type { FileReference, Location, PlanProblem, Stated } from './in-text.js';
import type { Palette, Picture, Sitting } from './work.js';

export type * from './in-text.js';
export type * from './work.js';

/**
 * The plan: names bound, lengths turned into canvas units, defaults filled in, shapes as outlines, colours as
 * colours. Immutable plain data; every item says where in the text it stands.
 *
 * All lengths, points and outlines are in canvas units (the unit the canvas is given in), x to the right and
 * y down from the upper left corner. Shares are parts of one: 0.3 is 30 %.
 */
export interface Plan {
  /** What it builds on; missing for a plan that builds on no other. */
  readonly basedOn?: Bases;
  /** Its statements and those of the plans it builds on, as one plan; each says in which file it stands. */
  readonly statements: readonly Node[];
  readonly title?: Stated<string>;
  readonly by?: string;
  readonly concept?: Stated<string>;
  readonly mood?: Stated<string>;
  readonly cues: readonly Cue[];
  readonly avoids: readonly Stated<string>[];
  readonly notes: readonly Stated<string>[];
  readonly canvas: Canvas;
  readonly divisions: readonly Division[];
  readonly focus?: Focus;
  /** A focal point is stated but can't be placed, or its line not read; `problems`, or those of the tree, say why. */
  readonly focusUnplaced: boolean;
  /** Height of the horizon from the top, canvas units. */
  readonly horizon?: Stated<number>;
  readonly scale: ValueScale;
  readonly valueBudget?: Budget;
  /** The budget stated, or 70 : 20 : 10 within 5 % when colours have roles and none is stated. */
  readonly colourBudget?: Budget;
  readonly wheel: 'painters' | 'munsell';
  readonly colours: readonly NamedColour[];
  /** In the order of the text. */
  readonly objects: readonly PlanObject[];
  /** Indices into `objects` from back to front: by plane, then by order of the text. */
  readonly coveringOrder: readonly number[];
  readonly leads: readonly Lead[];
  /** The stops of the eye path, indices into `objects`. */
  readonly path?: EyePath;
  readonly palette?: Palette;
  readonly sittings: readonly Sitting[];
  readonly due?: Stated<string>;
  readonly away: readonly Stated<{ readonly from: string; readonly to: string }>[];
  readonly sketch?: Picture;
  readonly transferGrid?: Stated<
    { readonly columns: number; readonly rows: number } | { readonly every: number }
  >;
  readonly allowances: readonly Allowance[];
  readonly ruleSettings: readonly RuleSetting[];
  readonly files: readonly FileReference[];
  /** What could not be resolved; the rest of the plan stands. */
  readonly problems: readonly PlanProblem[];
}

export interface Cue extends Stated<string> {
  /** Indices into `objects`. */
  readonly carriedBy: readonly number[];
}

export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly diagonal: number;
  readonly unit: LengthUnit;
  readonly millimetresPerUnit: number;
  /** The stock name it was given by, such as `figure 20`. */
  readonly stock?: string;
  readonly support?: string;
  readonly medium?: string;
  readonly mediumLocation?: Location;
  readonly notes: readonly Stated<string>[];
  readonly ground: Ground;
  /** Missing when the plan states no canvas and 40 x 30 cm is assumed. */
  readonly location?: Location;
}

export interface Ground {
  readonly colour: Colour;
  readonly role?: ColourRole;
  /** Munsell value of the ground. */
  readonly value: number;
  /** The step of the plan's scale nearest to it. */
  readonly step: number;
  readonly location?: Location;
}

export interface Division {
  readonly system: DivisionSystem;
  readonly location?: Location;
  readonly lines: readonly DivisionLine[];
  readonly crossings: readonly Crossing[];
}

export interface DivisionLine {
  readonly from: Point;
  readonly to: Point;
}

export interface Crossing {
  /** `upper right`, unique within its system. */
  readonly name: string;
  readonly at: Point;
}

export interface Focus {
  readonly at: Point;
  /** The crossing it was given by, if it was. */
  readonly crossing?: { readonly system: DivisionSystem; readonly name: string };
  readonly winBy: readonly Stated<Means>[];
  readonly location: Location;
}

export interface ValueScale {
  /** 2 to 11; step 1 is the darkest. */
  readonly steps: number;
  readonly groups: readonly StepGroup[];
  readonly trend?: Stated<'lighten' | 'darken'>;
  readonly location?: Location;
}

/** Steps `from` to `to`, both included, under one name. */
export interface StepGroup {
  readonly name: string;
  readonly key: string;
  readonly from: number;
  readonly to: number;
  readonly location?: Location;
}

export interface Budget {
  readonly shares: readonly BudgetEntry[];
  /** Part of the picture by which a share may miss its target. */
  readonly tolerance: number;
  /** Missing for the default budget. */
  readonly location?: Location;
}

export interface BudgetEntry {
  /** A group's key, a step number as text, or a colour role. */
  readonly key: string;
  readonly name: string;
  readonly target: number;
  readonly location?: Location;
}

export interface NamedColour {
  readonly name: string;
  readonly key: string;
  readonly colour: Colour;
  readonly role?: ColourRole;
  /** Of the name. */
  readonly location: Location;
  readonly colourLocation: Location;
}

export interface PlanObject {
  readonly index: number;
  readonly name: string;
  readonly key: string;
  readonly role?: ObjectRole;
  readonly plane: Plane;
  /** Placed, turned and repeated; empty when the object has no readable shape. */
  readonly outline: Outline;
  /** True while a file that its shape comes from is still being read. */
  readonly waiting: boolean;
  /** True when a line under it could not be read. */
  readonly faulty: boolean;
  /** It names a colour that is none, or one whose own line can't be read. */
  readonly colourLost: boolean;
  readonly colour?: ObjectColour;
  /** The transparent colour that goes over the dry body colour; given as it looks over white, or by a paint. */
  readonly glaze?: ObjectColour;
  /** Step of the scale, fractions allowed; missing when neither a value nor a colour is given. */
  readonly step?: number;
  /** True when the plan states the value, false when it follows from the colour. */
  readonly stepStated: boolean;
  /** Munsell value as painted: that of the stated step, or the colour's own. */
  readonly value?: number;
  /** The colour as it will be painted, at its value; a neutral grey when only a value is given. */
  readonly painted?: Colour;
  /**
   * Munsell chroma of its colour, and what of it can be had at its value within what a screen shows (sRGB); missing
   * without a colour.
   */
  readonly chroma?: { readonly wanted: number; readonly reached: number };
  readonly edges: Edges;
  readonly edgesAgainst: readonly { readonly edges: Edges; readonly objects: readonly number[] }[];
  readonly detail: 'fine' | 'some' | 'little';
  readonly notes: readonly Stated<string>[];
  /** Of the name. */
  readonly location: Location;
  readonly valueLocation?: Location;
  readonly shapeLocation?: Location;
  /** Missing where it stands in a plan that this one builds on alone. */
  readonly lines?: { readonly first: number; readonly last: number };
  readonly node: Node;
}

export interface ObjectColour {
  readonly colour: Colour;
  /** Index into `colours`; missing for a colour written at the object. */
  readonly named?: number;
  /** Index into `palette.paints`, when it is given by the name of a paint, there or through a named colour. */
  readonly paint?: number;
  readonly role?: ColourRole;
  readonly location: Location;
}

export interface Lead {
  readonly name: string;
  readonly key: string;
  /** From its start to where it aims; never the same place twice running, unless it has no length at all. */
  readonly points: readonly Point[];
  /** The object along whose edge it runs. */
  readonly along?: {
    readonly object: number;
    readonly side?: Side;
    /** The part of `points` that runs along it, from index to index; missing when the object has no edge. */
    readonly stretch?: { readonly first: number; readonly last: number };
  };
  /** The places that the plan names for it. */
  readonly from?: LeadPlace;
  readonly through: readonly LeadPlace[];
  readonly to: LeadPlace;
  readonly location: Location;
  /** Missing where it stands in a plan that this one builds on alone. */
  readonly lines?: { readonly first: number; readonly last: number };
}

/** A place that a lead names: the focal point itself, a place of an object, or any other. */
export type LeadPlace = { readonly at: Point; readonly location: Location } & (
  { readonly names: 'focus' | 'place' } | { readonly names: 'object'; readonly object: number }
);

/** The stops in their order, as indices into `objects`. */
export interface EyePath extends Stated<readonly number[]> {
  /** From the first stop named to the last. */
  readonly stopsLocation: Location;
}

export interface Allowance {
  /** The rule's words, as in the reference. */
  readonly rule: string;
  readonly reason: string;
  /** What it is for alone, as indices into `objects`, `leads` and `cues`; all empty for the whole plan. */
  readonly objects: readonly number[];
  readonly leads: readonly number[];
  readonly cues: readonly number[];
  readonly location: Location;
}

export interface RuleSetting {
  readonly rule: string;
  readonly severity?: 'warning' | 'hint';
  readonly limit?: Stated<number> & { readonly unit: LimitUnit };
  readonly location: Location;
}

/** What the limit of a rule is: a part of one, degrees, or a plain number of something. */
export type LimitUnit = 'part' | 'degrees' | 'number';
