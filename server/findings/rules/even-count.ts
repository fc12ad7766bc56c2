import type { Rule } from '../finding.js';
import { heading, quoted } from '../words.js';

export const evenCount: Rule = {
  id: 'even count',
  severity: 'hint',
  chapter: 'objects',
  perObject: false,
  summary: 'The principal objects, dominant and secondary, are even in number.',
  explanation: 'An odd number of principals does not fall into pairs and keeps the eye moving.',
  formula: 'number of dominant and secondary objects is even',
  source: 'common practice, no source',
  check: (plan) => {
    const principals = plan.objects.filter(({ role }) => role === 'dominant' || role === 'secondary');
    if (principals.length === 0 || principals.length % 2 === 1) return [];
    return [
      {
        message: `There are ${principals.length} principal objects, an even number: ${principals.map(({ name }) => quoted(name)).join(', ')}.`,
        advice: 'Add a secondary one, join two, or make one of them minor.',
        location: principals.at(-1)?.location ?? heading(plan),
        related: principals.slice(0, -1).map(({ name, location, role }) => ({
          location,
          message: `${quoted(name)} is ${role ?? 'minor'}.`,
        })),
        objects: principals.map(({ index }) => index),
      },
    ];
  },
};
