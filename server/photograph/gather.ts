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
import { idOf } from './content.js';
import { sizeOfPicture } from './size.js';

export type PictureBytes = { readonly ok: true; readonly bytes: Uint8Array } | NoPhotograph;

/** Whether anything that is measured of a plan rests on pictures beside it. */
export function namesPictures({ sittings, sketch }: Pick<Plan, 'sittings' | 'sketch'>): boolean {
  return sketch !== undefined || sittings.some(({ photo }) => photo !== undefined);
}

/**
 * The photographs of all sittings squared up, one after the other, and the size of the sketch, for where there is time
 * to wait for them. Never rejects.
 * @param readBytes reads a file by the path written in the plan
 */
export async function gatherPhotographs(
  plan: Plan,
  readBytes: (path: string) => PictureBytes | Promise<PictureBytes>,
  square: SquarePhotograph,
): Promise<Photographs> {
  // While all are read once, a path tells one content from every other.
  const idIn = (squaring: Squaring): string => idOf(squaring.path, squaring);
  const squared = new Map<string, SquaredAnswer>();
  const sizes = new Map<string, SizeAnswer>();
  for (const sitting of plan.sittings) {
    const squaring = squaringOf(plan, sitting);
    if (squaring === undefined || squared.has(idIn(squaring))) continue;
    const read = await readBytes(squaring.path);
    squared.set(idIn(squaring), read.ok ? await square(read.bytes, squaring) : read);
    sizes.set(squaring.path, read.ok ? sizeOfPicture(read.bytes) : read);
  }
  const { sketch } = plan;
  if (sketch !== undefined && !sizes.has(sketch.file)) {
    const read = await readBytes(sketch.file);
    sizes.set(sketch.file, read.ok ? sizeOfPicture(read.bytes) : read);
  }
  return {
    squared: (squaring) => squared.get(idIn(squaring)),
    sizeOf: (path) => sizes.get(path),
  };
}
