import { t } from '../../../grammar/index.js';
import type { Rule } from '../finding.js';
import { latestPhotograph } from '../seen/photographed.js';
import { againstDoubt, doubtInWords } from '../words/photographs.js';
import { sittingName } from '../words/days.js';

export const doubtfulPhotograph: Rule = {
  id: 'doubtful photograph',
  severity: 'hint',
  chapter: 'record',
  perObject: false,
  summary: 'Something in the latest photograph can’t be trusted.',
  explanation:
    'A camera tells less than the eye: light that burns out, darks that block up, an exposure by which all is lighter or darker at once, a window mirrored in wet paint, a lamp that turns everything yellow. What is then said of the painting is no more than a hint. That a photograph has no grey patch, or does not say what colours it is in, is told with the figures of the record and is no finding.',
  formula:
    'burnt out > 1 % of the canvas; black > 2 %; L* ≥ 92 on > 0.1 % of it where a value of 7 or less is to stand; three quarters of what can be held to the plan, three objects at least, > 0.35 stops lighter or darker than it within 0.2 of each other; grey patch not usable, or one channel of it > 2.5 x another; < 0.5 pixels for one that is measured; no corners and proportions > 3 % from the canvas; corners outside; taken before the day of the sitting',
  source: 'heuristic; common practice, no source',
  check: (plan, measures) => {
    const latest = latestPhotograph(plan, measures);
    const grave = latest?.figures.doubts.filter(({ isGrave }) => isGrave) ?? [];
    const [first] = grave;
    if (!latest || !first) return [];
    const told = grave.map((doubt) => doubtInWords(plan, doubt)).join(' ');
    return [
      {
        message: `${t('The photograph of {0} is to be taken with care.', sittingName(plan, latest.sitting))} ${told}`,
        advice: againstDoubt(first),
        location: latest.location,
      },
    ];
  },
};
