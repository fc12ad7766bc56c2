import { clipped } from '../../plan/geometry/clipped.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { NOTHING, type Piece } from '../../plan/geometry/piece.js';
import { type Box, boxContains } from '../../plan/geometry/point.js';
import { ringsOf } from '../../plan/geometry/polygons.js';
import { areaOf } from '../../plan/geometry/regions.js';
import { type CanvasSize, Keeper, type Sheet, sheetsOver } from '../../plan/geometry/sheet.js';
import { type Way, type WorkCounter, subtract } from '../../plan/geometry/subtract.js';
import { type Cover, allCovers, firstCovers } from './covers.js';
import { InFront, boxesMeet } from './in-front.js';

export { areaOf, containsPoint, distanceToOutline, unionArea } from '../../plan/geometry/regions.js';
export type { CanvasSize } from '../../plan/geometry/sheet.js';
export type { WorkCounter } from '../../plan/geometry/subtract.js';

/** What is seen of one shape. Areas in squared canvas units, shares as parts: 0.3 is 30 %. */
export interface LayerAreas {
  /** The part on the canvas that nothing covers; outer rings and holes run in opposite directions. */
  readonly visible: readonly Ring[];
  readonly visibleArea: number;
  /** The whole shape, on the canvas and off it. */
  readonly ownArea: number;
  readonly onCanvasArea: number;
  /** Visible part of the canvas. */
  readonly share: number;
  /** Covered part of what lies on the canvas; 0 for a shape that is not on it. */
  readonly hiddenShare: number;
  /** Part of the shape that lies off the canvas; 0 for a shape without area. */
  readonly offCanvasShare: number;
  /**
   * The layers in front that cover some of it, the most covering first, each with all that it covers: two that
   * lie over each other count the same place twice. Those that cross it too often to be cut are not told. Worked out
   * when it is first read.
   */
  readonly coveredBy: readonly Cover[];
  /** Up to three of `coveredBy`, those that cover most, for much less work. */
  readonly mostCovering: readonly Cover[];
}

/** What is seen of one shape, without what covers it. */
export type SeenLayer = Omit<LayerAreas, 'coveredBy' | 'mostCovering'>;

/** What is seen of a picture, without what covers what. */
export interface SeenAreas {
  /** In the order of the layers given. */
  readonly layers: readonly SeenLayer[];
  readonly bareShare: number;
  /** Canvas that no shape covers. */
  readonly bare: readonly Ring[];
}

export interface VisibleAreas extends SeenAreas {
  readonly layers: readonly LayerAreas[];
  readonly bareArea: number;
}

/** Parts that do not add up within this part of the canvas were cut wrongly. */
const DOUBT = 1e-9;

const parts = new Keeper<SeenLayer>();

/**
 * What is seen of each shape, and what stays bare. `layers` run from back to front. Shares and the bare share add
 * up to 1 within 1e-8: every part is cut on one grid of whole numbers over the canvas. Never throws; a shape
 * without area has areas and shares of 0, and a canvas without area leaves nothing visible and is all bare.
 *
 * Results are kept as long as the outlines they were worked out from, so that after a change only the shape that
 * changed and those behind it are worked out anew. `counter` counts that work. Should the parts not add up, all is
 * cut again with a second opinion on every cut.
 *
 * @param last what was seen before: only what lies where a shape is another is looked at
 */
export function visibleAreas(
  canvas: CanvasSize,
  layers: readonly { readonly outline: Outline }[],
  counter?: WorkCounter,
  last?: VisibleAreas,
): VisibleAreas {
  const sheets = sheetsOver(canvas);
  if (!sheets) {
    return { layers: layers.map(({ outline }) => unseen(outline)), bareArea: 0, bareShare: 1, bare: [] };
  }
  const outlines = layers.map(({ outline }) => outline);
  const areas = areasOn(sheets.plain, outlines, counter, last && scenes.get(last));
  return addsUp(areas) ? areas : areasOn(sheets.careful, outlines, counter, undefined);
}

/** A picture as it was cut; lists are from back to front. */
interface Scene extends Cut {
  readonly outlines: readonly Outline[];
  readonly seen: readonly SeenLayer[];
  readonly told: readonly ToldLayer[];
  /** Whether each shape was cut by those in front of it one by one, whatever else there is. */
  readonly isPlain: boolean;
}

const scenes = new WeakMap<VisibleAreas, Scene>();

function areasOn(
  sheet: Sheet,
  outlines: readonly Outline[],
  counter: WorkCounter | undefined,
  last: Scene | undefined,
): VisibleAreas {
  const way: Way = { careful: sheet.careful, counter };
  const pieces = outlines.map((outline) => clipped(outline, sheet, counter));
  const cut = { pieces, sheet, way };
  const { seen, stays, inFront } = (last && seenAfter(last, outlines, cut)) ?? seenFromFront(outlines, cut);
  const { isPlain } = inFront;
  const bare = subtract(sheet.piece, inFront.covers(sheet.piece), way);
  const bareShare = bare.area / sheet.piece.area;
  const told = seen.map((areas, index) =>
    stays[index] === 1 ? carriedOver(last?.told[index] as ToldLayer, cut) : withCovers(areas, index, cut),
  );
  const areas: VisibleAreas = {
    layers: told.map((layer) => layer.areas),
    bareArea: bareShare * canvasArea(sheet),
    bareShare,
    bare: ringsOf(bare.polygons, sheet.grid),
  };
  scenes.set(areas, { ...cut, outlines, seen, told, isPlain });
  return areas;
}

interface SeenInScene {
  readonly seen: readonly SeenLayer[];
  /** 1 for each layer of which nothing can be another than before, nor of what covers it. */
  readonly stays: Uint8Array;
  /** With all that is seen added. */
  readonly inFront: InFront;
}

function seenFromFront(outlines: readonly Outline[], { pieces, sheet, way }: Cut): SeenInScene {
  const inFront = new InFront(pieces, way, true);
  const seen: SeenLayer[] = [];
  for (let index = outlines.length - 1; index >= 0; index--) {
    const piece = pieces[index] ?? NOTHING;
    const areas = uncovered(outlines[index] as Outline, piece, inFront.covers(piece), sheet, way);
    if (areas.share > 0) inFront.add(index);
    seen.push(areas);
  }
  return { seen: seen.reverse(), stays: new Uint8Array(outlines.length), inFront };
}

/** With more layers than this to look at, all are. */
const FEW_STIRRED = 64;

/**
 * What is seen when some outlines are others than in the scene before: looked at are these and what lies behind them.
 * Nothing when they are many, or when what covers one layer hangs on which others were asked for before it.
 */
function seenAfter(last: Scene, outlines: readonly Outline[], cut: Cut): SeenInScene | undefined {
  const { pieces, sheet, way } = cut;
  if (!last.isPlain || last.sheet !== sheet || last.outlines.length !== outlines.length) return undefined;
  const inFront = new InFront(pieces, way, false);
  const seen = last.seen.slice();
  const stays = new Uint8Array(outlines.length).fill(1);
  /** Where something has come or gone, in front of the layer that is looked at. */
  const stirred: Box[] = [];
  let looked = 0;
  for (let index = outlines.length - 1; index >= 0; index--) {
    const outline = outlines[index] as Outline;
    const piece = pieces[index] as Piece;
    const before = last.seen[index] as SeenLayer;
    const isOther = outline !== last.outlines[index];
    if (isOther || isTouched(piece.box, stirred)) {
      if (++looked > FEW_STIRRED) return undefined;
      const covers = inFront.covers(piece);
      if (!inFront.isPlain) return undefined;
      const areas = uncovered(outline, piece, covers, sheet, way);
      seen[index] = areas;
      stays[index] = 0;
      if (isOther || areas.share > 0 !== before.share > 0) {
        stirred.push(piece.box, (last.pieces[index] as Piece).box);
      }
    }
    if ((seen[index] as SeenLayer).share > 0) inFront.add(index);
  }
  return { seen, stays, inFront };
}

function isTouched(box: Box, others: readonly Box[]): boolean {
  for (const other of others) if (boxesMeet(box, other)) return true;
  return false;
}

/** The parts make up the canvas. */
function addsUp({ layers, bareShare }: VisibleAreas): boolean {
  return Math.abs(layers.reduce((total, { share }) => total + share, bareShare) - 1) <= DOUBT;
}

function uncovered(
  outline: Outline,
  piece: Piece,
  covers: readonly Piece[],
  sheet: Sheet,
  way: Way,
): SeenLayer {
  return parts.recall(sheet, outline, covers, () =>
    seenLayer(outline, piece, subtract(piece, covers, way), sheet),
  );
}

/** What is told of a shape of which so much is seen. */
export function seenLayer(outline: Outline, piece: Piece, visible: Piece, sheet: Sheet): SeenLayer {
  const onCanvasArea = (piece.area / sheet.piece.area) * canvasArea(sheet);
  const ownArea = ownAreaOf(outline, sheet, onCanvasArea);
  const share = visible.area / sheet.piece.area;
  return {
    visible: ringsOf(visible.polygons, sheet.grid),
    visibleArea: share * canvasArea(sheet),
    ownArea,
    onCanvasArea,
    share,
    hiddenShare: missingPart(visible.area, piece.area),
    offCanvasShare: missingPart(onCanvasArea, ownArea),
  };
}

/** A layer, and the picture in which its covers are looked for. */
interface ToldLayer {
  readonly areas: LayerAreas;
  cut: Cut;
}

/** Plain data to any reader: the two lists of covers are enumerable, and worked out once when first read. */
function withCovers(seen: SeenLayer, index: number, cut: Cut): ToldLayer {
  let all: readonly Cover[] | undefined;
  let first: readonly Cover[] | undefined;
  const told: ToldLayer = {
    cut,
    areas: {
      ...seen,
      get coveredBy() {
        return (all ??= inUnits(coversOf(seen, index, told.cut), told.cut.sheet));
      },
      get mostCovering() {
        return (first ??= inUnits(firstCovers(told.cut.pieces, index, told.cut.way), told.cut.sheet));
      },
    },
  };
  return told;
}

/** The same layer in a picture in which all that covers it is the same: the one before need not be kept for it. */
function carriedOver(told: ToldLayer, cut: Cut): ToldLayer {
  told.cut = cut;
  return told;
}

/** What all shapes of a picture share, from back to front. */
interface Cut {
  readonly pieces: readonly Piece[];
  readonly sheet: Sheet;
  readonly way: Way;
}

function coversOf({ share }: SeenLayer, index: number, { pieces, sheet, way }: Cut): readonly Cover[] {
  const hidden = (pieces[index]?.area ?? 0) - share * sheet.piece.area;
  return allCovers(pieces, index, { hidden, slack: DOUBT * sheet.piece.area }, way);
}

function inUnits(covers: readonly Cover[], sheet: Sheet): readonly Cover[] {
  return covers.map((cover) => ({ ...cover, area: (cover.area / sheet.piece.area) * canvasArea(sheet) }));
}

function canvasArea({ size }: Sheet): number {
  return size.width * size.height;
}

function ownAreaOf(outline: Outline, { size }: Sheet, onCanvasArea: number): number {
  const canvas = { left: 0, top: 0, right: size.width, bottom: size.height };
  return boxContains(canvas, outline.box) ? onCanvasArea : areaOf(outline.rings, outline.fillRule);
}

function unseen(outline: Outline): LayerAreas {
  const ownArea = areaOf(outline.rings, outline.fillRule);
  return {
    visible: [],
    visibleArea: 0,
    ownArea,
    onCanvasArea: 0,
    share: 0,
    hiddenShare: 0,
    offCanvasShare: ownArea > 0 ? 1 : 0,
    coveredBy: [],
    mostCovering: [],
  };
}

function missingPart(part: number, whole: number): number {
  return whole > 0 ? Math.min(1, Math.max(0, 1 - part / whole)) : 0;
}
