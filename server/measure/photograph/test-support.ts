import { parseColour, type Lab } from '../../plan/colour/colour.js';
import { lightnessOfValue, valueOfLab } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';
import type { Measures } from '../measures.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';
import { plannedAreas, plannedPicture } from './maps.js';
import { masksOf } from './masks.js';
import { squaringOf } from './measure-record.js';
import { measuredSide, noPhotographs, type Photographs, type SquaredPicture } from './photographs.js';
import type { LabPicture } from './pixels.js';
import { type Target, targetsAfter } from './targets.js';

/** A photograph of every pixel's colour; the place of a pixel is given as parts of width and height. */
export function pictureOf(
  size: { readonly width: number; readonly height: number },
  labAt: (x: number, y: number) => Lab,
  told: Partial<Pick<SquaredPicture, 'id' | 'source' | 'trust'>> = {},
): SquaredPicture {
  const { width, height } = size;
  const lab = new Float32Array(3 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      lab.set(labAt((column + 0.5) / width, (row + 0.5) / height), 3 * (row * width + column));
    }
  }
  return pictureOfPixels({ width, height, lab }, told);
}

export function pictureOfPixels(
  { width, height, lab }: LabPicture,
  told: Partial<Pick<SquaredPicture, 'id' | 'source' | 'trust'>> = {},
): SquaredPicture {
  return {
    id: 'made up',
    width,
    height,
    lab,
    shown: { width, height, jpeg: new Uint8Array() },
    source: {
      type: 'JPEG',
      width: 4 * width,
      height: 4 * height,
      profile: 'Display P3',
      profileStated: true,
    },
    trust: { burntShare: 0, blackShare: 0, grey: { cast: 1.2 }, sharpness: 4 },
    ...told,
  };
}

/** The size at which a photograph of a canvas is measured. */
export function pictureSize(
  { canvas: { width, height } }: Plan,
  longerSide: number = measuredSide,
): { readonly width: number; readonly height: number } {
  const side = (length: number): number => Math.round((longerSide * length) / Math.max(width, height));
  return { width: side(width), height: side(height) };
}

/**
 * Pixels of the longer side of photographs that are told by their names: fewer than real ones have, so that they are
 * made quickly.
 */
const TOLD_SIDE = 240;

/** What is painted otherwise than planned. */
export interface Deviation {
  /** The name of an object. */
  readonly object: string;
  readonly colour?: Lab;
  /** Steps of the scale, below nought darker. */
  readonly steps?: number;
}

/** A photograph of the canvas after a sitting, painted as planned but for what is said, with some noise. */
export function photographOf(
  plan: Plan,
  sitting: number,
  {
    deviations = [],
    noise = 0,
    stops = 0,
    measures = measure(plan),
    longerSide,
    ...told
  }: {
    readonly deviations?: readonly Deviation[];
    /** In doublings of the light. */
    readonly stops?: number;
    /** Greatest distance from what is painted, in each of L*, a* and b*. */
    readonly noise?: number;
    readonly measures?: Measures;
    /** Pixels. */
    readonly longerSide?: number;
  } & Partial<Pick<SquaredPicture, 'id' | 'source' | 'trust'>> = {},
): SquaredPicture {
  const { schedule, palette, areas } = measures;
  const planned = (schedule && targetsAfter(plan, schedule, palette?.mixing).get(sitting)) ?? [];
  const size = pictureSize(plan, longerSide);
  const painted = planned.map((target, index): Target => {
    const deviation = deviations.find(({ object }) => object === plan.objects[index]?.name);
    return deviation?.colour || target.shown
      ? { ...target, shown: deviating(target.shown ?? [50, 0, 0], deviation, plan.scale.steps) }
      : target;
  });
  const memory = new Memory();
  const masks = masksOf(plan, areas, size, memory);
  const { lab } = plannedPicture(plannedAreas(plan, masks, painted, size, memory), size);
  if (stops !== 0) expose(lab, stops);
  if (noise > 0) addNoise(lab, noise);
  return pictureOfPixels({ ...size, lab }, told);
}

function deviating([l, a, b]: Lab, deviation: Deviation | undefined, steps: number): Lab {
  if (deviation?.colour) return deviation.colour;
  const off = deviation?.steps ?? 0;
  return off === 0 ? [l, a, b] : [lightnessOfValue(valueOfLab([l, a, b]) + (10 * off) / steps), a, b];
}

/**
 * All of it under more or less light: X, Y and Z by one factor, which CIELAB takes the cube root of but for the
 * darkest.
 */
function expose(lab: Float32Array, stops: number): void {
  const factor = Math.cbrt(2 ** stops);
  for (let i = 0; i < lab.length; i += 3) {
    lab[i] = Math.min(100, Math.max(0, ((lab[i] as number) + 16) * factor - 16));
    lab[i + 1] = (lab[i + 1] as number) * factor;
    lab[i + 2] = (lab[i + 2] as number) * factor;
  }
}

/** The same noise each time, even on the whole. */
function addNoise(lab: Float32Array, most: number): void {
  const random = randomFrom(1);
  for (let i = 0; i < lab.length; i++) lab[i] = (lab[i] as number) + most * (2 * random() - 1);
}

/** The same numbers from 0 to 1 for the same seed: a linear congruence, as in Knuth's second volume. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Pictures by the paths that the plan names; any other is not there. */
export function photographsAt(pictures: Readonly<Record<string, SquaredPicture>>): Photographs {
  return {
    squared: ({ path }) => {
      const picture = pictures[path];
      return picture ? { ok: true, picture } : { ok: false, reason: 'There is no such file.' };
    },
    sizeOf: (path) => {
      const source = pictures[path]?.source;
      return source
        ? { ok: true, width: source.width, height: source.height }
        : { ok: false, reason: 'There is no such file.' };
    },
  };
}

/**
 * Photographs that are what their names say, in plans that tests and the reference show: `as planned.jpg`, or what is
 * painted otherwise: `wall 1.5 steps darker, jug #a05030.jpg`. `burnt out` has lights that are lost, and `0.5 stops
 * lighter` is lighter all over. `missing.jpg` is not
 * there, and `later.jpg` stays on its way.
 */
export function photographsAsTold(plan: Plan): Photographs {
  if (plan.sittings.every(({ photo }) => !photo)) return noPhotographs;
  const known = new Map<string, SquaredPicture>();
  const measures = measure(plan);
  plan.sittings.forEach((sitting, index) => {
    const path = squaringOf(plan, sitting)?.path;
    if (path === undefined || !path.endsWith('.jpg') || path === 'missing.jpg' || path === 'later.jpg')
      return;
    const said = path.slice(0, -'.jpg'.length).split(', ');
    const trust = {
      burntShare: said.includes('burnt out') ? 0.08 : 0,
      blackShare: 0,
      sharpness: 4,
      grey: { cast: 1.2 },
    };
    known.set(
      path,
      photographOf(plan, index, {
        deviations: said.flatMap(deviationOf),
        stops: said.reduce((sum, words) => sum + stopsOf(words), 0),
        noise: 2,
        measures,
        longerSide: TOLD_SIDE,
        id: path,
        trust,
      }),
    );
  });
  const { squared, sizeOf } = photographsAt(Object.fromEntries(known));
  return { squared: (squaring) => (squaring.path === 'later.jpg' ? undefined : squared(squaring)), sizeOf };
}

function stopsOf(words: string): number {
  const [, count, way] = /^([\d.]+) stops? (darker|lighter)$/u.exec(words) ?? [];
  return (way === 'darker' ? -1 : 1) * Number(count ?? 0);
}

function deviationOf(words: string): readonly Deviation[] {
  const steps = /^(.+) ([\d.]+) steps? (darker|lighter)$/u.exec(words);
  if (steps) {
    const [, object = '', count, way] = steps;
    return [{ object, steps: (way === 'darker' ? -1 : 1) * Number(count) }];
  }
  const [, object = '', hex] = /^(.+) (#[\da-f]{6})$/u.exec(words) ?? [];
  const colour = hex === undefined ? undefined : parseColour(hex);
  return colour?.ok ? [{ object, colour: colour.colour.lab }] : [];
}
