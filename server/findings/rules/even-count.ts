import type { PlanObject } from '../../plan/plan.js';
import { roleEdit } from '../edits.js';
import type { Rule } from '../finding.js';
import { heading, percent, quoted } from '../words.js';

export const evenCount: Rule = {
  id: 'even count',
  severity: 'hint',
  chapter: 'objects',
  perObject: false,
  summary: 'The principal objects, dominant and secondary, are even in number.',
  explanation: 'An odd number of principals does not fall into pairs and keeps the eye moving.',
  formula: 'number of dominant and secondary objects is even',
  source: 'common practice, no source',
  check: (plan, measures) => {
    const principals = plan.objects.filter(({ role }) => role === 'dominant' || role === 'secondary');
    if (principals.length === 0 || principals.length % 2 === 1) return [];
    const share = ({ index }: PlanObject): number => measures.objects[index]?.share ?? 0;
    const [least] = principals
      .filter(({ role }) => role === 'secondary')
      .toSorted((one, other) => share(one) - share(other));
    const edits = least && roleEdit(least, 'minor');
    return [
      {
        message: `There are ${principals.length} principal objects, an even number: ${principals.map(({ name }) => quoted(name)).join(', ')}.`,
        advice: least
          ? `Make ${quoted(least.name)} minor, the least of them (${percent(share(least))} of the picture), or add a secondary one.`
          : 'Make one of them secondary and add another, or make one minor.',
        location: principals.at(-1)?.location ?? heading(plan),
        related: principals.slice(0, -1).map(({ name, location, role }) => ({
          location,
          message: `${quoted(name)} is ${role ?? 'minor'}.`,
        })),
        objects: principals.map(({ index }) => index),
        ...(least && edits ? { fix: { title: `Make ${quoted(least.name)} minor`, edits } } : {}),
      },
    ];
  },
};
