import { t } from '../../../grammar/index.js';
import { CORNER_REACH, cornerNear, wayOut } from '../../measure/eye-path/leads-edge.js';
import { aimsOf } from '../../measure/eye-path/leads-aim.js';
import { measureLead } from '../../measure/eye-path/leads.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { distanceToStretch } from '../../plan/leads-simplify.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas, Lead, Plan } from '../../plan/plan.js';
import type { Measures } from '../../measure/measures.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type Corner, cornerWords } from '../words/sides.js';
import { endAtFocus } from './lead-past-focus.js';
import { smallestTurn } from '../advice/lead-turns.js';
import { exceeds } from '../limits.js';
import { againstLimit, quoted } from '../words/words.js';

/** Part of the diagonal within which a lead arrives at the focal point, and is stopped by what is there. */
const ARRIVES = 0.05;
/** What is advised keeps this many times the limit from a corner. */
const CLEAR = 2;
/** Part of the diagonal by which a line may stray and still be straight to the eye. */
const STRAIGHT = 0.01;

export const leadIntoCorner: Rule = {
  id: 'lead into corner',
  severity: 'hint',
  chapter: 'eye path',
  limit: { value: CORNER_REACH, unit: 'part', of: 'the diagonal, from the corner' },
  perObject: false,
  perLead: true,
  summary: 'A lead takes the eye into a corner.',
  explanation:
    'A corner is an arrow that points out of the picture: a line that runs into one takes the eye along. What waits at the focal point stops a lead that arrives there, so only two kinds are told: a lead that passes the focal point and runs out at a corner, and one that runs straight from one corner to the opposite one, which halves the picture however well it is stopped. A lead may come in at a corner when it bends on its way.',
  formula:
    'distance from a corner to where the lead, carried on, leaves the canvas / diagonal <= limit; and it passes the focal point by more than 5 % of the diagonal, or starts in the opposite corner and strays from one straight line by 1 % of the diagonal at most',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const found = plan.leads.flatMap((lead, index) => {
      const measure = measures.eyePath.leads[index];
      const corner = measure && cornerTaken(lead, measure, plan.canvas, limit);
      return corner && measure ? [{ lead, index, measure, ...corner }] : [];
    });
    return found
      .toSorted((one, other) => one.away - other.away || one.index - other.index)
      .map((one) => told(plan, measures, one, limit));
  },
};

interface Taken {
  /** From the corner, canvas units. */
  readonly away: number;
  readonly at: Point;
  readonly corner: Corner;
  readonly isDiagonal: boolean;
}

function cornerTaken(
  { points }: Lead,
  measure: LeadMeasure,
  canvas: Canvas,
  limit: number,
): Taken | undefined {
  const { leaves, from, missShare } = measure;
  if (!leaves) return undefined;
  const name =
    `${leaves.at.y < canvas.height / 2 ? 'upper' : 'lower'} ${leaves.at.x < canvas.width / 2 ? 'left' : 'right'}` as const;
  const corner = {
    x: name.endsWith('left') ? 0 : canvas.width,
    y: name.startsWith('upper') ? 0 : canvas.height,
  };
  const away = distance(leaves.at, corner);
  if (exceeds(away / canvas.diagonal, limit)) return undefined;
  const start = points[0];
  const isStraight =
    start !== undefined &&
    points.every((point) => !exceeds(distanceToStretch(point, start, leaves.at) / canvas.diagonal, STRAIGHT));
  const isOpposite = from.kind === 'corner' && name.split(' ').every((word) => !from.corner.includes(word));
  const isDiagonal = isOpposite && isStraight;
  if (!isDiagonal && !exceeds(missShare ?? 0, ARRIVES)) return undefined;
  return { away, at: leaves.at, corner: name, isDiagonal };
}

function told(
  plan: Plan,
  measures: Measures,
  {
    lead,
    index,
    measure,
    at,
    corner,
    isDiagonal,
    away,
  }: Taken & {
    readonly lead: Lead;
    readonly index: number;
    readonly measure: LeadMeasure;
  },
  limit: number,
): RuleFinding {
  const reach = CLEAR * limit * plan.canvas.diagonal;
  const isClear = (place: Point | undefined): boolean =>
    place !== undefined && cornerNear(place, plan.canvas, reach) === undefined;
  const carrier = lead.along && lead.through.length === 0 ? plan.objects[lead.along.object] : undefined;
  const { measured, wanted, isNothing } = againstLimit(away / plan.canvas.diagonal, limit, plan.canvas);
  const name = quoted(lead.name);
  return {
    message:
      isDiagonal && measure.from.kind === 'corner'
        ? t(
            '{0} runs straight from the {1} corner to the {2} one, so it halves the picture.',
            name,
            cornerWords(measure.from.corner),
            cornerWords(corner),
          )
        : isNothing
          ? t(
              '{0} passes the focal point and runs out right at the {1} corner; more than {2} from the corner is clear of it.',
              name,
              cornerWords(corner),
              wanted,
            )
          : t(
              '{0} passes the focal point and runs out at the {1} corner, {2} from it; more than {3} from the corner is clear of it.',
              name,
              cornerWords(corner),
              measured,
              wanted,
            ),
    remedy: () => {
      const turn = smallestTurn(plan, measures, [index], (trial) =>
        [trial.leads[index]?.points[0], trial.measured[index]?.leaves?.at].every(isClear),
      );
      if (turn) return { advice: turn.advice, fix: turn.fix };
      return (
        endedInside(plan, measures, lead, measure, limit) ?? {
          advice: carrier
            ? t(
                'Turn the edge of {0} by {1}°, so that it runs out clear of the corner.',
                quoted(carrier.name),
                degreesOff(measure, plan.canvas, limit),
              )
            : t(
                'Turn its last stretch by {0}°, so that it runs out clear of the corner.',
                degreesOff(measure, plan.canvas, limit),
              ),
        }
      );
    },
    location: lead.location,
    at,
    leads: [index],
    objects: carrier ? [carrier.index] : [],
  };
}

/** Where a lead that ends in the corner itself is to end instead: no turn takes it out of there. */
function endedInside(
  plan: Plan,
  { areas }: Measures,
  lead: Lead,
  { end }: LeadMeasure,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> | undefined {
  const { canvas, focus } = plan;
  if (lead.along || !cornerNear(end, canvas, limit * canvas.diagonal)) return undefined;
  if (focus) {
    const trial: Lead = {
      ...lead,
      points: lead.points.with(-1, focus.at),
      to: { ...lead.to, at: focus.at, names: 'focus' },
    };
    const measure = measureLead(trial, canvas, aimsOf(plan, areas));
    if (!cornerTaken(trial, measure, canvas, limit)) return endAtFocus(lead);
  }
  return { advice: t('Let it end inside the picture, where something holds the eye.') };
}

/** The smallest turn about its end after which a line runs out farther from any corner than the limit. */
function degreesOff({ end, heading }: LeadMeasure, canvas: Canvas, limit: number): number {
  for (let degrees = 1; degrees < 90; degrees++) {
    for (const turn of [degrees, -degrees]) {
      const radians = ((heading + turn) * Math.PI) / 180;
      const out = wayOut(end, { x: Math.cos(radians), y: Math.sin(radians) }, canvas);
      if (out && !cornerNear(out.at, canvas, limit * canvas.diagonal)) return degrees;
    }
  }
  return 90;
}
