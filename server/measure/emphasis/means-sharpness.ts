import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { BorderMeasure, BorderStretch } from '../borders/borders.js';
import { contrastBetween } from '../borders/contrast.js';
import { type Centre, isOwnEdge } from './centre.js';
import { sameInputs } from '../memory.js';
import { counted } from './grid.js';
import { apart, ratio } from './means-round.js';

/** How sharp borders are at the focal point and elsewhere: a mean by length, 0 where none has contrast. */
export interface SharpnessRound {
  readonly there: number;
  readonly elsewhere: number;
  /**
   * No border with contrast is near: the edges of what is dominant there are looked at, in which the focal point lies
   * deep.
   */
  readonly isOfDominant: boolean;
}

/**
 * Mean sharpness of the borders that have contrast, within 8 % of the diagonal and in the rest. A painter who means a
 * head to win by its edges sets the point in its midst: where no such border is near, those of the dominant object
 * there and of all that lies on it are the near ones, as far as they are one with the focal point.
 *
 * @param repainted the object that the plan paints otherwise than it was when the borders were measured, if it does
 */
export function sharpnessRound(
  plan: Plan,
  { byFront }: Pick<BorderMeasure, 'byFront'>,
  centre: Centre,
  repainted?: number,
): SharpnessRound {
  const { focus, canvas } = plan;
  if (!focus) return { there: 0, elsewhere: 0, isOfDominant: false };
  const [near, own] = [new Sharpness(), new Sharpness()];
  for (const known of areasRound(byFront, focus.at, canvas.diagonal, centre)) {
    const { front } = known;
    const isRepainted = repainted !== undefined && (front === repainted || known.borders.has(repainted));
    const round = isRepainted ? summedUp(repaintedBorders(plan, front, known, repainted)) : known;
    near.addAll(round.near);
    own.addAll(round.own);
  }
  if (near.there > 0) return { there: near.there, elsewhere: near.elsewhere, isOfDominant: false };
  return { there: own.there, elsewhere: own.elsewhere, isOfDominant: own.there > 0 };
}

/** Sums by length, canvas units, of borders at a place and elsewhere. */
class Sharpness {
  #inside = 0;
  #insideLength = 0;
  #outside = 0;
  #outsideLength = 0;

  add(sharpness: number, { inside, outside }: Lengths): void {
    this.#inside += inside * sharpness;
    this.#insideLength += inside;
    this.#outside += outside * sharpness;
    this.#outsideLength += outside;
  }

  addAll(other: Sharpness): void {
    this.#inside += other.#inside;
    this.#insideLength += other.#insideLength;
    this.#outside += other.#outside;
    this.#outsideLength += other.#outsideLength;
  }

  /** The mean at the place. */
  get there(): number {
    return ratio(this.#inside, this.#insideLength);
  }

  get elsewhere(): number {
    return ratio(this.#outside, this.#outsideLength);
  }
}

/** How much of a border lies at a place and how much elsewhere, canvas units. */
interface Lengths {
  inside: number;
  outside: number;
}

/** The border of an area with one behind it. */
interface BorderRound {
  /** The area behind, or `GROUND`. */
  readonly behind: number;
  readonly sharpness: number;
  readonly pull: number;
  /** Within 8 % of the diagonal of the focal point, and beyond. */
  readonly near: Lengths;
  /** One with the focal point as an edge of what is dominant there, and not. */
  readonly own: Lengths;
}

interface Sums {
  readonly near: Sharpness;
  readonly own: Sharpness;
}

/** All borders of an area in front, by the area behind. */
interface AreaRound extends Sums {
  readonly front: number;
  readonly borders: ReadonlyMap<number, BorderRound>;
}

interface KeptOfAll {
  readonly focus: Point;
  readonly diagonal: number;
  readonly centre: Centre;
  readonly rounds: readonly AreaRound[];
}

const keptOfAll = new WeakMap<BorderMeasure['byFront'], KeptOfAll>();

/** Of all areas in front, kept as long as their list: each trial of a remedy looks at all of them. */
function areasRound(
  byFront: BorderMeasure['byFront'],
  focus: Point,
  diagonal: number,
  centre: Centre,
): readonly AreaRound[] {
  const known = keptOfAll.get(byFront);
  if (known?.focus === focus && known.diagonal === diagonal && areAlike(known.centre, centre))
    return known.rounds;
  const rounds = byFront.map(({ front, stretches }) => areaRound(front, stretches, focus, diagonal, centre));
  keptOfAll.set(byFront, { focus, diagonal, centre, rounds });
  return rounds;
}

function areAlike(one: Centre, other: Centre): boolean {
  return one === other || sameInputs([...one].flat(), [...other].flat());
}

interface Kept {
  readonly focus: Point;
  readonly diagonal: number;
  /** How far the edges of the area in front are one with the focal point. */
  readonly reach: number | undefined;
  readonly round: AreaRound;
}

const kept = new WeakMap<readonly BorderStretch[], Kept>();

/** Kept as long as the list of stretches: of a large picture few change, and there are ten times fewer borders. */
function areaRound(
  front: number,
  stretches: readonly BorderStretch[],
  focus: Point,
  diagonal: number,
  centre: Centre,
): AreaRound {
  const reach = centre.get(front);
  const known = kept.get(stretches);
  const isAt = known?.focus.x === focus.x && known.focus.y === focus.y;
  if (isAt && known.diagonal === diagonal && known.reach === reach) return known.round;
  const borders = new Map<number, BorderRound>();
  for (const { at, length, behind, sharpness, pull } of stretches) {
    let border = borders.get(behind);
    if (!border) {
      const nothing = { inside: 0, outside: 0 };
      border = { behind, sharpness, pull, near: { ...nothing }, own: { ...nothing } };
      borders.set(behind, border);
    }
    const away = apart(at, focus);
    add(border.near, length, counted(away, diagonal));
    add(border.own, length, isOwnEdge(front, away / diagonal, centre) ? 1 : 0);
  }
  const round = { front, borders, ...summedUp(borders.values()) };
  kept.set(stretches, { focus, diagonal, reach, round });
  return round;
}

function add(lengths: Lengths, length: number, part: number): void {
  lengths.inside += part * length;
  lengths.outside += (1 - part) * length;
}

function summedUp(borders: Iterable<BorderRound>): Sums {
  const [near, own] = [new Sharpness(), new Sharpness()];
  for (const border of borders) {
    if (border.pull === 0) continue;
    near.add(border.sharpness, border.near);
    own.add(border.sharpness, border.own);
  }
  return { near, own };
}

function repaintedBorders(
  plan: Plan,
  front: number,
  { borders }: AreaRound,
  repainted: number,
): readonly BorderRound[] {
  return [...borders.values()].map((border) => {
    if (front !== repainted && border.behind !== repainted) return border;
    const { sharpness, pull } = contrastBetween(plan, front, border.behind);
    return { ...border, sharpness, pull };
  });
}
