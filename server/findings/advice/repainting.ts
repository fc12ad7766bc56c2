import { stepValue } from '../../plan/colour/value.js';
import type { Plan, StepGroup } from '../../plan/plan.js';
import type { Measures } from '../../measure/measures.js';
import { doesNoHarm } from './budgets.js';
import { isCheaper } from './costs.js';
import { contestedTones, LEADING_BY } from '../seen/leading-tone.js';
import { disorderedPlanes } from '../seen/plane-order.js';

/** One object taken to another step of the value scale. */
export interface StepChange {
  readonly object: number;
  readonly from: number;
  readonly to: number;
}

/** How light and dark would lie in the picture; shares are parts of it. */
export interface Tones {
  /** In the order of the groups. */
  readonly groups: readonly number[];
  /** `share - target`, in the order of the budget. */
  readonly budget: readonly number[];
  /** Mean Munsell values in the order of `measures.planes`. */
  readonly planes: readonly (number | undefined)[];
}

/** Whether a step counts for each group, and for each entry of the budget. */
interface StepCounts {
  readonly groups: readonly boolean[];
  readonly budget: readonly boolean[];
}

/** An object taken further than a quarter of the scale would be another object. */
const FURTHEST_PART_OF_SCALE = 1 / 4;

const kept = new WeakMap<Measures, { readonly plan: Plan; readonly repainting: Repainting }>();

/** One for all rules that look at the same picture. */
export function repaintingOf(plan: Plan, measures: Measures): Repainting {
  const known = kept.get(measures);
  if (known?.plan === plan) return known.repainting;
  const repainting = new Repainting(plan, measures);
  kept.set(measures, { plan, repainting });
  return repainting;
}

/** What a plan's light and dark come to when an object is taken to another step. */
class Repainting {
  readonly #plan: Plan;
  readonly #measures: Measures;
  /** Area with a value, in the order of `measures.planes`. */
  readonly #planeWeights: readonly number[];
  readonly #outOfOrder: ReadonlySet<number>;
  readonly #isContested: boolean;
  /** What each step counts for. */
  readonly #countsFor = new Map<number, StepCounts>();
  readonly now: Tones;

  constructor(plan: Plan, measures: Measures) {
    this.#plan = plan;
    this.#measures = measures;
    const weights = new Map(measures.planes.map(({ plane }) => [plane, 0]));
    for (const { index, plane, value } of plan.objects) {
      const weight = weights.get(plane);
      if (weight !== undefined && value !== undefined) weights.set(plane, weight + this.#shareOf(index));
    }
    this.#planeWeights = measures.planes.map(({ plane }) => weights.get(plane) ?? 0);
    this.now = {
      groups: measures.values.groups.map(({ share }) => share),
      budget: measures.values.budget.map(({ difference }) => difference),
      planes: measures.planes.map(({ value }) => value),
    };
    this.#outOfOrder = new Set(disorderedPlanes(plan.scale.trend?.value, this.now.planes));
    this.#isContested = contestedTones(plan, this.now.groups, LEADING_BY).length > 0;
  }

  /** The tones after one change, each list worked out when it is asked for: of most changes only one is. */
  after({ object, from, to }: StepChange): Tones {
    return new TonesAfter(this.now, this.#shareOf(object), this.#countsOf(from), this.#countsOf(to), () =>
      this.#planesAfter(object, to),
    );
  }

  #planesAfter(index: number, to: number): Tones['planes'] {
    const object = this.#plan.objects[index];
    const share = this.#shareOf(index);
    const lighter = stepValue(to, this.#plan.scale.steps) - (object?.value ?? 0);
    return this.now.planes.map((value, at) => {
      const weight = this.#planeWeights[at] ?? 0;
      const touched = this.#measures.planes[at]?.plane === object?.plane && weight > 0;
      return touched && value !== undefined ? value + (share * lighter) / weight : value;
    });
  }

  #countsOf(step: number): StepCounts {
    const known = this.#countsFor.get(step);
    if (known) return known;
    const { scale, valueBudget } = this.#plan;
    const counts = {
      groups: scale.groups.map((group) => inGroup(group, step)),
      budget: (valueBudget?.shares ?? []).map(({ key }) => holdsStep(scale.groups, key, step)),
    };
    this.#countsFor.set(step, counts);
    return counts;
  }

  /** Whether every intention about light and dark that the plan keeps now is still kept, and none is missed by more. */
  breaksNothing(after: Tones): boolean {
    const { budget } = this.#measures.values;
    const budgetAfter = after.budget;
    const trend = this.#plan.scale.trend?.value;
    return (
      budget.every((entry, at) => doesNoHarm(entry, budgetAfter[at] ?? 0)) &&
      disorderedPlanes(trend, after.planes).every((plane) => this.#outOfOrder.has(plane)) &&
      (this.#isContested || contestedTones(this.#plan, after.groups, LEADING_BY).length === 0)
    );
  }

  /** How far from its budget the picture would be, all shares together. */
  missOf(after: Tones): number {
    return after.budget.reduce((sum, difference) => sum + Math.abs(difference), 0);
  }

  /**
   * The smallest change of one object that `mends` and breaks nothing: fewest steps, then what comes nearest to the
   * budget, then the least area. Nothing when no single change does. `objects` may keep it to some.
   */
  smallestChange(
    mends: (after: Tones, change: StepChange) => boolean,
    objects: readonly number[] = this.#plan.objects.map(({ index }) => index),
  ): StepChange | undefined {
    let best:
      { readonly change: StepChange; readonly steps: number; readonly cost: readonly number[] } | undefined;
    for (const object of objects) {
      for (const change of this.#changesOf(object)) {
        const steps = Math.abs(change.to - change.from);
        if (best && steps > best.steps) continue;
        const after = this.after(change);
        if (!mends(after, change) || !this.breaksNothing(after)) continue;
        const cost = [steps, this.missOf(after), this.#shareOf(change.object)];
        if (!best || isCheaper(cost, best.cost)) best = { change, steps, cost };
      }
    }
    return best?.change;
  }

  /** The steps that a seen object can be taken to without becoming another object. */
  #changesOf(object: number): readonly StepChange[] {
    const step = this.#plan.objects[object]?.step;
    if (step === undefined || this.#shareOf(object) === 0) return [];
    const from = Math.round(step);
    const { steps } = this.#plan.scale;
    const furthest = Math.max(1, Math.round(steps * FURTHEST_PART_OF_SCALE));
    const changes: StepChange[] = [];
    for (let to = Math.max(1, from - furthest); to <= Math.min(steps, from + furthest); to++) {
      if (to !== from) changes.push({ object, from, to });
    }
    return changes;
  }

  #shareOf(object: number): number {
    return this.#measures.objects[object]?.share ?? 0;
  }
}

class TonesAfter implements Tones {
  #groups: readonly number[] | undefined;
  #budget: readonly number[] | undefined;

  constructor(
    private readonly now: Tones,
    private readonly share: number,
    private readonly before: StepCounts,
    private readonly then: StepCounts,
    private readonly planesAfter: () => Tones['planes'],
  ) {}

  get groups(): readonly number[] {
    return (this.#groups ??= this.moved('groups'));
  }

  get budget(): readonly number[] {
    return (this.#budget ??= this.moved('budget'));
  }

  get planes(): Tones['planes'] {
    return this.planesAfter();
  }

  private moved(kind: keyof StepCounts): readonly number[] {
    const { now, share, before, then } = this;
    return then[kind].map(
      (counts, at) => (now[kind][at] ?? 0) + share * (Number(counts) - Number(before[kind][at])),
    );
  }
}

/** Whether a step counts for an entry of the budget, which names a group or a single step. */
export function holdsStep(groups: readonly StepGroup[], key: string, step: number): boolean {
  const group = groups.find((candidate) => candidate.key === key);
  return group ? inGroup(group, step) : step === Number(key);
}

function inGroup({ from, to }: StepGroup, step: number): boolean {
  return step >= from && step <= to;
}
