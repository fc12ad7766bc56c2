import { t } from '../../../grammar/index.js';
import type { ScheduledSitting } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import { fatnessRemedy } from '../advice/fatness.js';
import type { Rule, RuleFinding } from '../finding.js';
import { meetings } from '../seen/meetings.js';
import { sittingName } from '../words/days.js';
import { laidWords, objectsNamed } from '../words/layers.js';
import { percent } from '../words/words.js';
import { relatedTo } from './over-wet-paint.js';

const ID = 'lean over fat';

export const leanOverFat: Rule = {
  id: ID,
  severity: 'hint',
  chapter: 'sittings',
  perObject: true,
  summary: 'A layer of oil paint holds less oil or medium than the one below it.',
  explanation:
    'Paint with more oil stays supple for longer and moves more as it dries. A lean layer over a fat one is stiff before the one below has come to rest, and cracks: fat over lean. Where a plan gives no share, `lean` is taken as at most 5 % of added oil or medium and `fat` as at least 20 %, and a layer of which nothing is said as it is usually laid: imprimatura and underpainting without any, a block-in with 5 %, body colour with 10 %, scumble, glaze and detail with 20 %. These figures are heuristics, from memory.',
  formula: 'fat of the layer < fat of the oil or alkyd layer next below it on the same object',
  source: 'common practice, no source',
  check: (plan, measures) => {
    const { schedule } = measures;
    return meetings(plan, measures, ID, 'leaner over fatter').map((meeting): RuleFinding => {
      const { above, below, worst, objects } = meeting;
      const [fatBelow, fatAbove] = worst.fat ?? [0, 0];
      return {
        message:
          t(
            '{0} goes leaner over {1} on {2}: {3} of added oil or medium over {4}.',
            sittingName(plan, above.sitting),
            sittingName(plan, below.sitting),
            objectsNamed(plan, objects),
            percent(fatAbove),
            percent(fatBelow),
          ) + takenFrom(plan, below, above),
        location: plan.sittings[above.sitting]?.fatShare?.location ??
          plan.sittings[above.sitting]?.location ?? { line: 0, start: 0, end: 0 },
        related: relatedTo(
          plan,
          below.sitting,
          t('{0} has {1} and lies below.', sittingName(plan, below.sitting), percent(fatBelow)),
        ),
        objects,
        excess: fatBelow - fatAbove,
        ...(schedule ? { remedy: () => fatnessRemedy(plan, schedule, meeting) } : {}),
      };
    });
  },
};

/** What is not the plan's own figure is said to be a usual one. */
function takenFrom(plan: Plan, ...sittings: readonly ScheduledSitting[]): string {
  const taken = sittings.flatMap(({ fat, fatFrom, layer, sitting }) => {
    if (fatFrom === 'share') return [];
    const body = fatFrom === 'body' ? plan.sittings[sitting]?.body : undefined;
    return [[percent(fat), laidWords(layer, body)] as const];
  });
  const [first, second] = taken;
  if (first === undefined) return '';
  return ` ${
    second === undefined
      ? t('{0} is usual of {1}.', ...first)
      : t('{0} is usual of {1}, and {2} is usual of {3}.', ...first, ...second)
  }`;
}
