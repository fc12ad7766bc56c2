import { t } from '../../../grammar/index.js';
import { dayOf } from '../../measure/sittings/days.js';
import type { Rule, RuleFinding } from '../finding.js';
import { sittingName } from '../words/days.js';
import { sittingAndDay } from '../words/layers.js';
import { relatedTo } from './over-wet-paint.js';

export const sittingsOutOfOrder: Rule = {
  id: 'sittings out of order',
  severity: 'hint',
  chapter: 'sittings',
  perObject: false,
  summary: 'A sitting stands in the text behind one that comes later.',
  explanation:
    'Sittings are taken by their days, in whatever order they are written. One that stands behind a later one is often a slip of the month or the year.',
  formula: 'day of a sitting < greatest day of the sittings above it in the text',
  source: 'common practice, no source',
  check: (plan) => {
    let latest: { readonly sitting: number; readonly day: number } | undefined;
    return plan.sittings.flatMap(({ date, dateLocation, location }, sitting): RuleFinding[] => {
      const day = date === undefined ? undefined : dayOf(date);
      if (day === undefined) return [];
      if (latest === undefined || day >= latest.day) {
        latest = { sitting, day };
        return [];
      }
      return [
        {
          message: t(
            '{0} stands behind {1}, and comes before it.',
            sittingAndDay(plan, { sitting, day }),
            sittingAndDay(plan, latest),
          ),
          advice: t(
            'Look whether the day is right; if it is, move {0} up, so that the text reads as the work goes.',
            sittingName(plan, sitting),
          ),
          location: dateLocation ?? location,
          related: relatedTo(plan, latest.sitting, t('This one comes later.')),
          excess: latest.day - day,
        },
      ];
    });
  },
};
