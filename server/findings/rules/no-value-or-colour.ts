import type { Rule, RuleFinding } from '../finding.js';
import { hasFault } from '../limits.js';
import { percent, quoted } from '../words.js';

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
    plan.objects.flatMap((object): RuleFinding[] => {
      const share = measures.objects[object.index]?.share ?? 0;
      // A line that can't be read may well have given one.
      if (share === 0 || object.value !== undefined || object.colourLost || hasFault(plan, object)) return [];
      return [
        {
          message: `${quoted(object.name)} has neither a value nor a colour, so ${percent(share)} of the picture is in no budget.`,
          advice: 'Write `value 3` or `colour …` under it.',
          location: object.location,
          objects: [object.index],
        },
      ];
    }),
};
