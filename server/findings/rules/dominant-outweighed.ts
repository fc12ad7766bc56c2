import { t } from '../../../grammar/index.js';
import { measureBalance } from '../../measure/objects/balance.js';
import type { BalanceMeasure } from '../../measure/objects/balance.js';
import { dominantsAtFocus } from '../../measure/emphasis/at-focus.js';
import type { Measures } from '../../measure/measures.js';
import { partsOf, wholeOf } from '../../measure/areas/parts.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { stepEdit } from '../edits.js';
import type { Remedy, Rule } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { leavesTheRest } from '../moves/clear-of-tangents.js';
import { rememberedAsPainted } from '../moves/remembered.js';
import { type Resizing, resized, resizingFix } from '../moves/resize.js';
import { principalsWith, stepChanges } from '../moves/steps.js';
import { toStep } from '../words/tones.js';
import { bothShares, percent, quoted, timesAbove } from '../words/words.js';

/** An object made smaller or larger than so many times would be another object. */
const SMALLEST = 0.6;
const LARGEST = 1.5;
const SIZE_STEP = 0.05;

export const dominantOutweighed: Rule = {
  id: 'dominant outweighed',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 1.2, unit: 'number', of: 'times the weight of the dominant object' },
  perObject: true,
  summary: 'A secondary object weighs more than the dominant one.',
  explanation:
    'The dominant object is to rule. When a secondary one weighs more, by its area, its value against the rest and its chroma, the eye goes there first, unless the place of the dominant wins by other means: where the plan says by which, scale not among them, and the focal point on it draws the eye most, a large dark mass that frames it may weigh more. Each is weighed with what lies on it. A fifth more is let pass: weight is a heuristic and no finer than that.',
  formula:
    'weight of a secondary object / weight of the heaviest dominant > limit; weight = visible share x (|Munsell value - mean value| + Munsell chroma / 10), with what lies on the object; not told where `win by` names means without scale, the dominant lies at the focal point and no place elsewhere is stronger',
  source: 'common practice, no source; the weights are a heuristic',
  check: (plan, measures, limit) => {
    const { dominant, rival, times } = contest(plan, measures.balance.principals);
    const [lord, other] = [plan.objects[dominant ?? -1], plan.objects[rival ?? -1]];
    if (!lord || !other || !exceeds(times, limit)) return [];
    if (hasFault(plan, lord) || hasFault(plan, other) || winsOtherwise(plan, measures, lord)) return [];
    const share = (object: number): number =>
      wholeOf(measures.parts, object).reduce((sum, one) => sum + (measures.objects[one]?.share ?? 0), 0);
    return [
      {
        message: t(
          'By area, value and chroma {0} weighs {1} as much as {2}, which is dominant; up to {3} times is let pass. They cover {4}.',
          quoted(other.name),
          timesAbove(times, limit),
          quoted(lord.name),
          plainNumber(limit, 1),
          bothShares(share(other.index), share(lord.index)),
        ),
        remedy: () => remedy(plan, measures, lord, other, limit),
        location: other.location,
        related: [{ location: lord.location, message: t('{0} is dominant.', quoted(lord.name)) }],
        objects: [other.index, lord.index],
      },
    ];
  },
};

/** Whether the plan means the place of an object to win by other means than its size, and it does draw the eye most. */
function winsOtherwise({ focus }: Plan, measures: Measures, { index }: PlanObject): boolean {
  const winBy = focus?.winBy ?? [];
  return (
    winBy.length > 0 &&
    winBy.every(({ value }) => value !== 'scale') &&
    dominantsAtFocus(measures.focus).includes(index) &&
    measures.emphasis.focal?.rank === 1
  );
}

interface Contest {
  readonly dominant?: number;
  readonly rival?: number;
  readonly times: number;
}

/** The heaviest dominant and the heaviest secondary object. */
function contest({ objects }: Plan, principals: BalanceMeasure['principals']): Contest {
  const dominant = principals.find(({ object }) => objects[object]?.role === 'dominant');
  const rival = principals.find(({ object }) => objects[object]?.role === 'secondary');
  if (!dominant || !rival) return { times: 0 };
  return { dominant: dominant.object, rival: rival.object, times: rival.weight / dominant.weight };
}

function remedy(plan: Plan, measures: Measures, lord: PlanObject, rival: PlanObject, limit: number): Remedy {
  const change = stepChanges(plan, measures, [lord.index, rival.index]).find(
    (candidate) => !exceeds(contest(plan, principalsWith(plan, measures, candidate)).times, limit),
  );
  const object = change && plan.objects[change.object];
  if (change && object) {
    return {
      advice: t(
        'Take {0} from step {1} to step {2}, after which none outweighs the dominant.',
        quoted(object.name),
        change.from,
        change.to,
      ),
      fix: { title: toStep(quoted(object.name), change.to), edits: stepEdit(object, change.to) },
    };
  }
  const [smaller, larger] = factorsFor(plan, measures, limit);
  const sized = rememberedAsPainted(plan, rival.index, 'dominant outweighed', limit, () =>
    resizing(
      plan,
      measures,
      [
        { object: rival.index, factor: smaller },
        { object: lord.index, factor: larger },
      ],
      limit,
    ),
  );
  const changed = sized && plan.objects[sized.object];
  if (sized && changed) {
    const told = [quoted(changed.name), percent(sized.factor)] as const;
    const fix = resizingFix(plan, measures.parts, sized);
    return {
      advice:
        sized.factor < 1
          ? t('Make {0} smaller, {1} as wide and as high, after which none outweighs the dominant.', ...told)
          : t('Make {0} larger, {1} as wide and as high, after which none outweighs the dominant.', ...told),
      ...(fix ? { fix } : {}),
    };
  }
  return {
    advice: t(
      'Bring {0} nearer in value and colour to what lies round it, or make it about {1} as wide and as high.',
      quoted(rival.name),
      percent(smaller),
    ),
  };
}

/** How many times as large, each way, the rival or the dominant would have to be: weight goes with area. */
function factorsFor(plan: Plan, { balance }: Measures, limit: number): readonly [number, number] {
  const { times } = contest(plan, balance.principals);
  const inSteps = 1 / SIZE_STEP;
  return [
    Math.floor(Math.sqrt(limit / times) * inSteps) / inSteps,
    Math.ceil(Math.sqrt(times / limit) * inSteps) / inSteps,
  ];
}

/** The first of some moderate changes of size that mends it, or the next step on from it. */
function resizing(
  plan: Plan,
  measures: Measures,
  ways: readonly Resizing[],
  limit: number,
): Resizing | undefined {
  return ways
    .flatMap(({ object, factor }) => {
      const further = factor + (factor < 1 ? -SIZE_STEP : SIZE_STEP);
      return [factor, further].map((one) => ({ object, factor: Number(one.toFixed(2)) }));
    })
    .filter(({ factor }) => factor >= SMALLEST && factor <= LARGEST)
    .find((way) => {
      const trial = resized(plan, measures, way);
      const balance = measureBalance(trial.plan, trial.areas, partsOf(trial.plan));
      if (exceeds(contest(plan, balance.principals).times, limit)) return false;
      return way.factor < 1 || leavesTheRest(plan, measures, trial);
    });
}
