import { crowdingObjects, withoutShapes } from '../plan/crowding.js';
import { clipped } from '../plan/geometry/clipped.js';
import { EMPTY_OUTLINE, type Outline } from '../plan/geometry/outline.js';
import type { Piece } from '../plan/geometry/piece.js';
import { boxesOverlap } from '../plan/geometry/point.js';
import { ringsOf } from '../plan/geometry/polygons.js';
import { type Sheet, sheetsOver } from '../plan/geometry/sheet.js';
import { type Way, subtract } from '../plan/geometry/subtract.js';
import type { Plan } from '../plan/plan.js';
import { type SeenAreas, type SeenLayer, type VisibleAreas, seenLayer } from './areas/areas.js';
import { sameInputs } from './memory.js';

/** A plan that is only tried, and what is seen in it. */
export interface Trial {
  readonly plan: Plan;
  /**
   * Each layer is cut when something of it is first read; one that the trial doesn't touch is that of the plan as it
   * is.
   */
  readonly areas: SeenAreas;
  /** The objects that have another shape. */
  readonly moved: ReadonlySet<number>;
  /** What these take of the canvas in the trial, seen or not, part of it. */
  readonly movedShare: number;
}

/** Another order of covering, in which only the object `taken` stands elsewhere. */
export interface TriedOrder {
  readonly coveringOrder: readonly number[];
  readonly taken: number;
}

/**
 * The plan with other shapes for some objects, by their indices, or in another order, and what is then seen. Only
 * what lies where something moves is cut, and only when it is asked for. What would crowd the picture there loses its
 * shape, as in a plan that says the same; what has lost it already stays without, though such a plan may have room
 * for it.
 *
 * @param areas of the plan as it is
 */
export function trialOf(
  plan: Plan,
  areas: VisibleAreas,
  shapes: ReadonlyMap<number, Outline>,
  order?: TriedOrder,
): Trial {
  const coveringOrder = order?.coveringOrder ?? plan.coveringOrder;
  const placed = plan.objects.map((object, index) => {
    const outline = shapes.get(index);
    return outline ? { ...object, outline } : object;
  });
  const crowding = crowdingObjects({ canvas: plan.canvas, objects: placed, coveringOrder });
  const objects = withoutShapes(placed, crowding);
  const tried = { ...plan, objects, coveringOrder };
  const moved = new Set([...shapes.keys(), ...crowding.keys()]);
  const sheet = sheetsOver(plan.canvas)?.plain;
  if (!sheet) return { plan: tried, areas, moved, movedShare: 0 };
  const piecesOf = ({ objects: some }: Plan): readonly Piece[] =>
    [...moved].flatMap((index) => clipped(some[index]?.outline ?? EMPTY_OUTLINE, sheet));
  const movedShare = piecesOf(tried).reduce((sum, { area }) => sum + area / sheet.piece.area, 0);
  const touched = order ? [order.taken, ...moved] : [...moved];
  return { plan: tried, areas: new TriedAreas(plan, areas, tried, touched, sheet), moved, movedShare };
}

const WAY: Way = { careful: false, counter: undefined };

class TriedAreas implements SeenAreas {
  readonly layers: readonly SeenLayer[];
  readonly #before: VisibleAreas;
  readonly #sheet: Sheet;
  /** From back to front, as they were and as they are tried. */
  readonly #piecesBefore: readonly Piece[];
  readonly #pieces: readonly Piece[];
  /** Where something was or is now, before and in the trial. */
  readonly #left: readonly Piece[];
  readonly #taken: readonly Piece[];
  #change: { readonly laidOpen: number; readonly covered: number } | undefined;
  #bare: SeenAreas['bare'] | undefined;

  constructor(plan: Plan, before: VisibleAreas, tried: Plan, touched: readonly number[], sheet: Sheet) {
    const pieceOf = (of: Plan) => (index: number) =>
      clipped(of.objects[index]?.outline ?? EMPTY_OUTLINE, sheet);
    this.#before = before;
    this.#sheet = sheet;
    this.#piecesBefore = plan.coveringOrder.map(pieceOf(plan));
    this.#pieces = tried.coveringOrder.map(pieceOf(tried));
    this.#left = touched.map(pieceOf(plan));
    this.#taken = touched.map(pieceOf(tried));
    const layersBefore = new Map(plan.coveringOrder.map((object, at) => [object, before.layers[at]]));
    const places = [...this.#left, ...this.#taken].filter(({ area }) => area > 0);
    const changes = tried.coveringOrder.map(
      (object, position) =>
        touched.includes(object) ||
        places.some(({ box }) => boxesOverlap(box, this.#pieces[position]?.box ?? EMPTY_OUTLINE.box)),
    );
    // What is hidden and not touched stays hidden, and what hides it covers all that it would.
    const covers = tried.coveringOrder.map((object, at) =>
      changes[at] || (layersBefore.get(object)?.share ?? 0) > 0 ? this.#pieces[at] : undefined,
    );
    this.layers = tried.coveringOrder.map((object, position) => {
      const known = layersBefore.get(object);
      const outline = tried.objects[object]?.outline ?? EMPTY_OUTLINE;
      if (known && !changes[position]) return known;
      return readLater(() => {
        // As its double, so that nothing is pushed out of what is kept about the picture itself.
        const subject = clipped(doubleOf(outline), sheet);
        const inFront = covers.slice(position + 1).filter((piece) => piece !== undefined);
        return keptCut(layersCut, subject, inFront, (near) =>
          seenLayer(outline, subject, subtract(subject, near, WAY), sheet),
        );
      });
    });
  }

  get bareShare(): number {
    const { laidOpen, covered } = this.#bareChange();
    return Math.max(0, this.#before.bareShare + (laidOpen - covered) / this.#sheet.piece.area);
  }

  get bare(): SeenAreas['bare'] {
    const { laidOpen, covered } = this.#bareChange();
    if (laidOpen === 0 && covered === 0) return this.#before.bare;
    return (this.#bare ??= ringsOf(
      subtract({ ...this.#sheet.piece }, this.#pieces, WAY).polygons,
      this.#sheet.grid,
    ));
  }

  /** What lies open where something was, and what was open where something is now; squares of the grid. */
  #bareChange(): { readonly laidOpen: number; readonly covered: number } {
    return (this.#change ??= {
      laidOpen: uncovered(this.#left, this.#pieces),
      covered: this.#before.bareShare > 0 ? uncovered(this.#taken, this.#piecesBefore) : 0,
    });
  }
}

/** The area of some pieces together that others leave open, squares of the grid. */
function uncovered(places: readonly Piece[], covers: readonly Piece[]): number {
  return places.reduce(
    (sum, place, at) =>
      sum +
      keptCut(
        areasLeft,
        place,
        [...covers, ...places.slice(at + 1)],
        (near) => subtract({ ...place }, near, WAY).area,
      ),
    0,
  );
}

/** What was left of a piece under some others. */
interface Cut<Result> {
  readonly near: readonly Piece[];
  readonly result: Result;
}

type Cuts<Result> = WeakMap<Piece, Cut<Result>[]>;

const layersCut: Cuts<SeenLayer> = new WeakMap();
const areasLeft: Cuts<number> = new WeakMap();

/** Of one piece: more than the moves that are tried to mend what is told of it. */
const MOST_CUTS = 16;

/**
 * The same things are tried again after an edit elsewhere: what follows from the same pieces is kept as long as they
 * are.
 */
function keptCut<Result>(
  kept: Cuts<Result>,
  subject: Piece,
  covers: readonly Piece[],
  work: (near: readonly Piece[]) => Result,
): Result {
  const near = covers.filter(({ box }) => boxesOverlap(box, subject.box));
  const cuts = kept.get(subject) ?? [];
  kept.set(subject, cuts);
  const known = cuts.find((cut) => sameInputs(cut.near, near));
  if (known) return known.result;
  const result = work(near);
  if (cuts.length === MOST_CUTS) cuts.shift();
  cuts.push({ near, result });
  return result;
}

/** Plain data to any reader, worked out once when any of it is first read. */
function readLater(work: () => SeenLayer): SeenLayer {
  let kept: SeenLayer | undefined;
  const seen = (): SeenLayer => (kept ??= work());
  return {
    get visible() {
      return seen().visible;
    },
    get visibleArea() {
      return seen().visibleArea;
    },
    get ownArea() {
      return seen().ownArea;
    },
    get onCanvasArea() {
      return seen().onCanvasArea;
    },
    get share() {
      return seen().share;
    },
    get hiddenShare() {
      return seen().hiddenShare;
    },
    get offCanvasShare() {
      return seen().offCanvasShare;
    },
  };
}

const doubles = new WeakMap<Outline, Outline>();

/** Another outline of the same shape, kept as long as it. */
function doubleOf(outline: Outline): Outline {
  const double = doubles.get(outline) ?? { ...outline };
  doubles.set(outline, double);
  return double;
}
