import { marked, said, t } from '../../../grammar/localised.js';
import { type Box, sketchCorners, type SketchPlace, type Spot } from '../../../server/drawing/scene.js';
import { BESIDE, ownCorners, placesIn, type Size } from './sketch-squaring.js';

/**
 * What is placed in a sketch or a photograph: the corners of the canvas, and in a photograph a patch of neutral grey.
 */
export const placeables = [...sketchCorners, 'grey'] as const;
export type Placeable = (typeof placeables)[number];
/** Where they lie, in pixels; the grey patch only where there is one. */
export type CornerPlaces = ReadonlyMap<Placeable, Spot>;

/** Part of the longer side that is seen beside a sketch, so that a corner on its border can be taken hold of. */
const MARGIN = 0.05;
/** Part of the longer side that an arrow key moves a corner by, at least a pixel. */
const STEP = 0.001;

/** As a plan gives them; the sketch's own where it gives not four. */
export function cornerPlaces(size: Size, corners: readonly SketchPlace[], grey?: SketchPlace): CornerPlaces {
  const [patch] = grey === undefined ? [] : placesIn(size, [grey]);
  const places = corners.length === sketchCorners.length ? placesIn(size, corners) : ownCorners(size);
  return new Map<Placeable, Spot>([
    ...sketchCorners.map((corner, index) => [corner, places[index] ?? { x: 0, y: 0 }] as const),
    ...(patch === undefined ? [] : [['grey', patch] as const]),
  ]);
}

/** What is to be seen: the sketch with a margin, and corners that lie beside it. */
export function seenBox({ width, height }: Size, places: CornerPlaces): Box {
  const all = [{ x: 0, y: 0 }, { x: width, y: height }, ...places.values()];
  const margin = MARGIN * Math.max(width, height);
  const left = Math.min(...all.map(({ x }) => x)) - margin;
  const top = Math.min(...all.map(({ y }) => y)) - margin;
  return {
    x: left,
    y: top,
    width: Math.max(...all.map(({ x }) => x)) + margin - left,
    height: Math.max(...all.map(({ y }) => y)) + margin - top,
  };
}

/** The nearest place, in whole pixels, where a corner may lie. */
export function withinReach({ x, y }: Spot, { width, height }: Size): Spot {
  return { x: within(x, width), y: within(y, height) };
}

/** How far an arrow key moves a corner, with Shift ten times as far. Pixels. */
export function stepIn({ width, height }: Size, isLarge: boolean): number {
  const step = Math.max(1, Math.round(STEP * Math.max(width, height)));
  return isLarge ? 10 * step : step;
}

const cornerWords: Readonly<Record<Placeable, string>> = {
  'upper left': marked('upper left corner of the canvas'),
  'upper right': marked('upper right corner of the canvas'),
  'lower right': marked('lower right corner of the canvas'),
  'lower left': marked('lower left corner of the canvas'),
  grey: marked('grey patch'),
};

/** `upper left corner of the canvas, 200 pixels from the left, 60 from the top` */
export function cornerInWords(corner: Placeable, { x, y }: Spot): string {
  return t(
    '{0}, {1} pixels from the left, {2} from the top',
    said(cornerWords[corner]),
    Math.round(x),
    Math.round(y),
  );
}

function within(place: number, side: number): number {
  const beside = Math.floor(BESIDE * side);
  return Math.min(side + beside, Math.max(-beside, Math.round(place)));
}
