import type { Measures } from '../../measure/measures.js';
import { distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { crossingsNear, type NamedCrossing } from '../crossings.js';
import { focusEdit } from '../edits.js';
import type { Rule } from '../finding.js';
import { exceeds } from '../limits.js';
import { greatestDominant, middleOf } from '../seen.js';
import { length, percent } from '../words.js';

export const centredFocus: Rule = {
  id: 'centred focus',
  severity: 'hint',
  chapter: 'centre of interest',
  limit: { value: 0.04, unit: 'part', of: 'the diagonal' },
  perObject: false,
  summary: 'The focal point lies in the very middle of the canvas.',
  explanation:
    'The middle, and any place equally far from two sides, is weak: nothing pulls the eye one way or the other.',
  formula: 'distance to the middle of the canvas / diagonal <= limit',
  source:
    'H. R. Poore, Pictorial Composition (1903), on the weakness of the centre; the limit is common practice',
  check: (plan, measures, limit) => {
    const { focus } = measures;
    if (!plan.focus || !focus || exceeds(focus.fromCentre, limit)) return [];
    const crossing = crossingAway(plan, measures, limit);
    const edits = crossing && focusEdit(plan, crossing.words);
    return [
      {
        message: `The focal point lies in the middle of the canvas (${percent(focus.fromCentre)} of the diagonal off it).`,
        advice: crossing
          ? `Move it to ${crossing.words}, ${length(crossing.distance, plan.canvas)} away, or set this aside if the stillness is meant.`
          : 'Move it towards one side, or set this aside if the stillness is meant.',
        location: plan.focus.location,
        at: plan.focus.at,
        ...(crossing && edits ? { fix: { title: `Move the focal point to ${crossing.words}`, edits } } : {}),
      },
    ];
  },
};

/** So that crossings all round the middle count as equally far. */
const AS_FAR = 1.001;

/** The nearest crossing that is off the middle; of several as far away, the one on the dominant object's side. */
function crossingAway(plan: Plan, measures: Measures, limit: number): NamedCrossing | undefined {
  const { canvas, focus } = plan;
  if (!focus) return undefined;
  const middle = { x: canvas.width / 2, y: canvas.height / 2 };
  const away = crossingsNear(plan, focus.at).filter(({ at }) =>
    exceeds(distance(at, middle) / canvas.diagonal, limit),
  );
  const [first] = away;
  const dominant = greatestDominant(plan, measures);
  if (!first || !dominant) return first;
  const place = middleOf(dominant);
  return away
    .filter((crossing) => crossing.distance <= first.distance * AS_FAR)
    .reduce((one, other) => (distance(other.at, place) < distance(one.at, place) ? other : one));
}
