import { nameKey, t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { runsAcross, wholeOf } from '../../measure/areas/parts.js';
import { runsAlong } from '../../measure/tangency/runs-along.js';
import { type Trial, trialOf } from '../../measure/trial.js';
import { dependenciesOf } from '../../plan/dependencies.js';
import { translate } from '../../plan/geometry/matrix.js';
import { type Outline, transform } from '../../plan/geometry/outline.js';
import type { Canvas, Plan, PlanObject } from '../../plan/plan.js';
import { moveEdit } from '../edits.js';
import type { Fix, FixEdit } from '../finding.js';
import { inWords } from '../../plan/problems.js';
import { length, quoted } from '../words/words.js';

/** An object moved, with all that lies on it and all that the plan places by it. Canvas units. */
export interface Shift {
  readonly object: number;
  /** To the right, or to the left when negative. */
  readonly right: number;
  readonly down: number;
}

/** Everything that a shift of an object moves, the object first. */
export function movedWith(plan: Plan, parts: Measures['parts'], object: number): readonly number[] {
  const placed = placedBy(plan);
  const moved = new Set(wholeOf(parts, object));
  for (const one of moved) for (const other of placed[one] ?? []) moved.add(other);
  return [...moved];
}

/** For every object those whose place the plan gives by it. */
function placedBy(plan: Plan): readonly (readonly number[])[] {
  const kept = placements.get(plan);
  if (kept) return kept;
  const byKey = new Map(plan.objects.map(({ key, index }) => [key, index]));
  const placed = plan.objects.map((): number[] => []);
  for (const object of plan.objects) {
    for (const key of placersOf(object).keys) {
      const other = byKey.get(key);
      if (other !== undefined && other !== object.index) placed[other]?.push(object.index);
    }
  }
  placements.set(plan, placed);
  return placed;
}

const placements = new WeakMap<Plan, readonly (readonly number[])[]>();

/** What places of an object are given by: the keys of other objects, and whether the focal point is among it. */
interface Placers {
  readonly keys: readonly string[];
  readonly byFocus: boolean;
}

/** Kept as long as the object. */
function placersOf(object: PlanObject): Placers {
  const known = placers.get(object);
  if (known) return known;
  const all = dependenciesOf(object.node.children);
  const found = {
    keys: all.flatMap(({ name }) => (name ? nameKey(name.text) : [])),
    byFocus: all.some(({ name }) => name === undefined),
  };
  placers.set(object, found);
  return found;
}

const placers = new WeakMap<PlanObject, Placers>();

/** Whether a place of an object is given by the focal point. */
export function isPlacedByFocus(object: PlanObject): boolean {
  return placersOf(object).byFocus;
}

/** Whether one of two objects is placed by the other, so that where they meet is as the plan says. */
export function placedTogether(plan: Plan, one: number, other: number): boolean {
  const placed = placedBy(plan);
  return (placed[one]?.includes(other) ?? false) || (placed[other]?.includes(one) ?? false);
}

/**
 * Whether a painter would move it by itself: a thing, not a ground, that is not built onto another one as a roof is
 * onto its wall. `except` is a thing that it may be built onto.
 */
export function isMovable(plan: Plan, parts: Measures['parts'], index: number, except?: number): boolean {
  const { canvas, objects } = plan;
  const object = objects[index];
  if (!object || object.outline.rings.length === 0 || object.waiting) return false;
  if (runsAcross(object.outline.box, canvas)) return false;
  const own = new Set(movedWith(plan, parts, index));
  return objects.every(
    (other) =>
      own.has(other.index) ||
      other.index === except ||
      runsAcross(other.outline.box, canvas) ||
      !runsAlong(object.outline, other.outline, canvas),
  );
}

/** The picture with the shift made. */
export function shifted(plan: Plan, measures: Pick<Measures, 'areas' | 'parts'>, shift: Shift): Trial {
  const { object, right, down } = shift;
  const shapes = movedWith(plan, measures.parts, object).flatMap(
    (index): readonly (readonly [number, Outline])[] => {
      const outline = plan.objects[index]?.outline;
      return outline ? [[index, shiftedOutline(outline, right, down)]] : [];
    },
  );
  return trialOf(plan, measures.areas, new Map(shapes));
}

const outlines = new WeakMap<Outline, Map<string, Outline>>();
/** Of one outline: more than the moves that are tried to mend what is told of it. */
const MOST_OUTLINES = 24;

/** The same one as long as the outline stays, so that what follows from it is worked out once. */
function shiftedOutline(outline: Outline, right: number, down: number): Outline {
  const shifts = outlines.get(outline) ?? new Map<string, Outline>();
  outlines.set(outline, shifts);
  const key = `${right} ${down}`;
  const known = shifts.get(key);
  if (known) return known;
  if (shifts.size === MOST_OUTLINES) shifts.clear();
  const moved = transform(outline, translate(right, down));
  shifts.set(key, moved);
  return moved;
}

/** A distance as long as asked for, or as little longer as it takes to be told in round figures. */
export function roundedOn(distance: number, { unit }: Pick<Canvas, 'unit'>): number {
  const perUnit = unit === 'm' ? 100 : 10;
  const far = Math.ceil(Math.abs(distance) * perUnit - 1e-6) / perUnit;
  return distance < 0 ? -far : Math.max(0, far);
}

/** `2.3 cm to the left`, `1 cm down` */
export function distanceWords({ right, down }: Shift, canvas: Pick<Canvas, 'unit'>): string {
  const across =
    right === 0
      ? []
      : right < 0
        ? [t('{0} to the left', length(-right, canvas))]
        : [t('{0} to the right', length(right, canvas))];
  const along =
    down === 0 ? [] : down < 0 ? [t('{0} up', length(-down, canvas))] : [t('{0} down', length(down, canvas))];
  return inWords([...across, ...along]);
}

/** `jug`, with what lies on it, */
export function withItsParts(plan: Plan, parts: Measures['parts'], object: number): string {
  const name = quoted(plan.objects[object]?.name ?? '');
  return (parts[object] ?? []).length > 0 ? t('{0}, with what lies on it,', name) : name;
}

/** The edits that make a shift; nothing when the text has no place for one of them. */
export function shiftFix(plan: Plan, parts: Measures['parts'], shift: Shift): Fix | undefined {
  const { object, right, down } = shift;
  const placed = placedBy(plan);
  const moved = movedWith(plan, parts, object);
  const edits: FixEdit[] = [];
  for (const index of moved) {
    const one = plan.objects[index];
    const follows = moved.some((other) => other !== index && placed[other]?.includes(index));
    if (!one || follows) continue;
    const edit = moveEdit(plan, one, right, down);
    if (!edit) return undefined;
    for (const own of edit) edits.push(own);
  }
  return {
    title: t('Move {0} {1}', quoted(plan.objects[object]?.name ?? ''), distanceWords(shift, plan.canvas)),
    edits,
  };
}
