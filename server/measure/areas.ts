import Flatbush from 'flatbush';
import type { Outline, Ring } from '../plan/geometry/outline.js';
import { boxContains } from '../plan/geometry/point.js';
import { polygonsOf, ringsOf } from '../plan/geometry/polygons.js';
import { areaOf } from '../plan/geometry/regions.js';
import { type CanvasSize, Keeper, type Sheet, sheetsOver } from '../plan/geometry/sheet.js';
import { type Piece, type WorkCounter, pieceOf, sharedArea, subtract } from '../plan/geometry/subtract.js';

export { areaOf, centroid, containsPoint, distanceToOutline, unionArea } from '../plan/geometry/regions.js';
export type { CanvasSize } from '../plan/geometry/sheet.js';
export type { WorkCounter } from '../plan/geometry/subtract.js';

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
   * lie over each other count the same place twice.
   */
  readonly coveredBy: readonly { readonly index: number; readonly area: number }[];
}

export interface VisibleAreas {
  /** In the order of the layers given. */
  readonly layers: readonly LayerAreas[];
  readonly bareArea: number;
  readonly bareShare: number;
  /** Canvas that no shape covers. */
  readonly bare: readonly Ring[];
}

interface Layer {
  readonly outline: Outline;
  readonly piece: Piece;
}

/** Parts that do not add up within this part of the canvas were cut wrongly. */
const DOUBT = 1e-9;

const pieces = new Keeper<Piece>();
/** `coveredBy` counts within the shapes in front, so that a result holds wherever they stand in the plan. */
const parts = new Keeper<LayerAreas>();
const bareParts = new Keeper<Piece>();

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
  return addsUp(areas, canvas) ? areas : areasOn(sheets.careful, layers, counter);
}

function areasOn(
  sheet: Sheet,
  outlines: readonly { readonly outline: Outline }[],
  counter: WorkCounter | undefined,
): VisibleAreas {
  const layers = outlines.map(({ outline }): Layer => ({ outline, piece: clipped(outline, sheet, counter) }));
  const inFront = overlapsInFront(layers);
  const bare = bareGround(sheet, layers, counter);
  const bareShare = bare.area / sheet.piece.area;
  return {
    layers: layers.map((layer, index) => {
      const indices = inFront(index);
      const covers = indices.flatMap((cover) => layers[cover] ?? []);
      const areas = uncovered(layer, covers, sheet, counter);
      const coveredBy = areas.coveredBy.map((cover) => ({
        index: indices[cover.index] ?? index,
        area: cover.area,
      }));
      return { ...areas, coveredBy };
    }),
    bareArea: bareShare * sheet.size.width * sheet.size.height,
    bareShare,
    bare: ringsOf(bare.polygons, sheet.grid),
  };
}

/** The parts make up the canvas, and what is hidden of a shape fits what covers it. */
function addsUp({ layers, bareShare }: VisibleAreas, { width, height }: CanvasSize): boolean {
  const sum = layers.reduce((total, { share }) => total + share, bareShare);
  const slack = DOUBT * width * height;
  return (
    Math.abs(sum - 1) <= DOUBT &&
    layers.every(({ onCanvasArea, visibleArea, coveredBy }) => {
      const hidden = onCanvasArea - visibleArea;
      const most = coveredBy.reduce((total, { area }) => total + area, 0);
      return hidden <= most + slack && hidden >= (coveredBy[0]?.area ?? 0) - slack;
    })
  );
}

function clipped(outline: Outline, sheet: Sheet, counter: WorkCounter | undefined): Piece {
  return pieces.recall(sheet, outline, [], () => {
    if (counter) counter.clips++;
    return pieceOf(polygonsOf(outline, sheet.grid));
  });
}

/** For each layer, those in front of it whose boxes overlap its own, from back to front. */
function overlapsInFront(layers: readonly Layer[]): (index: number) => readonly number[] {
  if (layers.length === 0) return () => [];
  const boxes = new Flatbush(layers.length);
  for (const { piece } of layers) boxes.add(piece.box.left, piece.box.top, piece.box.right, piece.box.bottom);
  boxes.finish();
  return (index) => {
    const piece = layers[index]?.piece;
    if (!piece || piece.area === 0) return [];
    const { left, top, right, bottom } = piece.box;
    return boxes
      .search(left, top, right, bottom, (other) => other > index && (layers[other]?.piece.area ?? 0) > 0)
      .sort((a, b) => a - b);
  };
}

function uncovered(
  layer: Layer,
  covers: readonly Layer[],
  sheet: Sheet,
  counter: WorkCounter | undefined,
): LayerAreas {
  const inFront = covers.map(({ outline }) => outline);
  return parts.recall(sheet, layer.outline, inFront, () => {
    const { outline, piece } = layer;
    const way = { careful: sheet.careful, counter };
    const visible = subtract(
      piece,
      covers.map((cover) => cover.piece),
      way,
    );
    const canvasArea = sheet.size.width * sheet.size.height;
    const onCanvasArea = (piece.area / sheet.piece.area) * canvasArea;
    const ownArea = ownAreaOf(outline, sheet, onCanvasArea);
    const share = visible.area / sheet.piece.area;
    return {
      visible: ringsOf(visible.polygons, sheet.grid),
      visibleArea: share * canvasArea,
      ownArea,
      onCanvasArea,
      share,
      hiddenShare: missingPart(visible.area, piece.area),
      offCanvasShare: missingPart(onCanvasArea, ownArea),
      coveredBy: covers
        .map((cover, index) => ({
          index,
          area: (sharedArea(piece, cover.piece, way) / sheet.piece.area) * canvasArea,
        }))
        .filter(({ area }) => area > 0)
        .sort((a, b) => b.area - a.area),
    };
  });
}

function bareGround(sheet: Sheet, layers: readonly Layer[], counter: WorkCounter | undefined): Piece {
  const seen = layers.filter(({ piece }) => piece.area > 0);
  const [lowest, ...others] = seen;
  if (!lowest) return sheet.piece;
  const inFront = others.map(({ outline }) => outline);
  return bareParts.recall(sheet, lowest.outline, inFront, () =>
    subtract(
      sheet.piece,
      seen.map(({ piece }) => piece),
      { careful: sheet.careful, counter },
    ),
  );
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
  };
}

function missingPart(part: number, whole: number): number {
  return whole > 0 ? Math.min(1, Math.max(0, 1 - part / whole)) : 0;
}
