import { t } from '../../../grammar/index.js';
import { measureColours } from '../../measure/colours.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import { runsAcross } from '../../measure/areas/parts.js';
import { measurePlanes, type PlaneMeasure } from '../../measure/values/planes.js';
import { measureValues } from '../../measure/values/values.js';
import { scale } from '../../plan/geometry/matrix.js';
import { type Outline, transform } from '../../plan/geometry/outline.js';
import { boxCentre, boxesOverlap } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { sizeEdit } from '../edits.js';
import type { Fix } from '../finding.js';
import { exceeds } from '../limits.js';
import { remembered } from '../moves/remembered.js';
import { isResizable, resized } from '../moves/resize.js';
import { disorderedPlanes } from '../seen/plane-order.js';
import { doesNoHarm } from './budgets.js';
import { holdsStep } from './repainting.js';
import { quoted } from '../words/words.js';

/** An object made larger or smaller about its middle. */
export interface Resizing {
  readonly object: PlanObject;
  /** So many times as wide and as high, in whole percent. */
  readonly factor: number;
  /** What the role or the values that were out of their budget then cover, part of the picture. */
  readonly share: number;
  readonly fix: Fix;
}

export type BudgetKind = 'colour' | 'value';
const KINDS: readonly BudgetKind[] = ['colour', 'value'];

/** A side a quarter longer, or as much shorter: beyond that it is no longer one thing to try but another picture. */
const LARGEST = 1.25;
const SMALLEST = 1 / LARGEST;
/** Objects tried; each trial cuts the picture anew where the object is. */
const MOST_TRIED = 2;
/** Where so many corners meet, a trial takes too long for a finding that stands while a shape is being drawn. */
const MOST_CORNERS = 3000;

/**
 * One object whose change of size brings an entry of one budget within, takes no other share of either budget farther
 * out, hides nothing and lays no ground bare: the one that changes least. What it then covers is measured on the
 * picture itself. Nothing when no single object does. Objects that others lie on or are placed by, and grounds, are
 * left as they are.
 */
export function resizingFor(
  plan: Plan,
  measures: Measures,
  of: BudgetKind,
  entry: BudgetMeasure,
): Resizing | undefined {
  // All the way to the target where that can be: shares make a whole, so what is then right for one role is likely
  // right for the others.
  const wanted = -entry.difference;
  const guesses = plan.objects
    .flatMap((object) => {
      const share = measures.objects[object.index]?.share ?? 0;
      if (share === 0) return [];
      // What does not count for the entry is taken to lie on what does: as it grows, the entry's share shrinks.
      const way = countsFor(plan, of, entry, object) ? 1 : -1;
      const factor = inPercent(withinReach(1 + (way * wanted) / share));
      const left = Math.abs(wanted - way * share * (factor ** 2 - 1));
      if (factor === 1 || exceeds(left, entry.tolerance)) return [];
      return standsAlone(plan, measures, object) ? [{ object, factor }] : [];
    })
    .sort((one, other) => Math.abs(Math.log(one.factor)) - Math.abs(Math.log(other.factor)));
  for (const { object, factor } of guesses.slice(0, MOST_TRIED)) {
    const first = tried(plan, measures, { of, entry }, object, factor);
    if (first?.keeps) return resizing(plan, object, first);
    if (!first || first.share === entry.share) continue;
    // What it uncovers or covers may carry the same role: the area that counts changes by less, or by more.
    const gained = (first.share - entry.share) / (factor ** 2 - 1);
    const corrected = inPercent(withinReach(1 + wanted / gained));
    if (corrected === 1 || corrected === factor) continue;
    const second = tried(plan, measures, { of, entry }, object, corrected);
    if (second?.keeps) return resizing(plan, object, second);
  }
  return undefined;
}

function countsFor(
  { scale: { groups } }: Plan,
  of: BudgetKind,
  { key }: BudgetMeasure,
  object: PlanObject,
): boolean {
  if (of === 'colour') return object.colour?.role === key;
  return object.step !== undefined && holdsStep(groups, key, Math.round(object.step));
}

/** `20 % wider and higher`, `8 % narrower and lower` */
export function resizingWords({ factor }: Pick<Resizing, 'factor'>): string {
  const percent = Math.round(Math.abs(factor - 1) * 100);
  return factor > 1 ? t('{0} % wider and higher', percent) : t('{0} % narrower and lower', percent);
}

/** So many times as wide and as high for so many times the area, or as far towards it as may be gone. */
function withinReach(timesTheArea: number): number {
  return Math.min(LARGEST, Math.max(SMALLEST, Math.sqrt(Math.max(0, timesTheArea))));
}

function inPercent(factor: number): number {
  return Math.round(factor * 100) / 100;
}

function standsAlone(plan: Plan, { parts }: Measures, object: PlanObject): boolean {
  if (object.waiting || object.faulty || runsAcross(object.outline.box, plan.canvas)) return false;
  return isResizable(plan, parts, object);
}

interface Tried {
  readonly factor: number;
  readonly share: number;
  readonly keeps: boolean;
}

function tried(
  plan: Plan,
  measures: Measures,
  { of, entry }: { readonly of: BudgetKind; readonly entry: BudgetMeasure },
  object: PlanObject,
  factor: number,
): Tried | undefined {
  const { shares, bareShare } = seenWith(plan, measures, object.index, factor) ?? {};
  if (!shares || bareShare === undefined) return undefined;
  const after = {
    colour: measureColours(plan, shares, bareShare).budget,
    value: measureValues(plan, shares, bareShare).budget,
  };
  const now = { colour: measures.colours.budget, value: measures.values.budget };
  const share = after[of].find(({ key }) => key === entry.key)?.share;
  if (share === undefined) return undefined;
  const keeps =
    after[of].some(({ key, within }) => key === entry.key && within) &&
    KINDS.every((kind) => now[kind].every((one, at) => doesNoHarm(one, after[kind][at]?.difference ?? 0))) &&
    planesStayInOrder(plan, measures, shares) &&
    !exceeds(bareShare, measures.areas.bareShare) &&
    shares.every((one, index) => exceeds(one, 0) || measures.objects[index]?.share === 0);
  return { factor, share, keeps };
}

function planesStayInOrder(plan: Plan, { planes }: Measures, shares: readonly number[]): boolean {
  const trend = plan.scale.trend?.value;
  const disorder = (measured: readonly PlaneMeasure[]): number =>
    disorderedPlanes(
      trend,
      measured.map(({ value }) => value),
    ).length;
  return disorder(measurePlanes(plan, shares)) <= disorder(planes);
}

interface Seen {
  /** Visible shares in the order of `plan.objects`. */
  readonly shares: readonly number[];
  readonly bareShare: number;
}

/** What is seen of every object when one has another size; nothing where too many corners meet to try it. */
function seenWith(plan: Plan, measures: Measures, object: number, factor: number): Seen | undefined {
  return remembered(plan, object, `seen at ${factor}`, 0, () => {
    if (cornersRound(plan, object) > MOST_CORNERS) return undefined;
    const { areas } = resized(plan, measures, { object, factor });
    const shares = plan.objects.map(() => 0);
    plan.coveringOrder.forEach((index, position) => {
      shares[index] = areas.layers[position]?.share ?? 0;
    });
    return { shares, bareShare: areas.bareShare };
  });
}

/** Corners of all objects in reach of one at its largest. */
function cornersRound({ objects }: Plan, index: number): number {
  const outline = objects[index]?.outline;
  if (!outline) return 0;
  const reach = transform(outline, scale(LARGEST, LARGEST, boxCentre(outline.box))).box;
  return objects.reduce(
    (sum, other) => (boxesOverlap(other.outline.box, reach) ? sum + cornersOf(other.outline) : sum),
    0,
  );
}

function cornersOf({ rings }: Outline): number {
  return rings.reduce((sum, ring) => sum + ring.length / 2, 0);
}

function resizing(plan: Plan, object: PlanObject, { factor, share }: Tried): Resizing | undefined {
  const edits = sizeEdit(plan, object, factor);
  if (!edits) return undefined;
  const title = t('Make {0} {1}', quoted(object.name), resizingWords({ factor }));
  return { object, factor, share, fix: { title, edits } };
}
