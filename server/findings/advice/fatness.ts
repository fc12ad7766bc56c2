import { t } from '../../../grammar/index.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { isDryingOil } from '../../measure/sittings/layers.js';
import { plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import { addLine, replace } from '../edits/edit.js';
import type { FixEdit, Remedy } from '../finding.js';
import { exceeds } from '../limits.js';
import type { Meeting } from '../seen/meetings.js';
import { sittingName } from '../words/days.js';
import { percent } from '../words/words.js';

/** The upper layer as fat as the one below, or the lower one as lean as the upper, whichever fits what else is laid. */
export function fatnessRemedy(
  plan: Plan,
  schedule: ScheduleMeasure,
  { above, below, worst }: Meeting,
): Remedy {
  const [fatBelow, fatAbove] = worst.fat ?? [0, 0];
  const [upper, lower] = [sittingName(plan, above.sitting), sittingName(plan, below.sitting)];
  if (fits(schedule, above.sitting, fatBelow)) {
    return {
      advice: t(
        'Give {0} as much, `fat {1}%`, or lay {2} leaner.',
        upper,
        plainNumber(fatBelow * 100),
        lower,
      ),
      fix: {
        title: t('Give {0} {1} of added oil or medium', upper, percent(fatBelow)),
        edits: fatEdit(plan, above.sitting, fatBelow),
      },
    };
  }
  if (fits(schedule, below.sitting, fatAbove)) {
    return {
      advice: t('Lay {0} leaner, `fat {1}%`.', lower, plainNumber(fatAbove * 100)),
      fix: {
        title: t('Lay {0} with {1} of added oil or medium', lower, percent(fatAbove)),
        edits: fatEdit(plan, below.sitting, fatAbove),
      },
    };
  }
  return {
    advice: t(
      'Go through the layers from below and give each at least the share of the one under it, such as `fat {0}%` in {1}.',
      plainNumber(fatBelow * 100),
      upper,
    ),
  };
}

/** Whether another share of fat in a sitting breaks the order nowhere that it is kept now. */
function fits({ objects }: ScheduleMeasure, sitting: number, fat: number): boolean {
  return objects.every(({ coats }) => {
    const oils = coats.filter(({ layer }) => layer !== 'varnish');
    const place = oils.findIndex((coat) => coat.sitting === sitting);
    const own = oils[place];
    if (!own) return true;
    const isOver = (lower: typeof own | undefined, upper: typeof own | undefined): boolean => {
      if (!lower || !upper || !isDryingOil(lower.laid.binder) || !isDryingOil(upper.laid.binder)) return true;
      const share = (coat: typeof own): number => (coat === own ? fat : coat.fat);
      return exceeds(lower.fat, upper.fat) || !exceeds(share(lower), share(upper));
    };
    return isOver(oils[place - 1], own) && isOver(own, oils[place + 1]);
  });
}

function fatEdit({ sittings }: Plan, index: number, fat: number): readonly FixEdit[] {
  const sitting = sittings[index];
  const words = `${plainNumber(fat * 100)}%`;
  if (!sitting) return [];
  const { fatShare, node } = sitting;
  return [fatShare ? replace(fatShare.location, `fat     ${words}`) : addLine(node, 'fat', words)];
}
