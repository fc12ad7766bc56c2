import { t } from '../../../grammar/index.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { roleEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { middleOf, seenAt } from '../seen/seen.js';
import { heading, percent, quoted } from '../words/words.js';

const ID = 'one dominant';

export const oneDominant: Rule = {
  id: ID,
  severity: 'hint',
  chapter: 'objects',
  perObject: true,
  summary: 'A picture has one dominant object.',
  explanation:
    'One feature is more important than all the rest; where two contend for that place the picture splits. Of several, the one at the focal point is taken to be meant, or else the one that most is seen of; of two as large the higher.',
  formula: 'number of dominant objects = 1',
  source: 'J. Ruskin, The Elements of Drawing (1857), the law of principality',
  check: (plan, measures) => {
    const dominants = plan.objects.filter(({ role }) => role === 'dominant');
    if (plan.objects.length === 0 || dominants.length === 1) return [];
    const share = ({ index }: PlanObject): number => measures.objects[index]?.share ?? 0;
    const higher = higherFirst(plan.canvas);
    const [greatest, ...lesser] = dominants.toSorted(
      (one, other) =>
        Number(isMeant(plan, one)) - Number(isMeant(plan, other)) ||
        Number(holdsFocus(measures, other)) - Number(holdsFocus(measures, one)) ||
        inSteps(share(other), 1) - inSteps(share(one), 1) ||
        higher(middleOf(one), middleOf(other)),
    );
    if (!greatest) return [none(plan, measures)];
    return lesser.map((other): RuleFinding => {
      const edits = roleEdit(other, 'secondary');
      return {
        message: t(
          '{0} is dominant, and so is {1}, where one should lead: {2} of the picture beside {3}.',
          quoted(other.name),
          quoted(greatest.name),
          percent(share(other)),
          percent(share(greatest)),
        ),
        advice: t('Make {0} secondary.', quoted(other.name)),
        location: other.location,
        related: [
          { location: greatest.location, message: t('{0} is dominant here.', quoted(greatest.name)) },
        ],
        objects: [other.index],
        ...(edits ? { fix: { title: t('Make {0} secondary', quoted(other.name)), edits } } : {}),
      };
    });
  },
};

/** The plan says of this one why it is dominant too. */
function isMeant({ allowances }: Plan, { index }: PlanObject): boolean {
  return allowances.some(({ rule, objects }) => rule === ID && objects.includes(index));
}

function holdsFocus({ focus }: Measures, { index }: PlanObject): boolean {
  return focus?.dominants.some(({ object, holds }) => object === index && holds) ?? false;
}

/** What is seen at the focal point is likely what the picture is about, unless the background shows there. */
function none(plan: Plan, measures: Measures): RuleFinding {
  const at = plan.focus && seenAt(plan, measures, plan.focus.at);
  const object = at?.plane === 'background' ? undefined : at;
  const edits = object && roleEdit(object, 'dominant');
  return {
    message: t('No object is dominant.'),
    advice: object
      ? t(
          'Make {0} dominant, which lies at the focal point: `object {1}, dominant`.',
          quoted(object.name),
          object.name,
        )
      : t('Write `, dominant` after the name of the object that the picture is about.'),
    location: heading(plan),
    ...(object && edits ? { fix: { title: t('Make {0} dominant', quoted(object.name)), edits } } : {}),
  };
}
