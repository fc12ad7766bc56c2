import { roleEdit } from '../edits.js';
import type { Rule } from '../finding.js';
import { heading, quoted } from '../words/words.js';

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
    const principals = plan.objects.filter(({ role }) => role === 'dominant' || role === 'secondary');
    if (principals.length === 0 || principals.length % 2 === 1) return [];
    const sizes = new Map(spacing.principals.map(({ object, size }) => [object, size]));
    const least = principals
      .filter(({ role }) => role === 'secondary')
      .toSorted((one, other) => (sizes.get(one.index) ?? 0) - (sizes.get(other.index) ?? 0))[0];
    const edits = least && roleEdit(least, undefined);
    return [
      {
        message: `There are ${principals.length} principal objects, an even number: ${principals.map(({ name }) => quoted(name)).join(', ')}.`,
        advice: least
          ? `Make ${quoted(least.name)} minor, the least of them, or add a secondary one.`
          : 'Add a secondary one, or make one of them minor.',
        location: principals.at(-1)?.location ?? heading(plan),
        related: principals.slice(0, -1).map(({ name, location, role }) => ({
          location,
          message: `${quoted(name)} is ${role ?? 'minor'}.`,
        })),
        objects: principals.map(({ index }) => index),
        ...(edits ? { fix: { title: `Make ${least.name} minor`, edits } } : {}),
      },
    ];
  },
};
