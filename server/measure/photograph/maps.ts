import { labDifferences } from '../../plan/colour/difference.js';
import type { Plan } from '../../plan/plan.js';
import { GROUND } from '../borders/borders.js';
import type { Mask, PixelSize } from './masks.js';
import { quickValue } from './pixels.js';
import type { PlannedPicture } from './record.js';
import type { Target } from './targets.js';

/** What is to stand at each pixel: what is painted by then, and else bare ground. */
export function plannedPicture(
  { canvas, objects }: Plan,
  masks: readonly Mask[],
  targets: readonly Target[],
  { width, height }: PixelSize,
): PlannedPicture {
  const seen = new Int16Array(width * height).fill(GROUND);
  const lab = new Float32Array(3 * width * height);
  const [l, a, b] = canvas.ground.colour.lab;
  lay(lab, 0, width * height, [l, a, b]);
  for (const { object, runs } of masks) {
    const { shown, worked } = targets[object] ?? {};
    const isUnplanned = worked === true && objects[object]?.painted === undefined;
    const colour = isUnplanned ? ([NaN, NaN, NaN] as const) : shown;
    for (let i = 0; i + 1 < runs.length; i += 2) {
      const [from, to] = [runs[i] as number, runs[i + 1] as number];
      seen.fill(object, from, to);
      if (colour) lay(lab, from, to, colour);
    }
  }
  return { width, height, objects: seen, lab };
}

function lay(lab: Float32Array, from: number, to: number, colour: readonly [number, number, number]): void {
  const [l, a, b] = colour;
  for (let i = 3 * from; i < 3 * to; i += 3) {
    lab[i] = l;
    lab[i + 1] = a;
    lab[i + 2] = b;
  }
}

/** Photograph less plan at each pixel, in steps of a scale; NaN where the plan has nothing. */
export function valueDifferences(
  photograph: Float32Array,
  { lab }: PlannedPicture,
  steps: number,
): Float32Array {
  const differences = new Float32Array(lab.length / 3);
  for (let pixel = 0; pixel < differences.length; pixel++) {
    const planned = lab[3 * pixel] as number;
    const value = quickValue(photograph[3 * pixel] as number) - quickValue(planned);
    differences[pixel] = Number.isNaN(planned) ? NaN : (value * steps) / 10;
  }
  return differences;
}

/** CIEDE2000 from plan to photograph at each pixel; where only values count, that of greys. NaN where the plan has nothing. */
export function colourDifferences(
  photograph: Float32Array,
  { lab, objects }: PlannedPicture,
  targets: readonly Target[],
): Float32Array {
  const isGrey = targets.map(({ counts }) => counts === 'value');
  const [one, other] = [photograph.slice(), lab.slice()];
  for (let pixel = 0; pixel < objects.length; pixel++) {
    if (!isGrey[objects[pixel] as number]) continue;
    one.fill(0, 3 * pixel + 1, 3 * pixel + 3);
    other.fill(0, 3 * pixel + 1, 3 * pixel + 3);
  }
  return labDifferences(one, other);
}
