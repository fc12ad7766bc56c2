import { t } from '../../../grammar/index.js';
import { measureBalance } from '../../measure/objects/balance.js';
import type { Measures } from '../../measure/measures.js';
import { partsOf, wholeOf } from '../../measure/areas/parts.js';
import type { Plan } from '../../plan/plan.js';
import { stepEdit } from '../edits.js';
import type { Remedy, Rule } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { leavesTheRest } from '../moves/clear-of-tangents.js';
import { rememberedAsPainted } from '../moves/remembered.js';
import {
  type Shift,
  distanceWords,
  isMovable,
  roundedOn,
  shiftFix,
  shifted,
  withItsParts,
} from '../moves/shift.js';
import { isLaidIn } from '../seen/laid-in.js';
import { type StepChange, balanceWith, stepChanges } from '../moves/steps.js';
import { toStep } from '../words/tones.js';
import { againstLimit, heading, percent, quoted } from '../words/words.js';

/** Part of the width: what would have to go farther is better left, and told to change its value. */
const FARTHEST = 0.4;
/** A move shorter than this part of the width is preferred to a change of value. */
const SHORT = 0.15;
const MOST_TRIED = 5;
const ROUNDS = 4;

export const offBalance: Rule = {
  id: 'off balance',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.12, unit: 'part', of: 'the width' },
  perObject: false,
  summary: 'The centre of visual weight lies far to one side.',
  explanation:
    'Large, contrasting and strongly coloured areas weigh more, and what lies farther from the middle pulls harder, as on a steelyard: a small weight far out holds a large one near the middle. A picture whose weight lies all on one side seems to tip. Weight is a heuristic: the visible share, times how far its value lies from the mean of the picture and a tenth of its Munsell chroma. Bare ground counts as an area of its own.',
  formula:
    'weight = visible share x (|Munsell value - mean value| + Munsell chroma / 10); |sum of weight x distance from the vertical middle / sum of weight| / width > limit; not told while more than 10 % of the picture has no value',
  source: 'Henry Rankin Poore, Pictorial Composition (1903), on the steelyard; the weights are a heuristic',
  check: (plan, measures, limit) => {
    const { offset } = measures.balance;
    const { canvas } = plan;
    if (offset === undefined || !exceeds(Math.abs(offset), limit)) return [];
    if (!isLaidIn(plan, measures) || plan.objects.some((object) => hasFault(plan, object))) return [];
    const side = offset < 0 ? 'left' : 'right';
    const width = { size: canvas.width, name: 'the width' as const };
    const { measured, wanted } = againstLimit(Math.abs(offset), limit, canvas, width);
    const [most] = measures.balance.weights
      .filter(({ moment }) => moment < 0 === offset < 0 && moment !== 0)
      .sort((one, other) => Math.abs(other.moment) - Math.abs(one.moment));
    const object = most && plan.objects[most.object];
    return [
      {
        message:
          (side === 'left'
            ? t(
                'The weight of the picture lies {0} to the left of the middle; up to {1} it hangs level.',
                measured,
                wanted,
              )
            : t(
                'The weight of the picture lies {0} to the right of the middle; up to {1} it hangs level.',
                measured,
                wanted,
              )) + (object ? ` ${t('{0} pulls most on that side.', quoted(object.name))}` : ''),
        remedy: () => remedy(plan, measures, limit),
        location: heading(plan),
        related: object
          ? [
              {
                location: object.location,
                message:
                  side === 'left'
                    ? t('{0} pulls most to the left.', quoted(object.name))
                    : t('{0} pulls most to the right.', quoted(object.name)),
              },
            ]
          : [],
        objects: object ? [object.index] : [],
      },
    ];
  },
};

function remedy(plan: Plan, measures: Measures, limit: number): Remedy {
  const first = plan.coveringOrder[0] ?? 0;
  const shift = rememberedAsPainted(plan, first, 'off balance', limit, () =>
    levellingShift(plan, measures, limit),
  );
  const change = levellingStep(plan, measures, limit);
  if (shift && (!change || Math.abs(shift.right) <= SHORT * plan.canvas.width)) {
    const fix = shiftFix(plan, measures.parts, shift);
    return {
      advice: t(
        'Move {0} {1}, which brings the weight to within {2}.',
        withItsParts(plan, measures.parts, shift.object),
        distanceWords(shift, plan.canvas),
        percent(limit),
      ),
      ...(fix ? { fix } : {}),
    };
  }
  const object = change && plan.objects[change.object];
  if (change && object) {
    return {
      advice: t(
        'Take {0} from step {1} to step {2}, which brings the weight to within {3}.',
        quoted(object.name),
        change.from,
        change.to,
        percent(limit),
      ),
      fix: { title: toStep(quoted(object.name), change.to), edits: stepEdit(object, change.to) },
    };
  }
  return { advice: counterweight(plan, measures, limit) };
}

/** The shortest move across of one object, never the dominant, that brings the weight within the limit. */
function levellingShift(plan: Plan, measures: Measures, limit: number): Shift | undefined {
  const { balance, parts } = measures;
  const { canvas } = plan;
  const offset = balance.offset ?? 0;
  const excess = (Math.abs(offset) - limit) * balance.total;
  const lying = new Set(parts.flat());
  const candidates = balance.weights
    .filter(({ object }) => {
      const one = plan.objects[object];
      const cutOff = measures.objects[object]?.offCanvasShare !== 0;
      return (
        one &&
        one.role !== 'dominant' &&
        !lying.has(object) &&
        !cutOff &&
        isMovable(plan, measures.parts, object)
      );
    })
    .map(({ object }) => {
      const whole = new Set(wholeOf(parts, object));
      const weight = balance.weights.reduce((sum, one) => sum + (whole.has(one.object) ? one.weight : 0), 0);
      return { object, far: (excess / weight) * canvas.width };
    })
    .filter(({ far }) => far <= FARTHEST * canvas.width)
    .sort((one, other) => one.far - other.far)
    .slice(0, MOST_TRIED);
  let best: Shift | undefined;
  for (const { object, far } of candidates) {
    const shift = settled(plan, measures, object, -Math.sign(offset) * far, limit);
    if (shift && (!best || Math.abs(shift.right) < Math.abs(best.right))) best = shift;
  }
  return best;
}

/** The first guess leaves out what comes to light and what is covered; it is mended by what a trial then measures. */
function settled(
  plan: Plan,
  measures: Measures,
  object: number,
  guess: number,
  limit: number,
): Shift | undefined {
  const { canvas } = plan;
  const offset = measures.balance.offset ?? 0;
  let right = roundedOn(guess, canvas);
  for (let round = 0; round < ROUNDS; round++) {
    if (Math.abs(right) > FARTHEST * canvas.width) return undefined;
    const shift = { object, right, down: 0 };
    const trial = shifted(plan, measures, shift);
    const tried = measureBalance(trial.plan, trial.areas, partsOf(trial.plan)).offset ?? 0;
    if (!exceeds(Math.abs(tried), limit)) {
      return leavesTheRest(plan, measures, trial) ? shift : undefined;
    }
    const gained = (Math.abs(offset) - Math.abs(tried)) / Math.abs(right);
    if (gained <= 0 || tried < 0 !== offset < 0) return undefined;
    right = roundedOn((Math.sign(right) * (Math.abs(offset) - limit)) / gained, canvas);
    if (right === shift.right) right = roundedOn(right * 1.02, canvas);
  }
  return undefined;
}

function levellingStep(plan: Plan, measures: Measures, limit: number): StepChange | undefined {
  const objects = measures.balance.weights.map(({ object }) => object);
  return stepChanges(plan, measures, objects).find(
    (change) => !exceeds(Math.abs(balanceWith(plan, measures, change).offset ?? 0), limit),
  );
}

/** Where a new accent is set, part of the width from the middle: well out on the arm. */
const FAR_OUT = 0.4;
const BLACK_OR_WHITE = 4;

/** How much of the lightest or darkest would hold the balance, far out on the other side. */
function counterweight(plan: Plan, { balance, values }: Measures, limit: number): string {
  const offset = balance.offset ?? 0;
  const mean = values.mean ?? 5;
  const isLight = mean < 5;
  const contrast = isLight ? 9 - mean : mean - 1;
  // Weight w at the arm -FAR_OUT: (offset x total - FAR_OUT w) / (total + w) = limit.
  const weight = (balance.total * (Math.abs(offset) - limit)) / (FAR_OUT + limit);
  const share = percent(weight / Math.max(contrast, BLACK_OR_WHITE));
  if (offset < 0)
    return isLight
      ? t(
          'No move or change of value of one object alone does it: set some light accent near the right edge, about {0} of the picture, or bring part of the weight over to that side.',
          share,
        )
      : t(
          'No move or change of value of one object alone does it: set some dark accent near the right edge, about {0} of the picture, or bring part of the weight over to that side.',
          share,
        );
  return isLight
    ? t(
        'No move or change of value of one object alone does it: set some light accent near the left edge, about {0} of the picture, or bring part of the weight over to that side.',
        share,
      )
    : t(
        'No move or change of value of one object alone does it: set some dark accent near the left edge, about {0} of the picture, or bring part of the weight over to that side.',
        share,
      );
}
