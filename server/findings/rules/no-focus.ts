import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { crossingsNear } from '../seen/crossings.js';
import { focusFix } from '../advice/focus.js';
import type { Rule, RuleFinding } from '../finding.js';
import { greatestDominant, middleOf } from '../seen/seen.js';
import { heading, quoted } from '../words/words.js';

export const noFocus: Rule = {
  id: 'no focus',
  severity: 'hint',
  chapter: 'centre of interest',
  perObject: false,
  summary: 'The plan names no centre of interest.',
  explanation:
    'A picture is designed around the place where the eye is to rest. Everything else is measured from it.',
  formula: 'no `focus` in a plan with objects',
  source: 'common practice, no source',
  check: (plan, measures) =>
    plan.focus || plan.objects.length === 0 || plan.focusUnplaced
      ? []
      : [
          {
            message: t('The plan names no centre of interest.'),
            ...atDominant(plan, measures),
            location: heading(plan),
          },
        ],
};

/** The crossing nearest to the middle of the dominant object. */
function atDominant(plan: Plan, measures: Measures): Pick<RuleFinding, 'advice' | 'fix'> {
  const dominant = greatestDominant(plan, measures);
  const [nearest] = dominant ? crossingsNear(plan, middleOf(dominant)) : [];
  if (!dominant || !nearest) {
    const system = plan.divisions[0]?.system ?? 'golden';
    return {
      advice: t(
        'Pick the crossing of `{0}` where the eye is to rest, and write `focus` with its name.',
        system,
      ),
    };
  }
  const fix = focusFix(plan, nearest.words);
  return {
    advice: t(
      'Write `focus {0}`: of all crossings it is the nearest to {1}.',
      nearest.words,
      quoted(dominant.name),
    ),
    ...(fix ? { fix } : {}),
  };
}
