import type { Spot } from '../../../server/drawing/scene.js';
import type { Board } from './board.js';
import { frameAt, type Grip } from './grips.js';
import { sizeInWords, wayInWords } from './lengths.js';
import type { Overlay } from './overlay.js';
import { difference } from './place.js';

/** Begins to show what a grip takes along. */
export function beginMove(board: Board, overlay: Overlay, grip: Grip): void {
  const movesAll = grip.kind === 'object' || grip.kind === 'lead' || grip.kind === 'focus';
  overlay.beginGhost(movesAll ? board.surface.outlineOf(grip.subject) : []);
}

/** Shows a grip with what it takes along at a place of the drawing. */
export function showMove(
  board: Board,
  overlay: Overlay,
  grip: Grip,
  at: Spot,
  keepsProportion: boolean,
): void {
  const by = difference(at, grip.at);
  switch (grip.kind) {
    case 'size': {
      const frame = frameAt(grip, board.inPlan(at), keepsProportion);
      overlay.showFrame(board.outlineOfFrame(frame));
      for (const [key, place] of board.placesOfFrame(grip.subject, frame)) overlay.placeGrip(key, place);
      return;
    }
    case 'point':
    case 'lead place':
      overlay.shift(by, grip.key);
      return;
    case 'object':
    case 'lead':
    case 'focus':
      overlay.moveGhost(by);
      overlay.shift(by);
  }
}

/** How far something has come, or how large it is now: `3.5 cm right`, `6 × 9 cm`. */
export function moveInWords(board: Board, grip: Grip, at: Spot, keepsProportion: boolean): string {
  if (grip.kind !== 'size') return wayInWords(difference(at, grip.at), board.unit);
  const { width, height } = frameAt(grip, board.inPlan(at), keepsProportion);
  return sizeInWords({ x: 0, y: 0 }, { x: width, y: height }, board.unit);
}

/** What is told of: the thing that is sized, or what is moved. */
export function movedName(grip: Grip): string {
  return grip.kind === 'size' ? grip.thing : grip.name;
}
