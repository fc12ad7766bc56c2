import { marked, said, t } from '../../../grammar/localised.js';
import { handlePlace, isInside, resized, wayOf } from '../../../server/drawing/handling/frame.js';
import {
  type Frame,
  type FrameHandle,
  frameHandles,
  type Grip as SceneGrip,
  type Handling,
  type Spot,
} from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { difference } from './place.js';

/** Which way a pointer over a handle shows that it goes. */
export type Pull = 'ew' | 'nwse' | 'ns' | 'nesw';

/** A corner or a side of the frame round an object. */
export interface SizeGrip extends Pick<SceneGrip, 'key' | 'subject' | 'at' | 'name' | 'fixed'> {
  readonly kind: 'size';
  readonly handle: FrameHandle;
  /** As it is in the plan, whatever way round the drawing shows it. */
  readonly frame: Frame;
  readonly thing: string;
  readonly pull: Pull;
}

/** What can be taken hold of in the page: what the drawing tells, and the handles of frames. */
export type Grip = SceneGrip | SizeGrip;

const names: Readonly<Record<FrameHandle, string>> = {
  'upper left': marked('upper left corner'),
  'upper centre': marked('top'),
  'upper right': marked('upper right corner'),
  'middle right': marked('right side'),
  'lower right': marked('lower right corner'),
  'lower centre': marked('foot'),
  'lower left': marked('lower left corner'),
  'middle left': marked('left side'),
};

/**
 * The handles of an object's frame.
 * @param turn where a place of the plan lies in the drawing
 */
export function sizeGripsOf(
  { subject, name, fixed, frame }: SceneGrip,
  turn: (at: Spot) => Spot,
): readonly SizeGrip[] {
  if (frame === undefined) return [];
  return frameHandles.map((handle) => ({
    key: `${subject}:size:${handle}`,
    subject,
    kind: 'size',
    at: turn(handlePlace(frame, handle)),
    name: t('{0} of {1}', said(names[handle]), name),
    ...(fixed === undefined ? {} : { fixed }),
    handle,
    frame,
    thing: name,
    pull: pullOf(frame, handle, turn),
  }));
}

/** By its key, in places of the plan. */
export function gripIn({ grips }: Handling, key: string): Grip | undefined {
  return (
    grips.find((grip) => grip.key === key) ??
    grips
      .filter(({ subject }) => key.startsWith(`${subject}:size:`))
      .flatMap((grip) => sizeGripsOf(grip, (at) => at))
      .find((grip) => grip.key === key)
  );
}

/** What it comes to when a grip is put down at a place of the plan. */
export function putDown(grip: Grip, to: Spot, keepsProportion: boolean): HandChange {
  if (grip.kind !== 'size') return { kind: 'move', grip: grip.key, to };
  return { kind: 'size', subject: grip.subject, handle: grip.handle, to, keepsProportion };
}

/** The frame with the handle at a place of the plan. */
export function frameAt({ frame, handle }: SizeGrip, to: Spot, keepsProportion: boolean): Frame {
  return resized(frame, handle, to, keepsProportion);
}

/** The only way that a handle goes in the plan, with how far it goes along it while its longer side grows by one. */
export function onlyWay(
  { frame, handle }: SizeGrip,
  keepsProportion: boolean,
): { readonly way: Spot; readonly perUnit: number } | undefined {
  const way = wayOf(frame, handle, keepsProportion);
  if (way === undefined) return undefined;
  const isSide = handle.endsWith('centre') || handle.startsWith('middle');
  const { width, height } = frame;
  return { way, perUnit: isSide ? 1 : Math.hypot(width, height) / Math.max(width, height) };
}

/**
 * Whether a place of the plan is so far inside that it takes hold of the thing, not of a handle, however small that is.
 */
export function isDeepInside({ frame }: SizeGrip, at: Spot): boolean {
  return isInside({ ...frame, width: frame.width / 2, height: frame.height / 2 }, at);
}

function pullOf({ turn: degrees }: Frame, handle: FrameHandle, turn: (at: Spot) => Spot): Pull {
  const middle = { x: 0, y: 0 };
  const square: Frame = { middle, width: 1, height: 1, turn: degrees };
  const { x, y } = difference(turn(handlePlace(square, handle)), turn(middle));
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  const pulls = ['ew', 'nwse', 'ns', 'nesw'] as const;
  return pulls[(eighth + 4) % 4] ?? 'ew';
}
