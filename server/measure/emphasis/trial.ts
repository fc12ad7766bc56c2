import { type Point, distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { BorderMeasure, BorderStretch } from '../borders/borders.js';
import { contrastBetween } from '../borders/contrast.js';
import { centreOfInterest, isElsewhere } from './centre.js';
import { strongestOf } from './candidates.js';
import { type StrongPlace, strongPlace } from './emphasis.js';
import {
  type Weigh,
  boxOfStretches,
  byColour,
  byPull,
  byValue,
  keptField,
  keptPart,
  laidPart,
  weighedStretches,
} from './field.js';
import { keptFootprints } from './footprints.js';
import { type FieldGrid, REACH, fieldGrid, middleOf } from './grid.js';
import { type Peak, cellsNear, isWithinReach, peaks, strongestPeak } from './places.js';
import { TriedField, strongestAmong } from './tried-field.js';
import { once, sameInputs } from '../memory.js';
import type { Measures } from '../measures.js';

/** The borders of a picture in which some objects are painted otherwise, every shape being the same. */
export function triedStretches(
  tried: Plan,
  changed: readonly number[],
  stretches: readonly BorderStretch[],
): readonly BorderStretch[] {
  const all = stretches.slice();
  for (const area of changed) {
    // Of many stretches few are touched.
    for (let index = 0; index < stretches.length; index++) {
      const stretch = stretches[index] as BorderStretch;
      if (stretch.front !== area && stretch.behind !== area) continue;
      all[index] = { ...stretch, ...contrastBetween(tried, stretch.front, stretch.behind) };
    }
  }
  return all;
}

/**
 * The strongest contrast of value, or of colour, near the focal point and elsewhere, for a picture painted otherwise;
 * elsewhere of the places that are at least so strong, 0 where there is none.
 */
export function tryContrast(
  of: 'value' | 'colour',
  tried: Plan,
  changed: readonly number[],
  measures: Measures,
): { readonly there: number; readonly elsewhere: (least: number) => number } {
  const { canvas, focus } = tried;
  const { byFront } = measures.borders;
  const base = baseOf(measures.borders, tried);
  const weigh = of === 'value' ? byValue : byColour;
  const { grid, near, diagonal } = base;
  // All of it, as both are asked for.
  const field = triedField(keptField(byFront, weigh, grid, diagonal), weigh, tried, changed, base).whole;
  return {
    there: near ? strongestAmong(near, field) : 0,
    elsewhere: (least) => {
      if (!focus || strongestOf(field) < least) return 0;
      const centre = centreOfInterest(tried, measures);
      const counts = (peak: Peak): boolean => isElsewhere(peak, focus.at, centre, canvas.diagonal);
      const after = otherwise(weigh, tried, changed);
      return strongestPeak(field, grid, byFront, after, diagonal, counts, least)?.strength ?? 0;
    },
  };
}

/** What trials of one picture share, kept as long as its borders. */
interface Base {
  readonly grid: FieldGrid;
  readonly diagonal: number;
  readonly focus: Point | undefined;
  /** The cells within the reach of the focal point. */
  readonly near: readonly number[] | undefined;
  /** The stretches of an area, in front or behind. */
  readonly ofArea: (area: number) => readonly BorderStretch[];
}

const bases = new WeakMap<BorderMeasure, Base>();

function baseOf(borders: BorderMeasure, { canvas, focus }: Plan): Base {
  const { diagonal } = canvas;
  const known = bases.get(borders);
  if (known && known.diagonal === diagonal && known.focus === focus?.at) return known;
  const grid = fieldGrid(canvas);
  const base: Base = {
    grid,
    diagonal,
    focus: focus?.at,
    near:
      focus &&
      cellsNear(grid, focus.at, REACH * diagonal).filter((cell) =>
        isWithinReach(distance(middleOf(grid, cell), focus.at), diagonal),
      ),
    ofArea: stretchesByArea(borders),
  };
  bases.set(borders, base);
  return base;
}

/** Looked for once for each area that is asked for. */
function stretchesByArea(borders: BorderMeasure): (area: number) => readonly BorderStretch[] {
  const known = new Map<number, readonly BorderStretch[]>();
  return (area) => {
    const found = known.get(area) ?? asBefore(area, stretchesOf(area, borders));
    known.set(area, found);
    return found;
  };
}

/** By the first of them, and by area. */
const lately = new WeakMap<BorderStretch, Map<number, readonly BorderStretch[]>>();

/** The list that was found of an area before, where it holds the very same stretches: what follows from it is kept. */
function asBefore(area: number, found: readonly BorderStretch[]): readonly BorderStretch[] {
  const [first] = found;
  if (!first) return found;
  const lists = lately.get(first) ?? new Map<number, readonly BorderStretch[]>();
  lately.set(first, lists);
  const before = lists.get(area);
  if (before && sameInputs(before, found)) return before;
  lists.set(area, found);
  return found;
}

function stretchesOf(area: number, { byFront, borders }: BorderMeasure): readonly BorderStretch[] {
  // There are many times fewer borders than stretches.
  const fronts = new Set([area]);
  for (const { front, behind } of borders) if (behind === area) fronts.add(front);
  const found: BorderStretch[] = [];
  for (const { front, stretches } of byFront) {
    if (!fronts.has(front)) continue;
    for (const stretch of stretches) if (front === area || stretch.behind === area) found.push(stretch);
  }
  return found;
}

/** How strong places would be if some objects were painted otherwise. */
export interface EmphasisTrial {
  /** The strength of the focal point, of the strongest place in the picture where there is none on the canvas. */
  readonly there: number;
  /** The strength at a place as it is: a lower bound of what is gathered round it. */
  at(place: Point): number;
  /** The places elsewhere, strongest first; of those weaker than `least` not all. */
  elsewhere(least: number): readonly StrongPlace[];
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
  const base = baseOf(borders, tried);
  const { grid } = base;
  const field = triedField(
    keptField(borders.byFront, byPull, grid, base.diagonal),
    byPull,
    tried,
    changed,
    base,
  );
  const onCanvas = emphasis.focal ? focus : undefined;
  const there = once(() =>
    onCanvas && base.near ? field.strongestAmong(base.near) : strongestOf(field.whole),
  );
  return {
    get there() {
      return there();
    },
    at: (place) => field.at(cellAt(grid, place)),
    elsewhere: (least) => {
      if (strongestOf(field.whole) < least) return [];
      const centre = centreOfInterest(tried, measures);
      const after = otherwise(byPull, tried, changed);
      const touched = boxOfStretches(touchedBy(changed, base.ofArea));
      return peaks(field.whole, grid, borders.byFront, after, canvas.diagonal, least, byPull, touched)
        .filter((peak) => !onCanvas || isElsewhere(peak, onCanvas.at, centre, canvas.diagonal))
        .map((peak) => strongPlace(peak, canvas));
    },
  };
}

function isTouched({ front, behind }: BorderStretch, changed: readonly number[]): boolean {
  return changed.includes(front) || changed.includes(behind);
}

/** What counts of a stretch where some areas are painted otherwise; each border is asked for once. */
function otherwise(weigh: Weigh, tried: Plan, changed: readonly number[]): Weigh {
  const weights = new Map<number, Map<number, number>>();
  return (stretch) => {
    if (!isTouched(stretch, changed)) return weigh(stretch);
    const { front, behind } = stretch;
    const ofFront = weights.get(front) ?? new Map<number, number>();
    weights.set(front, ofFront);
    const weight = ofFront.get(behind) ?? weigh({ ...stretch, ...contrastBetween(tried, front, behind) });
    ofFront.set(behind, weight);
    return weight;
  };
}

/** A field as it is with some areas painted otherwise. */
function triedField(
  now: Float64Array,
  weigh: Weigh,
  tried: Plan,
  changed: readonly number[],
  { grid, diagonal, ofArea }: Base,
): TriedField {
  const touched = touchedBy(changed, ofArea);
  const after = weighedStretches(touched, otherwise(weigh, tried, changed), grid, diagonal);
  return new TriedField(
    now,
    grid,
    keptPart(touched, weigh, grid, diagonal),
    (only) => after && laidPart(after, keptFootprints(touched, grid, diagonal), grid, only),
  );
}

function touchedBy(changed: readonly number[], ofArea: Base['ofArea']): readonly BorderStretch[] {
  const [only] = changed;
  if (only !== undefined && changed.length === 1) return ofArea(only);
  return [...new Set(changed.flatMap((area) => ofArea(area)))];
}

function cellAt({ columns, rows, cellWidth, cellHeight }: FieldGrid, { x, y }: Point): number {
  const column = Math.min(columns - 1, Math.max(0, Math.floor(x / cellWidth)));
  const row = Math.min(rows - 1, Math.max(0, Math.floor(y / cellHeight)));
  return row * columns + column;
}
