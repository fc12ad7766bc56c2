import { apply, rotate } from '../../plan/geometry/matrix.js';
import type { Point } from '../../plan/geometry/point.js';
import { type Frame, type FrameHandle, frameHandles } from './handles.js';

/** No side is made shorter than this part of what it was. */
const SHORTEST = 0.01;

/**
 * Which way a handle lies from the middle of its frame: -1, 0 or 1, to the right and downwards, before it is turned.
 */
function sideOf(handle: FrameHandle): Point {
  const x = handle.endsWith('left') ? -1 : handle.endsWith('right') ? 1 : 0;
  const y = handle.startsWith('upper') ? -1 : handle.startsWith('lower') ? 1 : 0;
  return { x, y };
}

/** Where a handle of a frame lies. */
export function handlePlace(frame: Frame, handle: FrameHandle): Point {
  return placeIn(frame, sideOf(handle));
}

/** The corners of a frame, from its upper left one clockwise. */
export function frameCorners(frame: Frame): readonly Point[] {
  return frameHandles.filter((handle) => isCorner(handle)).map((handle) => handlePlace(frame, handle));
}

function isCorner(handle: FrameHandle): boolean {
  const { x, y } = sideOf(handle);
  return x !== 0 && y !== 0;
}

/** The only way that a handle goes, of length one, with the turn of the frame; none for a corner that goes anywhere. */
export function wayOf(frame: Frame, handle: FrameHandle, keepsProportion: boolean): Point | undefined {
  const side = sideOf(handle);
  const isFree = isCorner(handle) && !keepsProportion && frame.isEven !== true;
  if (isFree) return undefined;
  const [x, y] = isCorner(handle) ? [side.x * frame.width, side.y * frame.height] : [side.x, side.y];
  const length = Math.hypot(x, y);
  return apply(rotate(frame.turn), { x: x / length, y: y / length });
}

/**
 * The frame with one of its handles at a place. The opposite corner stays, or the middle of the opposite side; a side
 * goes only its own way.
 */
export function resized(frame: Frame, handle: FrameHandle, to: Point, keepsProportion: boolean): Frame {
  const { width, height, turn } = frame;
  const side = sideOf(handle);
  const still = placeIn(frame, { x: -side.x, y: -side.y });
  const way = apply(rotate(-turn), { x: to.x - still.x, y: to.y - still.y });
  const across = side.x === 0 ? width : Math.max(SHORTEST * width, side.x * way.x);
  const down = side.y === 0 ? height : Math.max(SHORTEST * height, side.y * way.y);
  const size =
    keepsProportion || frame.isEven === true
      ? evenly(frame, handle, { width: across, height: down }, way)
      : { width: across, height: down };
  const middle = apply(rotate(turn), { x: (side.x * size.width) / 2, y: (side.y * size.height) / 2 });
  return { ...frame, ...size, middle: { x: still.x + middle.x, y: still.y + middle.y } };
}

/** Whether a place lies in a frame. */
export function isInside({ middle, width, height, turn }: Frame, at: Point): boolean {
  const { x, y } = apply(rotate(-turn), { x: at.x - middle.x, y: at.y - middle.y });
  return Math.abs(x) < width / 2 && Math.abs(y) < height / 2;
}

type Size = Pick<Frame, 'width' | 'height'>;

/** Both sides so many times as long: by the one side that goes, or by how far along the diagonal a corner has come. */
function evenly({ width, height }: Frame, handle: FrameHandle, asked: Size, way: Point): Size {
  const { x, y } = sideOf(handle);
  const wanted = isCorner(handle)
    ? (x * way.x * width + y * way.y * height) / (width * width + height * height)
    : x === 0
      ? asked.height / height
      : asked.width / width;
  const factor = Math.max(SHORTEST, wanted);
  return { width: factor * width, height: factor * height };
}

function placeIn({ middle, width, height, turn }: Frame, { x, y }: Point): Point {
  const way = apply(rotate(turn), { x: (x * width) / 2, y: (y * height) / 2 });
  return { x: middle.x + way.x, y: middle.y + way.y };
}
