import type { Sentences } from '../../../grammar/index.js';
import type { Finding } from '../../findings/finding.js';
import type { Measures } from '../../measure/measures.js';
import type { Memory } from '../../measure/memory.js';
import type { Ring } from '../../plan/geometry/outline.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { Layout } from '../layout.js';
import type { Box, Mark, Subject, Viewing } from '../scene.js';
import type { CellMap } from '../picture/region.js';

/** What every view is composed from. */
export interface Reading {
  readonly plan: Plan;
  readonly measures: Measures;
  /** Those that the plan has not set aside. */
  readonly findings: readonly Finding[];
  readonly layout: Layout;
  readonly picture: Box;
  readonly subjects: Subjects;
  /** What is seen where, by index into `plan.objects`. */
  readonly cells: CellMap;
  /** Of the versions of the plan before. */
  readonly memory: Memory;
  readonly viewing: Viewing;
  /** Glazes are shown over the body colours. */
  readonly showsGlazes: boolean;
  /** Left and right are changed over in the view `transfer`, for what is carried over from the back. */
  readonly isMirrored: boolean;
  /** The sitting that is asked for in the view `record`, by its index in the plan. */
  readonly sitting?: number | undefined;
  /** What the findings are told in, besides English. */
  readonly language?: Sentences | undefined;
}

/** Keys of the subjects in the scene. */
export interface Subjects {
  readonly all: Readonly<Record<string, Subject>>;
  /** In the order of `plan.objects`. */
  readonly objects: readonly string[];
  /** In the order of `plan.leads`. */
  readonly leads: readonly string[];
  /** In the order of `plan.palette.paints`. */
  readonly paints: readonly string[];
  /** In the order of `plan.sittings`. */
  readonly sittings: readonly string[];
  /** In the order of `plan.divisions`; missing for the division that is taken by default. */
  readonly divisions: readonly (string | undefined)[];
  /** In the order of the findings. */
  readonly findings: readonly string[];
}

/** What one view puts on the picture. */
export interface PictureMarks {
  readonly shapes: readonly Mark[];
  /** The shapes are seen out of focus by so much, canvas units; see `SceneLayer`. */
  readonly blur?: number;
  readonly construction: readonly Mark[];
  readonly names: readonly Mark[];
  /** What the drawn names cover, so that marks of findings can keep clear of them. */
  readonly taken: readonly Box[];
  /** How many seen objects got no name for want of room. */
  readonly leftOut: number;
}

export interface SeenObject {
  readonly object: PlanObject;
  readonly share: number;
  readonly rings: readonly Ring[];
  readonly subject: string;
}

/** What several parts of a scene ask of one reading, worked out for the first of them. */
export function oncePerReading<Result extends object>(
  work: (reading: Reading) => Result,
): (reading: Reading) => Result {
  const known = new WeakMap<Reading, Result>();
  return (reading) => {
    const result = known.get(reading) ?? work(reading);
    known.set(reading, result);
    return result;
  };
}

/** The objects of which anything is seen: the dominant first, then the secondary, then by share. */
export const seenObjects = oncePerReading(seenBySize);

function seenBySize({ plan, measures, subjects, memory }: Reading): readonly SeenObject[] {
  return memory.recall('seen by size', '', [plan, measures, subjects], (last?: readonly SeenObject[]) => {
    const seen: (SeenObject | undefined)[] = plan.objects.map(() => undefined);
    plan.coveringOrder.forEach((index, place) => {
      const object = plan.objects[index];
      const layer = measures.areas.layers[place];
      const subject = subjects.objects[index];
      if (object === undefined || layer === undefined || subject === undefined || layer.share <= 0) return;
      seen[index] = { object, share: layer.share, rings: layer.visible, subject };
    });
    // In the order of the version before, which takes hardly any sorting.
    const all: SeenObject[] = [];
    for (const { object } of last ?? []) {
      const again = seen[object.index];
      if (again) all.push(again);
      seen[object.index] = undefined;
    }
    for (const other of seen) if (other) all.push(other);
    return all.sort(bySize);
  });
}

const RANK = { dominant: 0, secondary: 1, minor: 2 } as const;

function bySize(one: SeenObject, other: SeenObject): number {
  return (
    RANK[one.object.role ?? 'minor'] - RANK[other.object.role ?? 'minor'] ||
    other.share - one.share ||
    one.object.index - other.object.index
  );
}

/** The step of the scale that an object counts at; missing for one without value and colour. */
export function stepOf(object: PlanObject, plan: Plan): number | undefined {
  return object.step === undefined
    ? undefined
    : Math.min(plan.scale.steps, Math.max(1, Math.round(object.step)));
}

/** Whether an object has neither value nor colour, so that it can only be hatched. */
export function isUnplanned(object: PlanObject): boolean {
  return object.painted === undefined && object.step === undefined;
}

/** What the object is painted in, or the bare ground where nothing is planned. */
export function paintOf(object: PlanObject, plan: Plan): Colour {
  return object.painted ?? object.colour?.colour ?? plan.canvas.ground.colour;
}

/**
 * What is seen of an object through its glaze; missing without one, while it is still being worked out, and where none
 * is shown.
 */
export function glazedPaintOf(object: PlanObject, { measures, showsGlazes }: Reading): Colour | undefined {
  return showsGlazes ? measures.palette?.mixing?.glazes[object.index]?.seen : undefined;
}
