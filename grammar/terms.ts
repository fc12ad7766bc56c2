/**
 * What statements are made of: words, sentences, numbers, places and shapes, each with the columns it stands in.
 */

/** A stretch of one line. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A name or word as the painter wrote it. Compare names with `nameKey`. */
export interface Word extends Span {
  readonly text: string;
}

/** A sentence between quotes; `value` has the quotes and escapes taken off. */
export interface Sentence extends Span {
  readonly value: string;
}

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in';

/** A length or share: `12`, `7 1/2 in`, `40%`, `1/3`. Without a unit it counts canvas units. */
export interface Length extends Span {
  readonly value: number;
  readonly unit?: LengthUnit | '%';
  /** True for `1/3`, but not for `7 1/2`: where a side is divided, a single fraction means that part of it. */
  readonly fraction: boolean;
}

/** A plain number, such as a step of the value scale. */
export interface Quantity extends Span {
  readonly value: number;
}

export interface Percentage extends Span {
  /** 30 for `30%`. */
  readonly percent: number;
}

/** What a rule is measured against: `5%`, `40 degrees`, or `2` of whatever the rule counts. */
export interface RuleLimitTerm extends Span {
  /** 5 for `5%`. */
  readonly value: number;
  readonly unit: 'percent' | 'degrees' | 'number';
}

/** `2026-12-01` */
export interface CalendarDate extends Span {
  readonly text: string;
}

/** `(12, 40%)` */
export interface Coordinates extends Span {
  readonly x: Length;
  readonly y: Length;
}

export type Side = 'left' | 'right' | 'top' | 'bottom';

/** The nine places of a rectangle, in words. */
export type Spot =
  | 'upper left'
  | 'upper centre'
  | 'upper right'
  | 'middle left'
  | 'centre'
  | 'middle right'
  | 'lower left'
  | 'lower centre'
  | 'lower right';

export type DivisionSystem =
  | 'golden'
  | 'thirds'
  | 'two to three'
  | 'quarters'
  | 'rabatment'
  | 'diagonals'
  | 'armature'
  | 'root 2'
  | 'root 3'
  | 'root 4'
  | 'root 5'
  | 'own';

/** What `of ...` refers to: a division system, or the name of an object. */
export type Owner =
  | (Span & { readonly kind: 'system'; readonly system: DivisionSystem })
  | (Span & { readonly kind: 'name'; readonly name: Word });

export type PlaceBase =
  /** `(12, 40%)` */
  | { readonly kind: 'coordinates'; readonly at: Coordinates }
  /** `focus` */
  | { readonly kind: 'focus' }
  /** `upper right corner` of the canvas */
  | { readonly kind: 'corner'; readonly spot: Spot }
  /** `left edge at 20%`, `bottom edge`, `left edge of tower at 20%` */
  | { readonly kind: 'edge'; readonly side: Side; readonly of?: Word; readonly along?: Length }
  /** `upper right`, `upper right of thirds`, `upper right of tower`, `centre` */
  | { readonly kind: 'spot'; readonly spot: Spot; readonly of?: Owner }
  /** `crossing 2 1 of own`: second upright from the left, first level from the top, counted from 1 */
  | {
      readonly kind: 'crossing';
      readonly column: Quantity;
      readonly row: Quantity;
      readonly of?: Owner;
    }
  /** `tower`: the middle of that object */
  | { readonly kind: 'object'; readonly name: Word };

/** `3 cm left` */
export interface Move extends Span {
  readonly amount: Length;
  readonly direction: 'left' | 'right' | 'up' | 'down';
}

export interface Place extends Span {
  readonly base: PlaceBase;
  readonly moves: readonly Move[];
}

/** A colour as written: `#2f6f73`, `oklch(0.6 0.1 200)`, `7.5R 4/10`, or a name to be looked up. */
export type ColourSpec = Span & {
  readonly kind: 'hex' | 'css' | 'munsell' | 'name';
  readonly text: string;
};

export type ColourRole = 'dominant' | 'complement' | 'discord' | 'neutral';
export type ObjectRole = 'dominant' | 'secondary' | 'minor';
export type Plane = 'background' | 'middle' | 'foreground';
export type Edges = 'hard' | 'firm' | 'soft' | 'lost';
export type Means = 'value' | 'colour' | 'edges' | 'detail' | 'scale' | 'isolation';
/** From the ground up, as they are laid. */
export const layers = [
  'imprimatura',
  'underpainting',
  'block-in',
  'body colour',
  'scumble',
  'glaze',
  'detail',
  'varnish',
] as const;
export type Layer = (typeof layers)[number];

/** A word of a closed list, with where it stands. */
export interface Choice<T extends string> extends Span {
  readonly choice: T;
}

/** `24 x 30 cm`, `24 cm x 12 in`: one unit written last counts for both. */
export interface Extent extends Span {
  readonly width: Length;
  readonly height: Length;
}

export type ShapeForm =
  /** `rectangle (0, 0) to (80, 22)` */
  | { readonly form: 'rectangle corners'; readonly from: Place; readonly to: Place }
  /** `rectangle 20 x 12`, `ellipse 8 x 5`; placed with its middle at the object's `at` */
  | { readonly form: 'rectangle' | 'ellipse'; readonly extent: Extent; readonly at?: Place }
  /** `circle 8`: 8 across */
  | { readonly form: 'circle'; readonly across: Length; readonly at?: Place }
  /** `outline (1, 2) (3, 4) ...`, `smooth ...`; more points may follow on indented lines */
  | { readonly form: 'outline' | 'smooth'; readonly points: readonly Place[] }
  /** `path "M 0 0 L 10 0 ..."`: SVG path data in canvas units */
  | { readonly form: 'path'; readonly data: Sentence }
  /** `from "parts.svg" part "door"` */
  | { readonly form: 'file'; readonly file: Sentence; readonly part?: Sentence };

/** One entry of a budget: `dark 30%`, `4 20%` (a step), `complement 20%`. */
export interface BudgetShare extends Span {
  readonly name: Word;
  readonly share: Percentage;
}

/** `dark 1-2`, `middle 3` */
export interface ValueGroup extends Span {
  readonly name: Word;
  readonly from: Quantity;
  readonly to: Quantity;
}
