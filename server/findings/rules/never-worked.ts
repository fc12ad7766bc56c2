import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { wholeOf } from '../../measure/areas/parts.js';
import { paintsObjects } from '../../measure/sittings/layers.js';
import type { ScheduledSitting } from '../../measure/sittings/schedule.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { every, statementLocation } from '../../plan/select.js';
import { replace, rightBehind } from '../edits/edit.js';
import type { FixEdit, Rule, RuleFinding } from '../finding.js';
import { sittingName } from '../words/days.js';
import { percent, quoted } from '../words/words.js';

export const neverWorked: Rule = {
  id: 'never worked',
  severity: 'hint',
  chapter: 'sittings',
  perObject: true,
  summary: 'An object is seen in the picture, and no sitting paints it.',
  explanation:
    'What no sitting names is easily left to the last day. A toned ground and a varnish go over everything and paint nothing. Where an object is to be the bare toned ground, set this aside for it. Nothing is said as long as no sitting names what it works on.',
  formula: 'visible share > 0, and in no `works` of a sitting with another layer than imprimatura or varnish',
  source: 'common practice, no source',
  check: (plan, measures) => {
    const { schedule } = measures;
    // What a line that could not be read names is not known.
    if (!schedule || plan.sittings.some(({ faulty }) => faulty)) return [];
    return schedule.neverWorked.flatMap((index): RuleFinding[] => {
      const object = plan.objects[index];
      if (!object) return [];
      const share = measures.objects[index]?.share ?? 0;
      return [
        {
          message: t(
            '{0} is {1} of the picture, and no sitting paints it.',
            quoted(object.name),
            percent(share),
          ),
          location: object.location,
          objects: [index],
          excess: share,
          remedy: () => remedy(plan, measures, object),
        },
      ];
    });
  },
};

function remedy(plan: Plan, measures: Measures, object: PlanObject): Pick<RuleFinding, 'advice' | 'fix'> {
  const sitting = sittingFor(measures, object.index);
  const edit = sitting && worksEdit(plan, sitting.sitting, object.name);
  if (!sitting || !edit) return { advice: t('Name it in a sitting: `works {0}`.', object.name) };
  const title = sittingName(plan, sitting.sitting);
  return {
    advice: t('Add it to what is worked on in {0}.', title),
    fix: { title: t('Work on {0} in {1}', quoted(object.name), title), edits: [edit] },
  };
}

/** The first sitting that paints what the object lies on, or the first that paints at all. */
function sittingFor({ parts, schedule }: Measures, object: number): ScheduledSitting | undefined {
  const painting =
    schedule?.sittings.filter(({ layer, works }) => paintsObjects(layer) && works.length > 0) ?? [];
  const whole = parts.findIndex((_, index) => index !== object && wholeOf(parts, index).includes(object));
  return painting.find(({ works }) => works.includes(whole)) ?? painting[0];
}

function worksEdit({ sittings }: Plan, sitting: number, name: string): FixEdit | undefined {
  const works = every(sittings[sitting]?.node.children ?? [], 'works').at(-1);
  if (!works) return undefined;
  return replace(rightBehind(statementLocation(works)), `, ${name}`);
}
