import { fromUnitSquare } from '../../plan/geometry/homography.js';
import { pixelAt } from '../../plan/picture-places.js';
import type { Plan } from '../../plan/plan.js';
import type { NoPhotograph, Photographs } from '../photograph/photographs.js';

/** A sketch held against the canvas that it is to be carried over to. */
export type SketchMeasure =
  /** Its corners are stated, so its own proportion does not matter. */
  | { readonly is: 'squared up' }
  /** The stated corners are not those of a sheet seen from anywhere. */
  | { readonly is: 'folded' }
  | { readonly is: 'on its way' }
  /** Why can't be told here: the line of the sketch says it. */
  | { readonly is: 'unreadable'; readonly reason: NoPhotograph['reason'] }
  | {
      readonly is: 'measured';
      /** Upright, in pixels. */
      readonly width: number;
      readonly height: number;
      /** How many times as long as it is drawn one side would become against the other, less one: 0.07 is 7 %. */
      readonly stretch: number;
      /** The sketch is too wide for the canvas, rather than too high. */
      readonly isTooWide: boolean;
    };

/** The sketch of a plan; missing without one. */
export function measureSketch(plan: Plan, photographs: Photographs): SketchMeasure | undefined {
  const { sketch, canvas } = plan;
  if (sketch === undefined) return undefined;
  const size = photographs.sizeOf(sketch.file);
  if (sketch.corners.length > 0) {
    const scale = size?.ok === true ? size : undefined;
    return { is: isSheet(plan, scale) ? 'squared up' : 'folded' };
  }
  if (size === undefined) return { is: 'on its way' };
  if (!size.ok) return { is: 'unreadable', reason: size.reason };
  const { width, height } = size;
  const times = width / height / (canvas.width / canvas.height);
  return { is: 'measured', width, height, stretch: Math.max(times, 1 / times) - 1, isTooWide: times > 1 };
}

/** Whether the corners can be those of a sheet. Pixels beside parts can't be judged before the size is known. */
function isSheet(
  { sketch }: Plan,
  size: { readonly width: number; readonly height: number } | undefined,
): boolean {
  const corners = sketch?.corners ?? [];
  const lengths = corners.flatMap(({ across, down }) => [across.in, down.in]);
  const areAlike = lengths.every((unit) => unit === lengths[0]);
  if (size === undefined && !areAlike) return true;
  const [upperLeft, upperRight, lowerRight, lowerLeft] = corners.map((corner) =>
    pixelAt(corner, size ?? { width: 1, height: 1 }),
  );
  if (!upperLeft || !upperRight || !lowerRight || !lowerLeft) return true;
  return fromUnitSquare([upperLeft, upperRight, lowerRight, lowerLeft]) !== undefined;
}
