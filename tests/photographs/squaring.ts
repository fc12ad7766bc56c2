import { painted, quarters, type Rgba } from './made.js';
import { reasonInWords } from '../../grammar/index.js';
import type { SquaredPicture, Squaring } from '../../server/measure/photograph/photographs.js';
import { labDifference } from '../../server/plan/colour/difference.js';
import type { Lab } from '../../server/plan/colour/model.js';
import { rgbToLab } from '../../server/plan/colour/srgb.js';
import type { PicturePlace } from '../../server/plan/plan.js';
import { storedPlace, uprightSize } from '../../server/photograph/orientation.js';
import { squarePhotograph } from '../../server/photograph/square.js';

export const whole: Squaring = { path: 'a.jpg', corners: [], proportion: 4 / 3 };
export const at = (x: number, y: number): PicturePlace => ({
  across: { value: x, in: 'pixels' },
  down: { value: y, in: 'pixels' },
});

export async function squared(bytes: Uint8Array, squaring: Partial<Squaring> = {}): Promise<SquaredPicture> {
  const answer = await squarePhotograph(bytes, { ...whole, ...squaring });
  if (!answer.ok) throw new Error(reasonInWords(answer.reason));
  return answer.picture;
}

export async function refused(bytes: Uint8Array, squaring: Partial<Squaring>): Promise<string> {
  const answer = await squarePhotograph(bytes, { ...whole, ...squaring });
  return answer.ok ? 'it was measured' : reasonInWords(answer.reason);
}

/** At a part of the width and of the height. */
export function labAt({ lab, width, height }: SquaredPicture, across: number, down: number): Lab {
  const from = 3 * (Math.floor(down * height) * width + Math.floor(across * width));
  return [lab[from] ?? 0, lab[from + 1] ?? 0, lab[from + 2] ?? 0];
}

export const labOf = (rgb: readonly number[]): Lab =>
  rgbToLab([(rgb[0] ?? 0) / 255, (rgb[1] ?? 0) / 255, (rgb[2] ?? 0) / 255]);

export const fields = [
  [0.25, 0.25, [200, 40, 30]],
  [0.75, 0.25, [40, 150, 60]],
  [0.25, 0.75, [40, 60, 170]],
  [0.75, 0.75, [128, 128, 128]],
] as const;

/** How far the middles of the four fields are from their colours, CIEDE2000. */
export function farthestField(picture: SquaredPicture): number {
  return Math.max(...fields.map(([x, y, rgb]) => labDifference(labAt(picture, x, y), labOf(rgb))));
}

export const upright = quarters(160, 120);

/** A picture as a camera stores it that was held so. */
export function stored(picture: Rgba, orientation: number): Rgba {
  const size = uprightSize(picture, orientation);
  const made = painted(size.width, size.height, () => [0, 0, 0]);
  for (let y = 0; y < picture.height; y++) {
    for (let x = 0; x < picture.width; x++) {
      const place = storedPlace({ x: x + 0.5, y: y + 0.5 }, size, orientation);
      const from = 4 * (y * picture.width + x);
      made.data.set(
        picture.data.subarray(from, from + 4),
        4 * (Math.floor(place.y) * size.width + Math.floor(place.x)),
      );
    }
  }
  return made;
}
