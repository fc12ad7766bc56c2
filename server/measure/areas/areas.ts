import { clipped } from '../../plan/geometry/clipped.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { NOTHING, type Piece } from '../../plan/geometry/piece.js';
import { boxContains } from '../../plan/geometry/point.js';
import { ringsOf } from '../../plan/geometry/polygons.js';
import { areaOf } from '../../plan/geometry/regions.js';
import { type CanvasSize, Keeper, type Sheet, sheetsOver } from '../../plan/geometry/sheet.js';
import { type Way, type WorkCounter, subtract } from '../../plan/geometry/subtract.js';
import { type Cover, allCovers, firstCovers } from './covers.js';
import { InFront } from './in-front.js';

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
 */
export function visibleAreas(
  canvas: CanvasSize,
  layers: readonly { readonly outline: Outline }[],
  counter?: WorkCounter,
): VisibleAreas {
  const sheets = sheetsOver(canvas);
  if (!sheets) {
    return { layers: layers.map(({ outline }) => unseen(outline)), bareArea: 0, bareShare: 1, bare: [] };
  }
  const areas = areasOn(sheets.plain, layers, counter);
  return addsUp(areas) ? areas : areasOn(sheets.careful, layers, counter);
}

function areasOn(
  sheet: Sheet,
  outlines: readonly { readonly outline: Outline }[],
  counter: WorkCounter | undefined,
): VisibleAreas {
  const way: Way = { careful: sheet.careful, counter };
  const pieces = outlines.map(({ outline }) => clipped(outline, sheet, counter));
  const inFront = new InFront(pieces, way);
  const seen = outlines
    .map(({ outline }, index) => ({ outline, index }))
    .reverse()
    .map(({ outline, index }) => {
      const piece = pieces[index] ?? NOTHING;
      const areas = uncovered(outline, piece, inFront.covers(piece), sheet, way);
      if (areas.share > 0) inFront.add(index);
      return areas;
    })
    .reverse();
  const bare = subtract(sheet.piece, inFront.covers(sheet.piece), way);
  const bareShare = bare.area / sheet.piece.area;
  const cut = { pieces, sheet, way };
  return {
    layers: seen.map((areas, index) => withCovers(areas, index, cut)),
    bareArea: bareShare * canvasArea(sheet),
    bareShare,
    bare: ringsOf(bare.polygons, sheet.grid),
  };
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

/** Plain data to any reader: the two lists of covers are enumerable, and worked out once when first read. */
function withCovers(seen: SeenLayer, index: number, cut: Cut): LayerAreas {
  let all: readonly Cover[] | undefined;
  let first: readonly Cover[] | undefined;
  return {
    ...seen,
    get coveredBy() {
      return (all ??= inUnits(coversOf(seen, index, cut), cut.sheet));
    },
    get mostCovering() {
      return (first ??= inUnits(firstCovers(cut.pieces, index, cut.way), cut.sheet));
    },
  };
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
