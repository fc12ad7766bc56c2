import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { ScheduledSitting } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import { addLine } from '../edits/edit.js';
import type { Rule, RuleFinding } from '../finding.js';
import { objectsNamed, sittingAndDay } from '../words/layers.js';
import { sittingName } from '../words/days.js';

export const idleSitting: Rule = {
  id: 'idle sitting',
  severity: 'hint',
  chapter: 'sittings',
  perObject: false,
  summary: 'A sitting works on nothing, and nothing is to be done in it.',
  explanation:
    'A sitting has objects to work on, or a task. An imprimatura and a varnish need neither: they go over the whole picture.',
  formula: 'no `works`, no `task`, and the layer neither imprimatura nor varnish',
  source: 'common practice, no source',
  check: (plan, measures) =>
    (measures.schedule?.sittings ?? [])
      .filter(({ isIdle, sitting }) => isIdle && plan.sittings[sitting]?.faulty === false)
      .map((sitting): RuleFinding => ({
        message: t('{0} works on nothing, and nothing is to be done in it.', sittingAndDay(plan, sitting)),
        location: plan.sittings[sitting.sitting]?.location ?? { line: 0, start: 0, end: 0 },
        ...remedy(plan, measures, sitting),
      })),
};

/** What no sitting paints yet is what it may be meant for. */
function remedy(
  plan: Plan,
  { schedule }: Measures,
  { sitting }: ScheduledSitting,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const node = plan.sittings[sitting]?.node;
  const unworked = schedule?.neverWorked ?? [];
  if (!node || unworked.length === 0) {
    return {
      advice: t('Say what it works on, `works NAME`, or what is to be done, `task "…"`; or take it out.'),
    };
  }
  const names = unworked.map((index) => plan.objects[index]?.name ?? '').join(', ');
  return {
    advice: t('Let it work on {0}, which no sitting paints.', objectsNamed(plan, unworked)),
    fix: {
      title: t('Work on {0} in {1}', objectsNamed(plan, unworked), sittingName(plan, sitting)),
      edits: [addLine(node, 'works', names)],
    },
  };
}
