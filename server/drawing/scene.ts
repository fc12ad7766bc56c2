import type { OwnLocation } from '../plan/plan.js';
import type { Handling, Photograph } from './handling/handles.js';
import type { Box, Hex, Mark } from './mark-kinds.js';

// All that a scene is made of is to be had here.
export { frameHandles, sketchCorners } from './handling/handles.js';
export type {
  Frame,
  FrameHandle,
  Grip,
  Guides,
  Handling,
  Painted,
  Photograph,
  Sketch,
  SketchCorner,
  SketchLength,
  SketchPlace,
  Spot,
} from './handling/handles.js';
export { dashNames, isHex, tokens, weights } from './mark-kinds.js';
export type {
  Box,
  Dash,
  Face,
  Hex,
  ImageMark,
  Ink,
  Mark,
  MarkBase,
  PathMark,
  PictureData,
  Stroke,
  TextMark,
  Token,
  Weight,
} from './mark-kinds.js';

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
  /**
   * The canvas; in the view `palette` the wheel, in `sittings` the strip of pictures, in `record` those side by side
   * and the strip.
   */
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
  /**
   * The sitting that is shown in the view `record`, and those that can be; missing where no sitting names a photograph.
   */
  readonly record?: ShownRecord;
  /** The photographs that the plan names, when it was asked what can be changed by hand. */
  readonly photographs?: readonly Photograph[];
  /** What can be taken hold of and changed in the drawing, when that was asked for. */
  readonly handling?: Handling;
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
