import { t } from '../../../grammar/index.js';
import { inSteps } from '../../measure/areas/place-order.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { percent, quoted } from '../words/words.js';

export const noValueOrColour: Rule = {
  id: 'no value or colour',
  severity: 'hint',
  chapter: 'values',
  perObject: true,
  summary: 'A visible object has neither a value nor a colour.',
  explanation:
    'Its area belongs to no step of the value scale and to no colour, so both budgets are short of it. It is drawn hatched.',
  formula: 'visible share > 0, no `value`, no `colour`',
  source: 'common practice, no source',
  check: (plan, measures) =>
    unplannedLargestFirst(plan, measures).map(({ object, share }) => ({
      message: t(
        '{0} has neither a value nor a colour, so {1} of the picture belongs to no step and no colour.',
        quoted(object.name),
        percent(share),
      ),
      ...advice(plan, measures, object),
      location: object.location,
      objects: [object.index],
    })),
};

function unplannedLargestFirst(
  plan: Plan,
  measures: Measures,
): readonly { readonly object: PlanObject; readonly share: number }[] {
  return plan.objects
    .flatMap((object) => {
      const share = measures.objects[object.index]?.share ?? 0;
      // A line that can't be read may well have given one.
      if (share === 0 || object.value !== undefined || object.colourLost || hasFault(plan, object)) return [];
      return { object, share };
    })
    .sort((one, other) => inSteps(other.share, 1) - inSteps(one.share, 1));
}

/** The middle step of what the value budget is shortest of. */
function advice(plan: Plan, { values }: Measures, object: PlanObject): Pick<RuleFinding, 'advice' | 'fix'> {
  const [shortest] = values.budget.toSorted((one, other) => one.difference - other.difference);
  if (!shortest || !exceeds(-shortest.difference, 0)) {
    return {
      advice: t('Write under it the step that it is to have on the value scale, or a colour, or both.'),
    };
  }
  const group = plan.scale.groups.find(({ key }) => key === shortest.key);
  const step = group ? Math.floor((group.from + group.to) / 2) : Number(shortest.key);
  return {
    advice: t(
      'Write `value {0}` under it: of all in the value budget, {1} is shortest of its share, by {2}.',
      step,
      quoted(shortest.name),
      percent(-shortest.difference),
    ),
    fix: { title: t('Give {0} value {1}', quoted(object.name), step), edits: stepEdit(object, step) },
  };
}
