import type { Lab } from '../../plan/colour/colour.js';
import { labDifferences } from '../../plan/colour/difference.js';
import type { Plan } from '../../plan/plan.js';
import { GROUND } from '../borders/borders.js';
import { type Memory, once } from '../memory.js';
import { bareRuns, type Mask, type PixelSize } from './masks.js';
import type { SquaredPicture } from './photographs.js';
import { pixelCount, quickValue } from './pixels.js';
import type { PlannedPicture } from './record.js';
import type { Target } from './targets.js';

/** What is to stand in the pixels in which an object is seen, or the ground. */
export interface PlannedArea {
  /** Index into `plan.objects`; `GROUND` for what is bare. */
  readonly object: number;
  readonly runs: Int32Array;
  /** What is painted by then, and else bare ground; NaN where the plan gives neither value nor colour. */
  readonly lab: Lab;
  /** Of `lab` the lightness alone counts. */
  readonly isGrey: boolean;
}

/** The areas that a picture of the canvas is made of: each of its pixels is in one. */
export function plannedAreas(
  { canvas, objects }: Plan,
  masks: readonly Mask[],
  targets: readonly Target[],
  size: PixelSize,
  memory: Memory,
): readonly PlannedArea[] {
  const ground = canvas.ground.colour.lab;
  const ofObjects = masks.map(({ object, runs }): PlannedArea => {
    const { shown = ground, worked, counts } = targets[object] ?? {};
    const isUnplanned = worked === true && objects[object]?.painted === undefined;
    return { object, runs, lab: isUnplanned ? [NaN, NaN, NaN] : shown, isGrey: counts === 'value' };
  });
  return [{ object: GROUND, runs: bareRuns(masks, size, memory), lab: ground, isGrey: false }, ...ofObjects];
}

/** What is to stand at each pixel. */
export function plannedPicture(areas: readonly PlannedArea[], { width, height }: PixelSize): PlannedPicture {
  const seen = new Int16Array(width * height);
  const lab = new Float32Array(3 * width * height);
  for (const { object, runs, lab: colour } of areas) {
    eachRun(runs, (from, to) => {
      seen.fill(object, from, to);
      lay(lab, from, to, colour);
    });
  }
  return { width, height, objects: seen, lab };
}

function lay(lab: Float32Array, from: number, to: number, [l, a, b]: Lab): void {
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

/**
 * CIEDE2000 from plan to photograph at each pixel; where only values count, that of greys. NaN where the plan has
 * nothing. Worked out when it is first asked for, and then for those areas alone of which something has changed since.
 */
export function colourDifferences(
  { objects }: Plan,
  picture: SquaredPicture,
  areas: readonly PlannedArea[],
  memory: Memory,
  key: string,
): () => Float32Array {
  const ofAreas = areas.map((area) => {
    const { object, runs, lab, isGrey } = area;
    const name = `${key}\n${objects[object]?.key ?? ''}`;
    return memory.recall('colour differences', name, [picture, runs, ...lab, isGrey], () =>
      once(() => differencesIn(area, picture)),
    );
  });
  return once(() => {
    const all = new Float32Array(picture.width * picture.height);
    areas.forEach(({ runs }, index) => {
      const differences = ofAreas[index]?.() ?? new Float32Array();
      eachRun(runs, (from, to, at) => all.set(differences.subarray(at, at + to - from), from));
    });
    return all;
  });
}

/** For the pixels of one area, in the order of its runs. */
function differencesIn({ runs, lab: [l, a, b], isGrey }: PlannedArea, { lab }: SquaredPicture): Float32Array {
  const count = pixelCount(runs);
  const [seen, planned] = [new Float32Array(3 * count), new Float32Array(3 * count)];
  eachRun(runs, (from, to, at) => seen.set(lab.subarray(3 * from, 3 * to), 3 * at));
  if (isGrey) for (let i = 0; i < seen.length; i += 3) seen.fill(0, i + 1, i + 3);
  lay(planned, 0, count, isGrey ? [l, 0, 0] : [l, a, b]);
  return labDifferences(seen, planned);
}

/** @param visit is given the first pixel of a run, the one behind it, and how many the runs before it have */
function eachRun(runs: Int32Array, visit: (from: number, to: number, before: number) => void): void {
  let before = 0;
  for (let i = 0; i + 1 < runs.length; i += 2) {
    const [from, to] = [runs[i] as number, runs[i + 1] as number];
    visit(from, to, before);
    before += to - from;
  }
}
