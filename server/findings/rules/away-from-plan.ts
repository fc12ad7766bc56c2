import { t } from '../../../grammar/index.js';
import type { RecordObject } from '../../measure/photograph/record.js';
import { labDifference } from '../../plan/colour/difference.js';
import { lightnessOfValue, stepValue } from '../../plan/colour/value.js';
import { plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { heldToPlan, latestPhotograph } from '../seen/photographed.js';
import { offInSteps } from '../words/photographs.js';
import { sittingName } from '../words/days.js';
import { quoted } from '../words/words.js';

export const awayFromPlan: Rule = {
  id: 'away from plan',
  severity: 'hint',
  chapter: 'record',
  limit: { value: 4, unit: 'number', of: 'of CIEDE2000 farther from the plan' },
  perObject: true,
  summary: 'Since the photograph before, an object has gone away from what is planned.',
  explanation:
    'Work on one thing pulls at its neighbours, and a colour that was right is lost while another is mended. Both photographs are held to what is to stand there now; where only values count, to the grey of that value.',
  formula:
    'CIEDE2000 from the mean colour to what is to stand there, in the latest photograph less that in the one before > limit',
  source: 'CIEDE2000: Sharma, Wu, Dalal 2005; the limit is a heuristic',
  check: (plan, measures, limit) => {
    const latest = latestPhotograph(plan, measures);
    const before = latest?.figures.comparedWith;
    if (!latest || before === undefined) return [];
    return heldToPlan(plan, latest).flatMap(({ object, seen, against }): readonly RuleFinding[] => {
      const { since } = seen;
      if (!since) return [];
      const now = apart(plan, against.step, against);
      const then = apart(plan, against.step, since);
      if (!exceeds(now - then, limit)) return [];
      return [
        {
          message:
            t(
              'After {0} {1} is farther from the plan than after {2}: {3} off now, {4} then.',
              sittingName(plan, latest.sitting),
              quoted(object.name),
              sittingName(plan, before),
              plainNumber(now, 1),
              plainNumber(then, 1),
            ) + stepsTold(against),
          advice: wasWorked(plan, latest.sitting, object.index)
            ? t('Look at the photograph of {0} before you go on with it.', sittingName(plan, before))
            : t(
                'Nothing was planned for it in that sitting: look whether something was painted over its edge, or the light of the two photographs differs.',
              ),
          location: latest.location,
          objects: [object.index],
          excess: now - then - limit,
          ...latest.gravity,
        },
      ];
    });
  },
};

type Stood = Pick<NonNullable<RecordObject['since']>, 'stepsOff' | 'difference'>;

/** CIEDE2000 to what is to stand there; of greys where only values count. */
function apart({ scale }: Plan, step: number, { stepsOff, difference }: Stood): number {
  if (difference !== undefined) return difference;
  const lightness = (at: number): number => lightnessOfValue(stepValue(at, scale.steps));
  return labDifference([lightness(step), 0, 0], [lightness(step + stepsOff), 0, 0]);
}

function stepsTold({ stepsOff }: Stood): string {
  return Math.abs(stepsOff) < 0.25 ? '' : ` ${t('It is now {0} than planned.', offInSteps(stepsOff))}`;
}

function wasWorked({ sittings }: Plan, sitting: number, object: number): boolean {
  const works = sittings[sitting]?.works ?? [];
  return works.length === 0 || works.includes(object);
}
