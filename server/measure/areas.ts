import Flatbush from 'flatbush';
import type { Outline, Ring } from '../plan/geometry/outline.js';
import { boxContains } from '../plan/geometry/point.js';
import { type Grid, gridOver, polygonsOf, ringsOf } from '../plan/geometry/polygons.js';
import { areaOf } from '../plan/geometry/regions.js';
import {
  type Piece,
  type WorkCounter,
  pieceOf,
  rectanglePath,
  sharedArea,
  subtract,
} from '../plan/geometry/subtract.js';

export { areaOf, centroid, containsPoint, distanceToOutline, unionArea } from '../plan/geometry/regions.js';
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

export interface CanvasSize {
  readonly width: number;
  readonly height: number;
}

/** The canvas on the grid, and the key under which results for it are kept. */
interface Sheet {
  readonly key: string;
  readonly size: CanvasSize;
  readonly grid: Grid;
  readonly piece: Piece;
}

interface Layer {
  readonly outline: Outline;
  readonly piece: Piece;
}

/** A result and all that it depends on: the canvas, the shape itself, and the shapes in front of it, in order. */
interface Kept<Result> {
  readonly sheet: string;
  readonly inFront: readonly Outline[];
  readonly result: Result;
}

const keptPieces = new WeakMap<Outline, Kept<Piece>>();
/** `coveredBy` counts within the shapes in front, so that a result holds wherever they stand in the plan. */
const keptLayers = new WeakMap<Outline, Kept<LayerAreas>>();
const keptBare = new WeakMap<Outline, Kept<Piece>>();

/**
 * What is seen of each shape, and what stays bare. `layers` run from back to front. Shares and the bare share add
 * up to 1 within 1e-8: every part is cut on one grid of whole numbers over the canvas. Never throws; a shape
 * without area has areas and shares of 0, and a canvas without area leaves nothing visible and is all bare.
 *
 * Results are kept as long as the outlines they were worked out from, so that after a change only the shape that
 * changed and those behind it are worked out anew. `counter` counts that work.
 */
export function visibleAreas(
  canvas: CanvasSize,
  layers: readonly { readonly outline: Outline }[],
  counter?: WorkCounter,
): VisibleAreas {
  const sheet = sheetOf(canvas);
  if (!sheet) {
    return { layers: layers.map(({ outline }) => unseen(outline)), bareArea: 0, bareShare: 1, bare: [] };
  }
  const pieces = layers.map(({ outline }): Layer => ({ outline, piece: clipped(outline, sheet, counter) }));
  const inFront = overlapsInFront(pieces);
  const bare = bareGround(sheet, pieces, counter);
  const bareShare = bare.area / sheet.piece.area;
  return {
    layers: pieces.map((layer, index) => {
      const indices = inFront(index);
      const covers = indices.flatMap((cover) => pieces[cover] ?? []);
      const areas = uncovered(layer, covers, sheet, counter);
      const coveredBy = areas.coveredBy.map((cover) => ({
        index: indices[cover.index] ?? index,
        area: cover.area,
      }));
      return { ...areas, coveredBy };
    }),
    bareArea: bareShare * canvas.width * canvas.height,
    bareShare,
    bare: ringsOf(bare.polygons, sheet.grid),
  };
}

/** The sheet asked for last: while it is the same, what was cut out of it can be used again. */
let lastSheet: Sheet | undefined;

/** None for a canvas without area, or so narrow that its short side is lost on the grid. */
function sheetOf(size: CanvasSize): Sheet | undefined {
  const key = `${size.width} x ${size.height}`;
  if (lastSheet?.key === key) return lastSheet;
  const grid = gridOver({ left: 0, top: 0, right: size.width, bottom: size.height });
  if (!grid) return undefined;
  const right = Math.round(size.width * grid.scale);
  const bottom = Math.round(size.height * grid.scale);
  if (right === 0 || bottom === 0) return undefined;
  const piece = pieceOf([rectanglePath({ left: 0, top: 0, right, bottom })]);
  lastSheet = { key, size: { width: size.width, height: size.height }, grid, piece };
  return lastSheet;
}

function clipped(outline: Outline, sheet: Sheet, counter: WorkCounter | undefined): Piece {
  return kept(keptPieces, outline, sheet, [], () => {
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
  return kept(keptLayers, layer.outline, sheet, inFront, () => {
    const { outline, piece } = layer;
    const visible = subtract(
      piece,
      covers.map((cover) => cover.piece),
      counter,
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
          area: (sharedArea(piece, cover.piece, counter) / sheet.piece.area) * canvasArea,
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
  return kept(keptBare, lowest.outline, sheet, inFront, () =>
    subtract(
      sheet.piece,
      seen.map(({ piece }) => piece),
      counter,
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

function kept<Result>(
  store: WeakMap<Outline, Kept<Result>>,
  outline: Outline,
  sheet: Sheet,
  inFront: readonly Outline[],
  work: () => Result,
): Result {
  const last = store.get(outline);
  if (
    last?.sheet === sheet.key &&
    last.inFront.length === inFront.length &&
    last.inFront.every((other, index) => other === inFront[index])
  ) {
    return last.result;
  }
  const result = work();
  store.set(outline, { sheet: sheet.key, inFront, result });
  return result;
}
