import { t } from '../../../grammar/index.js';
import { anglesBetween } from '../../measure/eye-path/leads.js';
import type { LeadAngle } from '../../measure/eye-path/eye-path.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { smallestTurn } from '../advice/lead-turns.js';
import { degreesInWords, leadName } from '../words/leads.js';
import { exceeds } from '../limits.js';
import { objectName } from '../words/words.js';

export const leadsTooClose: Rule = {
  id: 'leads too close',
  severity: 'hint',
  chapter: 'eye path',
  limit: { value: 10, unit: 'degrees', of: 'between two leads where they arrive' },
  perObject: false,
  perLead: true,
  summary: 'Two leads arrive so close together that they read as one.',
  explanation:
    'Two lines that come to one place from nearly one direction run into each other before they get there. The eye sees one thick line, or a wedge, and loses both. Leads are compared that arrive at the focal point, or at the same object.',
  formula: 'angle between the directions over the last 5 % of the diagonal of two leads <= limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    measures.eyePath.angles
      .filter(({ degrees }) => !exceeds(degrees, limit))
      .toSorted((one, other) => one.degrees - other.degrees || one.one - other.one || one.other - other.other)
      .map((pair) => told(plan, measures, pair, limit)),
};

function told(
  plan: Plan,
  measures: Measures,
  { one, other, degrees }: LeadAngle,
  limit: number,
): RuleFinding {
  const [lead, near] = [plan.leads[other], plan.leads[one]];
  const carriers = [near, lead].flatMap((each) => (each?.along ? [each.along.object] : []));
  return {
    message: arriveTogether(plan, { one, other, degrees }, limit),
    remedy: () => {
      const closeBefore = closePairs(measures.eyePath.angles, limit);
      const turn = smallestTurn(plan, measures, [other, one], ({ leads, measured }) => {
        const after = anglesBetween({ ...plan, leads }, measured);
        return (
          closePairs(after, limit) < closeBefore && !after.some((pair) => isPair(pair, one, other, limit))
        );
      });
      return turn
        ? { advice: turn.advice, fix: turn.fix }
        : { advice: partEdges(plan, carriers, limit - degrees) };
    },
    location: lead?.location ?? { line: 0, start: 0, end: 0 },
    ...(near ? { related: [{ location: near.location, message: t('The other lead.') }] } : {}),
    ...(lead ? { at: lead.to.at } : {}),
    leads: [one, other],
    objects: carriers,
  };
}

function arriveTogether(plan: Plan, { one, other, degrees }: LeadAngle, limit: number): string {
  const both = inWords([leadName(plan, one), leadName(plan, other)]);
  const apart = degreesInWords(degrees);
  const wanted = degreesInWords(limit);
  const isOneDirection = apart === '0°';
  const to = plan.leads[other]?.to;
  if (to?.names === 'object') {
    const object = objectName(plan, to.object);
    return isOneDirection
      ? t(
          '{0} arrive at {1} from one direction, so they read as one line; over {2} apart they read as two.',
          both,
          object,
          wanted,
        )
      : t(
          '{0} arrive at {1} {2} apart, so they read as one line; over {3} apart they read as two.',
          both,
          object,
          apart,
          wanted,
        );
  }
  return isOneDirection
    ? t(
        '{0} arrive at the focal point from one direction, so they read as one line; over {1} apart they read as two.',
        both,
        wanted,
      )
    : t(
        '{0} arrive at the focal point {1} apart, so they read as one line; over {2} apart they read as two.',
        both,
        apart,
        wanted,
      );
}

/** By how much what carries the leads has to turn, where no turn of a line that is merely drawn does it. */
function partEdges(plan: Plan, carriers: readonly number[], missing: number): string {
  const [first, second] = carriers.map((object) => objectName(plan, object));
  const far = degreesInWords(missing);
  const isLittle = far === '0°';
  if (first === undefined)
    return isLittle
      ? t('Turn one of them a little, away from the other.')
      : t('Turn one of them by more than {0}, away from the other.', far);
  if (second === undefined)
    return isLittle
      ? t('Turn the edge of {0}, which carries one of them, a little, away from the other.', first)
      : t(
          'Turn the edge of {0}, which carries one of them, by more than {1}, away from the other.',
          first,
          far,
        );
  if (second !== first)
    return isLittle
      ? t(
          'Turn the edge of {0} or that of {1}, which carry them, a little, away from the other.',
          first,
          second,
        )
      : t(
          'Turn the edge of {0} or that of {1}, which carry them, by more than {2}, away from the other.',
          first,
          second,
          far,
        );
  return t('{0} carries both: keep one of the two, or let one come from elsewhere.', first);
}

function closePairs(angles: readonly LeadAngle[], limit: number): number {
  return angles.filter(({ degrees }) => !exceeds(degrees, limit)).length;
}

function isPair(pair: LeadAngle, one: number, other: number, limit: number): boolean {
  return pair.one === one && pair.other === other && !exceeds(pair.degrees, limit);
}
