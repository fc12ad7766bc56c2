import { reasonInWords, t } from '../../../grammar/index.js';
import type { Rule } from '../finding.js';
import { sittingAndDay } from '../words/layers.js';

export const unreadablePhotograph: Rule = {
  id: 'unreadable photograph',
  severity: 'warning',
  chapter: 'record',
  perObject: false,
  summary: 'The photograph of a sitting can’t be had or read.',
  explanation:
    'A photograph is a JPEG, PNG or WebP beside the plan or in a folder below it. Every one that can’t be read is told, not the latest alone, as the record has a gap there.',
  formula:
    'the file is not there, too large, or none of the three kinds; or its corners are those of no canvas',
  source: 'the plan states it',
  check: (plan, { record, schedule }) =>
    (record?.sittings ?? []).flatMap((each) => {
      const location = plan.sittings[each.sitting]?.photo?.location;
      if (each.is !== 'unreadable' || !location) return [];
      const sitting = schedule?.sittings.find((one) => one.sitting === each.sitting) ?? each;
      return [
        {
          message: `${t('The photograph of {0} can’t be used.', sittingAndDay(plan, sitting))} ${reasonInWords(each.reason)}`,
          advice: t('Name a JPEG, PNG or WebP that lies beside the plan, or take the line out.'),
          location,
        },
      ];
    }),
};
