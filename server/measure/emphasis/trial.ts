import { type Point, distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { BorderStretch } from '../borders/borders.js';
import { contrastBetween } from '../borders/contrast.js';
import { centreOfInterest, isElsewhere } from './centre.js';
import { type StrongPlace, strongPlace } from './emphasis.js';
import {
  type FieldGrid,
  type Weigh,
  byColour,
  byPull,
  byValue,
  fieldGrid,
  middleOf,
  partOfField,
  wholeField,
} from './field.js';
import { isWithinReach, peaks, strongestPeak } from './places.js';
import type { Measures } from '../measures.js';

/** The borders of a picture in which some objects are painted otherwise, every shape being the same. */
export function triedStretches(
  tried: Plan,
  changed: readonly number[],
  stretches: readonly BorderStretch[],
): readonly BorderStretch[] {
  return stretches.map((stretch) => (isTouched(stretch, changed) ? otherwise(tried, stretch) : stretch));
}

/** The strongest contrast of value, or of colour, near the focal point and elsewhere, for a picture painted otherwise. */
export function tryContrast(
  of: 'value' | 'colour',
  tried: Plan,
  changed: readonly number[],
  measures: Measures,
): { readonly there: number; readonly elsewhere: number } {
  const { canvas, focus } = tried;
  const weigh = of === 'value' ? byValue : byColour;
  const grid = fieldGrid(canvas);
  const stretches = triedStretches(tried, changed, measures.borders.stretches);
  const field = Float64Array.from(contrastField(of, measures.borders.stretches, grid, canvas.diagonal));
  const touched = (stretch: BorderStretch) => isTouched(stretch, changed);
  add(field, grid, measures.borders.stretches.filter(touched), -1, canvas.diagonal, weigh);
  add(field, grid, stretches.filter(touched), 1, canvas.diagonal, weigh);
  const centre = centreOfInterest(tried, measures);
  const other = strongestPeak(field, grid, [{ stretches }], weigh, canvas.diagonal, (peak) =>
    focus ? isElsewhere(peak, focus.at, centre, canvas.diagonal) : false,
  );
  return {
    there: focus ? strongest(field, grid, near(focus.at, canvas.diagonal)) : 0,
    elsewhere: other?.strength ?? 0,
  };
}

const contrastFields = new WeakMap<
  readonly BorderStretch[],
  { value?: Float64Array; colour?: Float64Array }
>();

/** The contrast of the picture as it is, kept as long as its borders. */
function contrastField(
  of: 'value' | 'colour',
  stretches: readonly BorderStretch[],
  grid: FieldGrid,
  diagonal: number,
): Float64Array {
  const kept = contrastFields.get(stretches) ?? {};
  contrastFields.set(stretches, kept);
  const weigh = of === 'value' ? byValue : byColour;
  return (kept[of] ??= wholeField([partOfField(stretches, weigh, grid, diagonal)], grid));
}

/** How strong places would be if some objects were painted otherwise. */
export interface EmphasisTrial {
  /** The strength of the focal point, of the strongest place in the picture where there is none on the canvas. */
  readonly there: number;
  /** The strength at a place as it is: a lower bound of what is gathered round it. */
  at(place: Point): number;
  /** The places elsewhere, strongest first; worked out when first asked for. */
  elsewhere(): readonly StrongPlace[];
}

/**
 * The emphasis of a plan in which some objects have other edges, values or colours but every shape is the same:
 * worked out from that of the plan as it is and the borders of these objects alone.
 *
 * @param tried the plan with the other objects
 * @param changed their indices
 */
export function tryEmphasis(tried: Plan, changed: readonly number[], measures: Measures): EmphasisTrial {
  const { canvas, focus } = tried;
  const { borders, emphasis } = measures;
  const grid = fieldGrid(canvas);
  const touched = (stretch: BorderStretch) => isTouched(stretch, changed);
  const before = borders.stretches.filter(touched);
  const field = Float64Array.from(emphasis.field.strengths);
  add(field, grid, before, -1, canvas.diagonal);
  add(
    field,
    grid,
    before.map((stretch) => otherwise(tried, stretch)),
    1,
    canvas.diagonal,
  );
  let found: readonly StrongPlace[] | undefined;
  const onCanvas = emphasis.focal ? focus : undefined;
  return {
    there: onCanvas ? strongest(field, grid, near(onCanvas.at, canvas.diagonal)) : strongest(field, grid),
    at: (place) => field[cellAt(grid, place)] ?? 0,
    elsewhere: () => (found ??= places()),
  };

  function places(): readonly StrongPlace[] {
    const byFront = borders.byFront.map(({ stretches }) => ({
      stretches: stretches.some(touched) ? triedStretches(tried, changed, stretches) : stretches,
    }));
    const centre = centreOfInterest(tried, measures);
    return peaks(field, grid, byFront, byPull, canvas.diagonal)
      .filter((peak) => !onCanvas || isElsewhere(peak, onCanvas.at, centre, canvas.diagonal))
      .map((peak) => strongPlace(peak, canvas));
  }
}

function isTouched({ front, behind }: BorderStretch, changed: readonly number[]): boolean {
  return changed.includes(front) || changed.includes(behind);
}

function otherwise(tried: Plan, stretch: BorderStretch): BorderStretch {
  return { ...stretch, ...contrastBetween(tried, stretch.front, stretch.behind) };
}

function add(
  field: Float64Array,
  grid: FieldGrid,
  stretches: readonly BorderStretch[],
  sign: 1 | -1,
  diagonal: number,
  weigh: Weigh = byPull,
): void {
  const part = partOfField(stretches, weigh, grid, diagonal);
  if (!part) return;
  for (let row = 0; row < part.rows; row++) {
    for (let column = 0; column < part.columns; column++) {
      const cell = (part.top + row) * grid.columns + part.left + column;
      const amount = part.strengths[row * part.columns + column] as number;
      // What is taken away again leaves a trace of rounding.
      field[cell] = Math.max(0, (field[cell] as number) + sign * amount);
    }
  }
}

function near(point: Point, diagonal: number): (place: Point) => boolean {
  return (place) => isWithinReach(distance(place, point), diagonal);
}

function strongest(field: Float64Array, grid: FieldGrid, counts?: (place: Point) => boolean): number {
  return field.reduce(
    (most, strength, cell) =>
      strength > most && (!counts || counts(middleOf(grid, cell))) ? strength : most,
    0,
  );
}

function cellAt({ columns, rows, cellWidth, cellHeight }: FieldGrid, { x, y }: Point): number {
  const column = Math.min(columns - 1, Math.max(0, Math.floor(x / cellWidth)));
  const row = Math.min(rows - 1, Math.max(0, Math.floor(y / cellHeight)));
  return row * columns + column;
}
