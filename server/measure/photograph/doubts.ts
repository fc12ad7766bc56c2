import type { PicturePlace, Plan, Sitting } from '../../plan/plan.js';
import { pixelAt } from '../../plan/picture-places.js';
import { luminousReflectance, stepValue, valueOfLab } from '../../plan/colour/value.js';
import type { Mask, PixelSize } from './masks.js';
import type { SquaredPicture } from './photographs.js';
import { pixelCount, type Pixels, sumOver } from './pixels.js';
import type { Doubt, RecordObject } from './record.js';
import type { Target } from './targets.js';

/** Parts of the canvas from which on a fault in a photograph is told; heuristic. */
const MUCH_BURNT = 0.01;
const MUCH_BLACK = 0.02;
const SOME_GLARE = 0.001;
/** Glare lies on what is to be at least so much darker than white, Munsell values. */
const DARK_FOR_GLARE = 7;
/** Stops by which all of the picture is off when the exposure was, and by which objects may differ in it; heuristic. */
const OFF_STOPS = 0.35;
const ALIKE_STOPS = 0.2;
const NEARLY_ALL = 0.75;
/** Part of an object that spots cover at most. */
const MOST_IN_SPOTS = 0.4;
/** So much stronger is one channel of the light than another in lamplight of 2,700 K against daylight; from memory. */
const STRONG_CAST = 2.5;
/** Under half a pixel of the photograph for one that is measured, edges are guessed. */
const TOO_COARSE = 0.5;
/** Part by which the proportions of a photograph may differ from those of the canvas. */
const OTHER_PROPORTIONS = 0.03;
const CORNERS_OUT = 0.001;

/** What can't be trusted in a photograph of a sitting, the gravest first. */
export function doubtsOf(
  plan: Plan,
  sitting: Sitting,
  picture: SquaredPicture,
  seen: {
    readonly pixels: Pixels;
    readonly masks: readonly Mask[];
    readonly targets: readonly Target[];
    readonly objects: readonly RecordObject[];
  },
): readonly Doubt[] {
  const { trust } = picture;
  const found: Doubt[] = [];
  found.push(...framing(plan, sitting, picture));
  if (trust.grey?.fault !== undefined) {
    found.push({ about: 'grey patch', reason: trust.grey.fault, isGrave: true });
  }
  if (trust.burntShare > MUCH_BURNT) {
    found.push({ about: 'burnt-out lights', share: trust.burntShare, isGrave: true });
  }
  if (trust.blackShare > MUCH_BLACK) {
    found.push({ about: 'blocked darks', share: trust.blackShare, isGrave: true });
  }
  found.push(...exposure(seen.objects, plan.scale.steps), ...glare(seen));
  if (trust.sharpness < TOO_COARSE) {
    found.push({ about: 'few pixels', sharpness: trust.sharpness, isGrave: true });
  }
  if (trust.grey?.fault === undefined && (trust.grey?.cast ?? 1) > STRONG_CAST) {
    found.push({ about: 'coloured light', cast: trust.grey?.cast ?? 1, isGrave: true });
  }
  const taken = picture.source.taken?.slice(0, 10);
  if (taken !== undefined && sitting.date !== undefined && taken < sitting.date) {
    found.push({ about: 'taken earlier', taken, sitting: sitting.date, isGrave: true });
  }
  if (!trust.grey) found.push({ about: 'no grey patch', isGrave: false });
  if (!picture.source.profileStated) found.push({ about: 'no profile', isGrave: false });
  return found;
}

/** Whether it is the canvas, and all of it, that is seen. */
function framing({ canvas }: Plan, { photo }: Sitting, { source }: SquaredPicture): readonly Doubt[] {
  const corners = photo?.corners ?? [];
  if (corners.length > 0) {
    const outside = corners.flatMap((corner, index) => (isOutside(corner, source) ? [index] : []));
    return outside.length > 0 ? [{ about: 'corners outside', corners: outside, isGrave: true }] : [];
  }
  const photograph = source.width / source.height;
  const ofCanvas = canvas.width / canvas.height;
  return Math.abs(Math.log(photograph / ofCanvas)) > OTHER_PROPORTIONS
    ? [{ about: 'proportions', photograph, canvas: ofCanvas, isGrave: true }]
    : [];
}

function isOutside(corner: PicturePlace, size: PixelSize): boolean {
  const { x, y } = pixelAt(corner, size);
  const isBeyond = (place: number, side: number): boolean =>
    place < -CORNERS_OUT * side || place > (1 + CORNERS_OUT) * side;
  return isBeyond(x, size.width) || isBeyond(y, size.height);
}

/** Whether nearly all of the objects are off by the same part of the light; of fewer than three nothing can be said. */
function exposure(objects: readonly RecordObject[], steps: number): readonly Doubt[] {
  const held = objects.flatMap(({ value, share, against }) =>
    against ? [{ share, stops: stopsBetween(stepValue(against.step, steps), value) }] : [],
  );
  if (held.length < 3) return [];
  const whole = held.reduce((sum, { share }) => sum + share, 0);
  held.sort((one, other) => one.stops - other.stops);
  let passed = 0;
  const median = held.find(({ share }) => (passed += share) >= whole / 2)?.stops ?? 0;
  const alike = held.filter(({ stops }) => Math.abs(stops - median) <= ALIKE_STOPS);
  const isAll = alike.length >= 3 && alike.reduce((sum, { share }) => sum + share, 0) >= NEARLY_ALL * whole;
  return isAll && Math.abs(median) > OFF_STOPS ? [{ about: 'exposure', stops: median, isGrave: true }] : [];
}

/** From one Munsell value to another, in doublings of the light that is reflected. */
function stopsBetween(from: number, to: number): number {
  const light = (value: number): number => Math.max(0.5, luminousReflectance(value));
  return Math.log2(light(to) / light(from));
}

/** Nearly white spots on what is to be dark or of a middle value; what is so light all over was painted so. */
function glare({
  pixels,
  masks,
  targets,
}: {
  readonly pixels: Pixels;
  readonly masks: readonly Mask[];
  readonly targets: readonly Target[];
}): readonly Doubt[] {
  const whole = pixels.width * pixels.height;
  const spots = masks.flatMap(({ object, inner }) => {
    const target = targets[object];
    if (!target?.shown || target.counts === 'nothing' || valueOfLab(target.shown) > DARK_FOR_GLARE) return [];
    const glaring = sumOver(pixels.glaring, inner, pixels.width);
    return glaring > MOST_IN_SPOTS * pixelCount(inner) ? [] : [{ object, share: glaring / whole }];
  });
  const share = spots.reduce((sum, spot) => sum + spot.share, 0);
  if (share <= SOME_GLARE) return [];
  const most = spots.reduce((one, other) => (other.share > one.share ? other : one));
  return [{ about: 'glare', share, object: most.object, isGrave: true }];
}
