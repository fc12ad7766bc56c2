import { t } from '../../../grammar/index.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import type { PlanObject } from '../../plan/plan.js';
import { roleEdit } from '../edits.js';
import type { Rule } from '../finding.js';
import { middleOf } from '../seen/seen.js';
import { isPrincipal, roleTold } from '../words/principals.js';
import { counted, heading, quoted, someOf } from '../words/words.js';

const MOST_NAMED = 6;

export const evenCount: Rule = {
  id: 'even count',
  severity: 'hint',
  chapter: 'objects',
  perObject: false,
  summary: 'The principal objects, dominant and secondary, are even in number.',
  explanation: 'An odd number of principals does not fall into pairs and keeps the eye moving.',
  formula: 'number of dominant and secondary objects is even',
  source: 'common practice, no source',
  check: (plan, { spacing }) => {
    const principals = plan.objects.filter(isPrincipal);
    if (principals.length === 0 || principals.length % 2 === 1) return [];
    const sizes = new Map(spacing.principals.map(({ object, size }) => [object, size]));
    const size = ({ index }: PlanObject): number => inSteps(sizes.get(index) ?? 0, 1);
    const higher = higherFirst(plan.canvas);
    const least = principals
      .filter(({ role }) => role === 'secondary')
      .toSorted((one, other) => size(one) - size(other) || higher(middleOf(one), middleOf(other)))[0];
    const edits = least && roleEdit(least, undefined);
    const names = principals.map(({ name }) => quoted(name));
    return [
      {
        message: t(
          'There are {0} principal objects: {1}. An odd number would not fall into pairs.',
          counted(principals.length),
          someOf(names, MOST_NAMED),
        ),
        advice: least
          ? t('Make {0} minor, the smallest of them, or add a secondary one.', quoted(least.name))
          : t('Add a secondary one, or make one of them minor.'),
        location: principals.at(-1)?.location ?? heading(plan),
        related: principals.slice(0, -1).map(({ name, location, role }) => ({
          location,
          message: roleTold(quoted(name), role),
        })),
        objects: principals.map(({ index }) => index),
        ...(edits ? { fix: { title: t('Make {0} minor', quoted(least.name)), edits } } : {}),
      },
    ];
  },
};
