import { transform } from '../../plan/geometry/outline.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { labDifference } from '../../plan/colour/difference.js';
import type { Frame } from './frame.js';
import { compareOutlines, type OutlineChange, UNCHANGED } from './outlines.js';

/** An object of two plans. */
export interface ObjectPair {
  /** Index into the objects of the earlier plan. */
  readonly earlier: number;
  readonly later: number;
  readonly outline: OutlineChange;
  /** It has another name, and is known by this. */
  readonly knownBy?: KnownBy;
}

/** What an object that has another name is known by: it lies where it lay, or is the same shape in the same colour. */
export type KnownBy = 'same place' | 'same shape and colour';

export interface ObjectPairs {
  /** In the order of the later plan. */
  readonly pairs: readonly ObjectPair[];
  /** Indices into the objects of the earlier plan. */
  readonly gone: readonly number[];
  readonly come: readonly number[];
}

/** CIEDE2000 under which two colours are hardly told apart. */
const SAME_COLOUR = 1;
/** So many objects without a partner are held against each other; a plan from a stranger may have any number. */
const MOST_TRIED = 40;

/**
 * Which objects of two plans are the same: those of one name, and of the others those that one object alone of the
 * other plan may be, because it has the same outline in the same place, or the same shape and colour elsewhere.
 */
export function pairObjects(earlier: Plan, later: Plan, frame: Frame): ObjectPairs {
  const byKey = new Map([...earlier.objects].reverse().map((object) => [object.key, object]));
  const pairs: ObjectPair[] = [];
  const taken = new Set<number>();
  const come: PlanObject[] = [];
  for (const object of later.objects) {
    const before = byKey.get(object.key);
    if (before === undefined || taken.has(before.index)) come.push(object);
    else {
      taken.add(before.index);
      pairs.push({
        earlier: before.index,
        later: object.index,
        outline: outlineChange(before, object, frame),
      });
    }
  }
  const gone = earlier.objects.filter(({ index }) => !taken.has(index));
  const renamed = renamedPairs(gone, come, frame);
  const isRenamed = (of: 'earlier' | 'later', { index }: PlanObject): boolean =>
    renamed.some((pair) => pair[of] === index);
  return {
    pairs: [...pairs, ...renamed].sort((one, other) => one.later - other.later),
    gone: gone.filter((object) => !isRenamed('earlier', object)).map(({ index }) => index),
    come: come.filter((object) => !isRenamed('later', object)).map(({ index }) => index),
  };
}

function renamedPairs(
  gone: readonly PlanObject[],
  come: readonly PlanObject[],
  frame: Frame,
): readonly ObjectPair[] {
  const possible = gone.slice(0, MOST_TRIED).flatMap((before) =>
    come.slice(0, MOST_TRIED).flatMap((object): readonly Required<ObjectPair>[] => {
      const outline = outlineChange(before, object, frame);
      const knownBy = knownAs(before, object, outline);
      return knownBy === undefined ? [] : [{ earlier: before.index, later: object.index, outline, knownBy }];
    }),
  );
  // Whoever may be two is not clearly either.
  const alone = (of: 'earlier' | 'later', pair: ObjectPair, among: readonly ObjectPair[]): boolean =>
    among.filter((other) => other[of] === pair[of]).length === 1;
  const only = (among: readonly ObjectPair[]): readonly ObjectPair[] =>
    among.filter((pair) => alone('earlier', pair, among) && alone('later', pair, among));
  const inPlace = only(possible.filter(({ knownBy }) => knownBy === 'same place'));
  const rest = possible.filter((pair) =>
    inPlace.every((sure) => sure.earlier !== pair.earlier && sure.later !== pair.later),
  );
  return [...inPlace, ...only(rest.filter(({ knownBy }) => knownBy !== 'same place'))];
}

function outlineChange(earlier: PlanObject, later: PlanObject, { matrix, canvas }: Frame): OutlineChange {
  const isEmpty = [earlier, later].map(({ outline }) => outline.path.length === 0);
  if (isEmpty[0] === true && isEmpty[1] === true) return UNCHANGED;
  if (isEmpty[0] === true || isEmpty[1] === true) return { isReshaped: true };
  const moved = matrix.a === 1 && matrix.d === 1 ? earlier.outline : transform(earlier.outline, matrix);
  return compareOutlines(moved, later.outline, canvas.diagonal);
}

function knownAs(earlier: PlanObject, later: PlanObject, outline: OutlineChange): KnownBy | undefined {
  if (outline.isReshaped || outline.turn !== undefined || outline.scale !== undefined) return undefined;
  if (earlier.outline.rings.length === 0) return undefined;
  if (outline.move === undefined) return 'same place';
  const [one, other] = [earlier.painted?.lab, later.painted?.lab];
  if (one === undefined || other === undefined) return undefined;
  return labDifference(one, other) < SAME_COLOUR ? 'same shape and colour' : undefined;
}
