import { inWords } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { quoted } from '../words.js';

export const hiddenObject: Rule = {
  id: 'hidden object',
  severity: 'warning',
  limit: { value: 0.999, of: 'the part of the object on the canvas that others cover' },
  perObject: true,
  summary: 'An object is wholly covered by others.',
  explanation:
    'Later objects cover earlier ones, and nearer planes cover farther ones. An object that nothing is seen of takes no part in the picture; most often it stands in the wrong plane or the wrong order.',
  formula: 'covered area / area on the canvas >= limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    measures.objects.flatMap((measured, index): RuleFinding[] => {
      const object = plan.objects[index];
      if (!object || measured.hiddenShare < limit) return [];
      // Read only here: it is worked out on demand.
      const covers = measured.mostCovering.flatMap((cover) => plan.objects[cover] ?? []);
      if (covers.length === 0) return [];
      return [
        {
          message: `Nothing of ${quoted(object.name)} is seen: ${inWords(covers.map(({ name }) => quoted(name)))} ${covers.length === 1 ? 'covers' : 'cover'} it.`,
          advice: `Write ${quoted(object.name)} after ${quoted(covers[0]?.name ?? '')}, or give it a nearer plane.`,
          location: object.location,
          related: covers.map(({ name, location }) => ({
            location,
            message: `${quoted(name)} lies in front.`,
          })),
          objects: [index],
        },
      ];
    }),
};
