import type { OwnLocation } from '../plan/plan.js';

/** A reading of the plan, as painters know them. */
export const views = [
  'drawing',
  'notan',
  'values',
  'colour',
  'squint',
  'mirror',
  'path',
  'emphasis',
  'transfer',
  'palette',
  'sittings',
  'record',
] as const;
export type View = (typeof views)[number];

/** Views that lay out what the picture is made with and when, instead of the picture at the size of the canvas. */
export const boardViews = ['palette', 'sittings', 'record'] as const satisfies readonly View[];
export type BoardView = (typeof boardViews)[number];
/** Views of the picture itself. */
export type PictureView = Exclude<View, BoardView>;
/** Views in which pictures are shown side by side; all of them the right way round, and of the picture alone. */
export const comparedViews = [
  'drawing',
  'notan',
  'values',
  'colour',
  'squint',
  'path',
  'emphasis',
] as const satisfies readonly PictureView[];
export type ComparedView = (typeof comparedViews)[number];

export function isBoardView(view: View): view is BoardView {
  return (boardViews as readonly View[]).includes(view);
}

/**
 * What is to be drawn: plain JSON data, so that a worker can compose it and a page can draw it.
 *
 * All places and lengths are in canvas units, x to the right and y down from the upper left corner of the
 * picture; the sheet reaches beyond the picture on every side, so its corner is negative. Everything visible
 * is a mark, and a mark is a path or a line of text. Each mark has a key that stays the same from one scene
 * to the next and is unique in the scene, which is what lets a drawing be patched instead of drawn anew.
 */
export interface Scene {
  readonly view: View;
  /** The whole sheet: mount, picture and captions. */
  readonly sheet: Box;
  /** The canvas; in the view `palette` the wheel, in `sittings` the strip of pictures, in `record` those side by side and the strip. */
  readonly picture: Box;
  /** Height of the body text; stroke weights are parts of it. */
  readonly em: number;
  /** One line, for `<title>` and a window's title. */
  readonly title: string;
  /** What the drawing shows, in sentences, for `<desc>` and screen readers. */
  readonly description: string;
  /** Back to front. */
  readonly layers: readonly SceneLayer[];
  /** What marks stand for, by the key that they name in `subject`. */
  readonly subjects: Readonly<Record<string, Subject>>;
  /** The same figures as the bars drawn on the sheet, for a table or a reader. */
  readonly budgets: readonly BudgetBars[];
  readonly legend: readonly LegendEntry[];
  /** From where the picture is looked at, in the view that depends on it. */
  readonly viewing?: Viewing;
  /** The sitting that is shown in the view `record`, and those that can be; missing where no sitting names a photograph. */
  readonly record?: ShownRecord;
  /** The photographs that the plan names, when it was asked what can be changed by hand. */
  readonly photographs?: readonly Photograph[];
  /** What can be taken hold of and changed in the drawing, when that was asked for. */
  readonly handling?: Handling;
}

/**
 * What a hand can do in the drawing. Places and lengths are those of the plan, in canvas units: in the view `mirror`, where
 * marks are turned round, they are not.
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
  /** Where the corners of the canvas lie in it: upper left, upper right, lower right, lower left; none when they are its own. */
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

/** How far off a picture is looked at. */
export interface Viewing {
  readonly distanceMillimetres: number;
  /** The distance taken when none is asked for. */
  readonly usualMillimetres: number;
  /** What such distances are told in: metres, or feet for a canvas in inches. */
  readonly unit: 'm' | 'ft';
}

/** Sittings by their index among those of the plan. */
export interface ShownRecord {
  /** Those that name a photograph, in the order of the text. */
  readonly sittings: readonly {
    readonly sitting: number;
    /** Key into `subjects`. */
    readonly subject: string;
    /** Its title. */
    readonly name: string;
  }[];
  readonly chosen: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * `mount` is the sheet under the picture; `picture` is clipped to the canvas; `construction` holds division
 * lines, horizon, leads and the focal point, clipped too; `names` and `findings` may reach over the edge;
 * `captions` is all that stands beside or below.
 */
export const layerNames = ['mount', 'picture', 'construction', 'names', 'findings', 'captions'] as const;
export type LayerName = (typeof layerNames)[number];

export interface SceneLayer {
  readonly name: LayerName;
  /** Back to front. */
  readonly marks: readonly Mark[];
  /** The layer is seen out of focus: standard deviation of a Gaussian blur in linear light, canvas units. */
  readonly blur?: number;
}

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

/** A picture in pixels, stretched over a box: a photograph, or figures shown as tones. It is always one that we have made. */
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

/** What a mark stands for in the text of the plan. */
export type Subject = Placed &
  (
    | {
        readonly kind: 'object' | 'lead' | 'paint' | 'sitting';
        /** The name's key in the plan; of a sitting its title. */
        readonly key: string;
        readonly name: string;
        readonly lines: Lines;
      }
    | {
        readonly kind: 'canvas' | 'ground' | 'focus' | 'horizon' | 'division' | 'grid' | 'scale' | 'budget';
        readonly name: string;
      }
    | {
        readonly kind: 'finding';
        /** The rule's id in words. */
        readonly name: string;
        readonly severity: 'error' | 'warning' | 'hint';
        readonly message: string;
      }
  );

interface Placed {
  /** In the plan's own text; for what stands in a plan that it builds on, where it names that one. */
  readonly location: OwnLocation;
  /** Where it stands in such a plan. */
  readonly from?: { readonly file: string; readonly line: number };
}

/** Zero-based, both included. */
export interface Lines {
  readonly first: number;
  readonly last: number;
}

export interface BudgetBars {
  readonly of: 'value' | 'colour';
  /** Part of the picture by which a share may miss what is wanted. */
  readonly tolerance: number;
  readonly bars: readonly BudgetBar[];
}

/** Shares are parts of the whole picture: 0.3 is 30 %. */
export interface BudgetBar {
  readonly key: string;
  readonly name: string;
  readonly target: number;
  readonly share: number;
  readonly within: boolean;
  /** The colours counted in it, largest share first. */
  readonly swatches: readonly Hex[];
}

export interface LegendEntry {
  readonly key: string;
  readonly text: string;
}

/** Whether an ink is a colour of the picture rather than a token of the theme. */
export function isHex(ink: Ink): ink is Hex {
  return ink.startsWith('#');
}
