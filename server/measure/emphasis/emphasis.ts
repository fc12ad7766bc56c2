import type { FocusMeasure } from './at-focus.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import type { BorderMeasure } from '../borders/borders.js';
import {
  type LaidField,
  type Weigh,
  byColour,
  byPull,
  byValue,
  keepField,
  keptPart,
  laidField,
} from './field.js';
import { type FieldGrid, fieldGrid } from './grid.js';
import { strongestOf } from './candidates.js';
import { takeOverGatherings } from './gathering.js';
import { type Peak, peaks, strongestNear, strongestPeak } from './places.js';
import { centreOfInterest, isElsewhere } from './centre.js';
import { type MeansMeasure, measureMeans } from './means.js';
import { type SeenPart, seenRound } from './means-round.js';
import type { Memory } from '../memory.js';
import { higherFirst, inSteps } from '../areas/place-order.js';

export type { MeansMeasure } from './means.js';
export type { SeenPart } from './means-round.js';

/**
 * How strongly places draw the eye. Heuristic: over every border between two visible areas, length x edge sharpness x
 * (0.6 dV / 10 + 0.4 dab / 100), gathered within 8 % of the diagonal, lengths in diagonals.
 */
export interface EmphasisMeasure {
  readonly field: EmphasisField;
  /**
   * The places that are stronger than all round them, strongest first, each at least 8 % of the diagonal from the next.
   */
  readonly places: readonly StrongPlace[];
  /** Missing without a focal point on the canvas. */
  readonly focal?: FocalEmphasis;
  /**
   * Places within 5 % of the diagonal from an edge of the canvas that have at least three quarters of the strength of
   * the focal point (of the strongest place, where there is no focal point), strongest first.
   */
  readonly nearEdge: readonly StrongPlace[];
}

/** The strength at the middles of a grid of equal cells over the canvas. */
export interface EmphasisField {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the upper left. */
  readonly strengths: ArrayLike<number>;
  readonly strongest: number;
}

export interface StrongPlace {
  /** The middle of what is gathered there, weighted by its pull; canvas units. */
  readonly at: Point;
  /** The greatest gathered at one place there. */
  readonly strength: number;
  /** The two areas whose border counts most there; `GROUND` for the bare ground. */
  readonly areas: readonly [number, number];
  /** From the nearest edge of the canvas, part of the diagonal. */
  readonly fromEdge: number;
}

export interface FocalEmphasis {
  /** The greatest strength within 8 % of the diagonal from the focal point. */
  readonly strength: number;
  readonly at: Point;
  /** The two areas whose border counts most there; twice `GROUND` where there is no border. */
  readonly areas: readonly [number, number];
  /**
   * The places elsewhere, strongest first: farther than 8 % of the diagonal from the focal point, and not one with
   * what is dominant there, as its own edges are up to 16 % or, of a larger one, up to half of the diagonal of the box
   * round what is seen of it, at least up to the shorter side of that box; up to 16 % what stands against it is so too.
   */
  readonly elsewhere: readonly StrongPlace[];
  /** 1 when no place elsewhere is stronger. */
  readonly rank: number;
  /** Places elsewhere that have at least nine tenths of its strength, strongest first. */
  readonly rivals: readonly StrongPlace[];
  /** What is seen within 8 % of the diagonal, parts of the picture, largest first. */
  readonly seenThere: readonly SeenPart[];
  /** All six, in the order of the trade's list. */
  readonly means: readonly MeansMeasure[];
}

/** From this part of the focal point's strength on, a place elsewhere is a rival. */
export const RIVAL = 0.9;
/** From this part on, a place near the edge of the canvas is strong. */
export const STRONG = 0.75;
/** Part of the diagonal that is near the edge of the canvas. */
export const NEAR_EDGE = 0.05;
const ROUNDING = 1e-9;

/** What the emphasis is measured from, besides the plan. */
export interface Seen {
  readonly areas: VisibleAreas;
  readonly borders: BorderMeasure;
  readonly focus?: FocusMeasure;
  /** In the order of `plan.objects`: visible parts of the canvas, and what lies on each object. */
  readonly shares: readonly number[];
  readonly parts: readonly (readonly number[])[];
}

/**
 * How strongly each place draws the eye, and how the focal point stands among them. What each area in front adds to
 * the field is kept as long as its borders are the same.
 */
export function measureEmphasis(plan: Plan, seen: Seen, memory: Memory): EmphasisMeasure {
  const { canvas } = plan;
  const grid = fieldGrid(canvas);
  const pull = gather(plan, seen.borders, 'pull', byPull, grid, memory);
  const { byFront } = seen.borders;
  const inputs = [pull, canvas.width, canvas.height];
  const { places } = memory.recall(
    'strong places',
    '',
    inputs,
    (last: KeptPlaces | undefined): KeptPlaces => {
      if (last) takeOverGatherings(byFront, last.byFront, byPull, canvas.diagonal);
      const found = peaks(pull, grid, byFront, byPull, canvas.diagonal);
      return { byFront, places: found.map((peak) => strongPlace(peak, canvas)) };
    },
  );
  const focal = focalEmphasis(plan, seen, { grid, pull, places }, memory);
  const enough = STRONG * (focal?.strength ?? places[0]?.strength ?? 0);
  return {
    field: {
      columns: grid.columns,
      rows: grid.rows,
      strengths: pull,
      strongest: strongestOf(pull),
    },
    places,
    ...(focal ? { focal } : {}),
    nearEdge: places.filter(
      ({ fromEdge, strength }) => isNearEdge(fromEdge) && strength >= enough - ROUNDING,
    ),
  };
}

interface KeptPlaces {
  readonly byFront: BorderMeasure['byFront'];
  readonly places: readonly StrongPlace[];
}

export function isNearEdge(fromEdge: number): boolean {
  return fromEdge <= NEAR_EDGE + ROUNDING;
}

/** A peak as a place in the picture. */
export function strongPlace(peak: Peak, { width, height, diagonal }: Canvas): StrongPlace {
  const { x, y } = peak.at;
  return { ...peak, fromEdge: Math.max(0, Math.min(x, y, width - x, height - y)) / diagonal };
}

/** A field, and the borders whose parts it was laid of. */
interface GatheredField {
  readonly byFront: BorderMeasure['byFront'];
  readonly diagonal: number;
  readonly laid: LaidField;
}

function gather(
  plan: Plan,
  { byFront }: BorderMeasure,
  what: string,
  weigh: Weigh,
  grid: FieldGrid,
  memory: Memory,
): Float64Array {
  const { diagonal } = plan.canvas;
  const inputs = [byFront, grid.columns, grid.rows, diagonal];
  const work = (last: GatheredField | undefined): GatheredField => {
    const earlier = last?.diagonal === diagonal ? last : undefined;
    const parts = byFront.map(({ front, stretches }, index) => {
      const before = earlier?.byFront[index]?.stretches;
      if (before === stretches && earlier?.laid.columns === grid.columns) return earlier.laid.parts[index];
      const key = plan.objects[front]?.key ?? '';
      return memory.recall(`field of ${what}`, key, [stretches, ...inputs.slice(1)], () =>
        keptPart(stretches, weigh, grid, diagonal, before),
      );
    });
    const laid = laidField(parts, grid, earlier?.laid);
    keepField(byFront, weigh, { grid, diagonal, field: laid.field });
    return { byFront, diagonal, laid };
  };
  return memory.recall(`emphasis by ${what}`, '', inputs, work).laid.field;
}

interface ByPull {
  readonly grid: FieldGrid;
  readonly pull: Float64Array;
  readonly places: readonly StrongPlace[];
}

function focalEmphasis(
  plan: Plan,
  seen: Seen,
  { grid, pull, places }: ByPull,
  memory: Memory,
): FocalEmphasis | undefined {
  const { canvas, focus } = plan;
  if (!focus || !isOnCanvas(focus.at, canvas)) return undefined;
  const { diagonal } = canvas;
  const centre = centreOfInterest(plan, seen);
  const { byFront } = seen.borders;
  const isOther = (place: Peak) => isElsewhere(place, focus.at, centre, diagonal);
  const compare = (what: 'value' | 'colour', weigh: Weigh) => {
    const field = gather(plan, seen.borders, what, weigh, grid, memory);
    const inputs = [field, focus.at.x, focus.at.y, diagonal, ...[...centre].flat()];
    return memory.recall(`means ${what}`, '', inputs, () => ({
      there: strongestNear(field, grid, byFront, weigh, focus.at, diagonal),
      elsewhere: strongestPeak(field, grid, byFront, weigh, diagonal, isOther),
    }));
  };
  const there = strongestNear(pull, grid, byFront, byPull, focus.at, diagonal);
  const higher = higherFirst(canvas);
  const strength = (place: StrongPlace): number => inSteps(place.strength, places[0]?.strength ?? 1);
  const fromFocus = (place: StrongPlace): number => inSteps(distance(place.at, focus.at), diagonal);
  // Two that lie like each other's mirror image are told apart by the focal point.
  const elsewhere = places
    .filter(isOther)
    .sort(
      (one, other) =>
        strength(other) - strength(one) || higher(one.at, other.at) || fromFocus(one) - fromFocus(other),
    );
  const seenThere = seenRound(plan, seen.areas, memory);
  return {
    ...there,
    elsewhere,
    rank: 1 + elsewhere.filter(({ strength }) => strength > there.strength * (1 + ROUNDING)).length,
    rivals: elsewhere.filter(({ strength }) => strength >= (RIVAL - ROUNDING) * there.strength),
    seenThere,
    means: measureMeans(
      plan,
      seen,
      {
        centre,
        seenThere,
        value: compare('value', byValue),
        colour: compare('colour', byColour),
      },
      memory,
    ),
  };
}

function isOnCanvas({ x, y }: Point, { width, height }: Canvas): boolean {
  return x >= -ROUNDING && y >= -ROUNDING && x <= width + ROUNDING && y <= height + ROUNDING;
}
