import { squaringOf } from '../measure/photograph/measure-record.js';
import type {
  NoPhotograph,
  Photographs,
  SizeAnswer,
  SquaredAnswer,
  Squaring,
} from '../measure/photograph/photographs.js';
import type { Plan } from '../plan/plan.js';
import type { SquarePhotograph } from './answers.js';
import { sizeOfPicture } from './size.js';

export type PictureBytes = { readonly ok: true; readonly bytes: Uint8Array } | NoPhotograph;

/** Whether anything that is measured of a plan rests on pictures beside it. */
export function namesPictures({ sittings, sketch }: Pick<Plan, 'sittings' | 'sketch'>): boolean {
  return sketch !== undefined || sittings.some(({ photo }) => photo !== undefined);
}

/**
 * The photographs of all sittings squared up, one after the other, and the size of the sketch, for where there is time to
 * wait for them. Never rejects.
 * @param readBytes reads a file by the path written in the plan
 */
export async function gatherPhotographs(
  plan: Plan,
  readBytes: (path: string) => PictureBytes | Promise<PictureBytes>,
  square: SquarePhotograph,
): Promise<Photographs> {
  const squared = new Map<string, SquaredAnswer>();
  const sizes = new Map<string, SizeAnswer>();
  for (const sitting of plan.sittings) {
    const squaring = squaringOf(plan, sitting);
    if (squaring === undefined || squared.has(keyOf(squaring))) continue;
    const read = await readBytes(squaring.path);
    squared.set(keyOf(squaring), read.ok ? await square(read.bytes, squaring) : read);
    sizes.set(squaring.path, read.ok ? sizeOfPicture(read.bytes) : read);
  }
  const { sketch } = plan;
  if (sketch !== undefined && !sizes.has(sketch.file)) {
    const read = await readBytes(sketch.file);
    sizes.set(sketch.file, read.ok ? sizeOfPicture(read.bytes) : read);
  }
  return {
    squared: (squaring) => squared.get(keyOf(squaring)),
    sizeOf: (path) => sizes.get(path),
  };
}

/** Equal for two squarings that ask for the same. */
export function keyOf(squaring: Squaring): string {
  const { path, corners, grey, proportion } = squaring;
  return JSON.stringify([path, proportion, corners, grey ?? null]);
}
