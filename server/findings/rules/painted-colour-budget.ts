import { type ColourRole, t } from '../../../grammar/index.js';
import type { BudgetMeasure } from '../../measure/measures.js';
import type { RecordObject } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule } from '../finding.js';
import { type Explanation, missedBudget } from '../seen/missed-budget.js';
import { isReadable, type Judged, latestPhotograph } from '../seen/photographed.js';
import { roleSubject, roleWords } from '../words/colours.js';
import { objectName, objectShare, percent } from '../words/words.js';

export const paintedColourBudget: Rule = {
  id: 'painted colour budget',
  severity: 'warning',
  chapter: 'record',
  perObject: false,
  summary: 'In the latest photograph a colour role covers more or less of the canvas than its budget.',
  explanation:
    'Each place of the photograph counts to the role whose colour it is nearest to. It is held to the budget once all that is seen has been painted in colour, and where the plan itself keeps the budget. Without a grey patch in the photograph, or where it has grave faults, this is a hint.',
  formula:
    '|pixels nearest in CIEDE2000 to a colour of the role / all pixels - target| > tolerance, with all of the picture painted in colour and the plan within the tolerance',
  source: 'the plan states it',
  check: (plan, measures) => {
    const latest = latestPhotograph(plan, measures);
    if (!plan.colourBudget?.location || !latest?.figures.isWhole.colours || !isReadable(plan)) return [];
    return missedBudget(plan, latest, {
      painted: latest.figures.colourBudget,
      planned: measures.colours.budget,
      subjectOf: ({ key }) => roleSubject(key),
      explain: (entry) => explained(plan, latest, entry),
    }).map((found) => ({ ...found, ...latest.colourGravity }));
  },
};

function explained(plan: Plan, latest: Judged, entry: BudgetMeasure): Explanation {
  const taken = causeOf(plan, latest, entry);
  if (!taken) {
    return {
      advice: t(
        'Hold the photograph beside the plan’s view `colour`: no single object is taken for another colour, so parts of several are.',
      ),
      objects: [],
    };
  }
  const after = Math.max(0, entry.share - Math.sign(entry.difference) * taken.share);
  return {
    cause: causeInWords(plan, taken),
    advice: t(
      'Bring the hue and chroma of {0} back to the plan: that brings {1} to {2}.',
      objectName(plan, taken.object),
      roleWords(entry.key),
      percent(after),
    ),
    objects: [taken.object],
  };
}

/** The largest object that is nearer to another role's colour than to its own, in the direction of the difference. */
function causeOf(
  { objects }: Plan,
  { figures }: Judged,
  { key, difference }: BudgetMeasure,
): RecordObject | undefined {
  const taken = figures.objects.filter(({ object, nearestRole }) => {
    const own = objects[object]?.colour?.role;
    return difference > 0 ? nearestRole === key && own !== key : own === key && nearestRole !== key;
  });
  return taken.reduce<RecordObject | undefined>(
    (one, other) => (one && one.share >= other.share ? one : other),
    undefined,
  );
}

function causeInWords(plan: Plan, seen: RecordObject): string {
  const named = (role: ColourRole | undefined): string =>
    role === undefined ? t('a colour without a role') : roleWords(role);
  const own = plan.objects[seen.object]?.colour?.role;
  return t(
    '{0} has come nearer to {1} than to {2}.',
    objectShare(plan, seen),
    named(seen.nearestRole),
    named(own),
  );
}
