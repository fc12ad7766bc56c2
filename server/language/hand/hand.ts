import type { Snapshot } from '../snapshot.js';
import type { Refused, SceneResult, TryChangeParams, WriteChangeParams, WrittenChange } from '../protocol.js';

/** The plan as it would be drawn after the change. */
export function tryChange(snapshot: Snapshot, { version }: TryChangeParams): SceneResult | Refused {
  return { version, refused: `Nothing can be changed in version ${snapshot.version} yet.` };
}

/** The edits that the change comes to. */
export function writeChange(snapshot: Snapshot, { version }: WriteChangeParams): WrittenChange | Refused {
  return { version, refused: `Nothing can be changed in version ${snapshot.version} yet.` };
}
