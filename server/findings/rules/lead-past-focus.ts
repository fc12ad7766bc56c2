import { t } from '../../../grammar/index.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { boxCentre, type Point } from '../../plan/geometry/point.js';
import type { Lead, Plan, PlanObject } from '../../plan/plan.js';
import { replace } from '../edits/edit.js';
import type { Rule, RuleFinding } from '../finding.js';
import { fromIt, lies } from '../words/leads.js';
import { exceeds, isOff } from '../limits.js';
import { againstLimit, quoted } from '../words/words.js';

export const leadPastFocus: Rule = {
  id: 'lead past focus',
  severity: 'warning',
  chapter: 'eye path',
  limit: { value: 0.05, unit: 'part', of: 'the diagonal' },
  perObject: false,
  perLead: true,
  summary: 'A lead passes by what it is drawn to aim at.',
  explanation:
    'A lead is there to bring the eye somewhere. The eye goes on in the direction in which a line ends, so a line that ends short, or an edge that points beside the place, takes it past. A lead aims at the focal point, or at the object that it names; one that ends at a mere place aims at the principal object or the stop of the path that is seen there. What an edge carries ends, to the eye, where the lead leaves that edge, unless the plan names places through which another mark takes it on. It arrives when it runs into a dominant object at the focal point.',
  formula: 'distance from what it aims at to the line carried on beyond its end / diagonal > limit',
  source: 'common practice, no source',
  check: (plan, { eyePath }, limit) => {
    const past = plan.leads.flatMap((lead, index) => {
      const measure = eyePath.leads[index];
      const { aim, passes } = measure ?? {};
      if (!measure || !aim || passes === undefined) return [];
      if (aim.kind === 'focus' && plan.focus && isOff(plan.focus.at, plan.canvas)) return [];
      return exceeds(passes / plan.canvas.diagonal, limit) ? [{ lead, index, measure, aim, passes }] : [];
    });
    return past.toSorted((one, other) => other.passes - one.passes).map((one) => told(plan, one, limit));
  },
};

interface Past {
  readonly lead: Lead;
  readonly index: number;
  readonly measure: LeadMeasure;
  readonly aim: NonNullable<LeadMeasure['aim']>;
  readonly passes: number;
}

function told(plan: Plan, { lead, index, measure, aim, passes }: Past, limit: number): RuleFinding {
  const object = aim.kind === 'object' ? plan.objects[aim.object] : undefined;
  const carrier = lead.along && plan.objects[lead.along.object];
  const place = object ? boxCentre(object.outline.box) : plan.focus?.at;
  const isCarried = carrier !== undefined && lead.through.length === 0;
  const related = object ? { location: object.location, message: t('What it aims at.') } : focalPoint(plan);
  const { measured, wanted } = againstLimit(passes / plan.canvas.diagonal, limit, plan.canvas);
  return {
    message: passesBy(
      lead,
      object,
      isCarried ? carrier : undefined,
      object || !measure.nearest || !place
        ? t('{0} from it', measured)
        : fromIt(measured, lies(measure.nearest, place)),
      wanted,
    ),
    location: lead.location,
    ...(related ? { related: [related] } : {}),
    leads: [index],
    objects: [...(isCarried ? [carrier.index] : []), ...(object ? [object.index] : [])],
    ...(measure.nearest && !object ? { at: measure.nearest } : { at: measure.end }),
    ...(isCarried ? turnOfEdge(measure, place, carrier, object) : endAtFocus(lead)),
  };
}

/** @param carrier what carries the lead to its end; a line that is merely drawn is carried on */
function passesBy(
  lead: Lead,
  object: PlanObject | undefined,
  carrier: PlanObject | undefined,
  away: string,
  wanted: string,
): string {
  const name = quoted(lead.name);
  if (object)
    return carrier
      ? t(
          '{0} is to lead to {1}, but the edge of {2} that carries it passes {3}; within {4} it arrives.',
          name,
          quoted(object.name),
          quoted(carrier.name),
          away,
          wanted,
        )
      : t(
          '{0} is to lead to {1}, but the line, carried on, passes {2}; within {3} it arrives.',
          name,
          quoted(object.name),
          away,
          wanted,
        );
  return carrier
    ? t(
        '{0} is to lead to the focal point, but the edge of {1} that carries it passes {2}; within {3} it arrives.',
        name,
        quoted(carrier.name),
        away,
        wanted,
      )
    : t(
        '{0} is to lead to the focal point, but the line, carried on, passes {1}; within {2} it arrives.',
        name,
        away,
        wanted,
      );
}

function focalPoint({
  focus,
}: Plan): { readonly location: Lead['location']; readonly message: string } | undefined {
  return focus && { location: focus.location, message: t('The focal point.') };
}

/** A drawn line that ends at a mere place is ended at the focal point. */
export function endAtFocus(lead: Lead): Pick<RuleFinding, 'advice' | 'fix'> {
  return {
    advice: t('Let it end at the focal point: write `to focus`.'),
    fix: {
      title: t('Lead {0} to the focal point', quoted(lead.name)),
      edits: [replace(lead.to.location, 'focus')],
    },
  };
}

/** By how much an edge has to turn about where the lead leaves it, so that it points to the place. */
function turnOfEdge(
  { end, heading }: LeadMeasure,
  place: Point | undefined,
  carrier: PlanObject,
  object: PlanObject | undefined,
): Pick<RuleFinding, 'advice'> {
  if (!place) return {};
  const wanted = (Math.atan2(place.y - end.y, place.x - end.x) * 180) / Math.PI;
  const turn = ((((wanted - heading) % 360) + 540) % 360) - 180;
  const told = [quoted(carrier.name), Math.round(Math.abs(turn))] as const;
  if (object)
    return {
      advice:
        turn < 0
          ? t(
              'Turn that edge of {0} by {1}° anticlockwise where the lead leaves it, and it points to {2}; or name with `through` where another mark takes the eye on.',
              ...told,
              quoted(object.name),
            )
          : t(
              'Turn that edge of {0} by {1}° clockwise where the lead leaves it, and it points to {2}; or name with `through` where another mark takes the eye on.',
              ...told,
              quoted(object.name),
            ),
    };
  return {
    advice:
      turn < 0
        ? t(
            'Turn that edge of {0} by {1}° anticlockwise where the lead leaves it, and it points to the focal point; or name with `through` where another mark takes the eye on.',
            ...told,
          )
        : t(
            'Turn that edge of {0} by {1}° clockwise where the lead leaves it, and it points to the focal point; or name with `through` where another mark takes the eye on.',
            ...told,
          ),
  };
}
