import { t } from '../../../grammar/index.js';
import { centreOfInterest } from '../../measure/emphasis/centre.js';
import { REACH } from '../../measure/emphasis/grid.js';
import { type FocalEmphasis, type StrongPlace, RIVAL, isNearEdge } from '../../measure/emphasis/emphasis.js';
import type { Measures } from '../../measure/measures.js';
import { distance } from '../../plan/geometry/point.js';
import type { Focus, Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { noSingleChange, weakening } from '../advice/emphasis.js';
import {
  borderKey,
  farPart,
  fromEdge,
  howStrongly,
  isReadable,
  objectsOf,
  oneABorder,
  placeOf,
} from '../words/emphasis.js';
import { fromFocalPoint, lies } from '../words/leads.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, leastAt } from '../limits.js';
import { isEmphasisLaidIn } from '../seen/laid-in.js';
import { length, percent } from '../words/words.js';
import { meeting } from '../../measure/areas/area-words.js';

/** A focal point weaker than this part of the strongest place is as good as unmarked. */
const UNMARKED = 0.1;

export const rival: Rule = {
  id: 'rival',
  severity: 'hint',
  chapter: 'centre of interest',
  limit: { value: RIVAL, unit: 'part', of: 'the strength of the focal point' },
  perObject: true,
  mostTold: 3,
  summary: 'A place elsewhere draws the eye as strongly as the focal point.',
  explanation:
    'The eye goes where borders are long, sharp and full of contrast. What is to be seen first must be the strongest such place; a second one as strong divides the picture. The edges of the dominant object at the focal point are one place with it, and so is what lies against them close by; but the far end of a long one, as of a table or a wall, is another. A second dominant object is told as such. It is a warning where the plan says by which means the focal point is to win.',
  formula:
    'strength = sum of length / diagonal x edge sharpness (hard 1, firm 0.7, soft 0.35, lost 0.1) x (0.6 dV / 10 + 0.4 dab / 100) over the borders within 8 % of the diagonal; strongest place farther than 8 % from the focal point (16 % for what lies against the dominant object there; for that one’s own edges and all that lies on it 16 %, half of the diagonal of the box round what is seen of it, or the shorter side of that box, whichever is most) >= limit x the strongest within 8 % of it; not told while more than 10 % of the picture, or of what is seen within 8 % of the focal point, or anything dominant has no value; heuristic',
  source: 'common practice, no source; the weights are the tool’s own',
  check: (plan, measures, limit) => {
    const { focus } = plan;
    const { focal, places } = measures.emphasis;
    if (!focus || !focal || !isEmphasisLaidIn(plan, measures)) return [];
    const severity = focus.winBy.length > 0 ? { severity: 'warning' as const } : {};
    const [strongest] = places;
    if (strongest && focal.strength < UNMARKED * strongest.strength) {
      return isReadable(plan, strongest)
        ? [{ ...unmarked(plan, measures, focus, focal, strongest), ...severity }]
        : [];
    }
    const centre = centreOfInterest(plan, measures);
    const isToldAsDominant = ({ areas: [front] }: StrongPlace): boolean =>
      plan.objects[front]?.role === 'dominant' && !centre.has(front);
    const rivals = oneABorder(rivalsOf(focal, limit)).filter(
      (place) => isReadable(plan, place) && !isToldAsDominant(place),
    );
    return rivals.map((place) => ({ ...told(plan, measures, place, focus, focal, limit), ...severity }));
  },
};

/** Places that draw the eye by at least a part `limit` as strongly as the focal point, strongest first. */
function rivalsOf(
  { elsewhere, strength: there }: Pick<FocalEmphasis, 'elsewhere' | 'strength'>,
  limit: number,
): readonly StrongPlace[] {
  return elsewhere.filter(({ strength }) => !exceeds(limit * there, strength));
}

function told(
  plan: Plan,
  measures: Measures,
  place: StrongPlace,
  focus: Focus,
  focal: FocalEmphasis,
  limit: number,
): RuleFinding {
  const { canvas } = plan;
  const before = new Set(rivalsOf(focal, limit).map(borderKey));
  const own = borderKey(place);
  const away = fromFocalPoint(length(distance(place.at, focus.at), canvas), lies(place.at, focus.at));
  const where = isNearEdge(place.fromEdge) ? inWords([away, fromEdge(place, canvas)]) : away;
  return {
    message:
      t(
        'Where {0}, {1}, the picture draws the eye {2} as there; from {3} on that is a rival.',
        meeting(plan, place.areas),
        where,
        howStrongly(place.strength, focal.strength),
        percent(limit),
      ) + farPart(plan, measures, place),
    remedy: () =>
      weakening(plan, measures, place, `rival ${limit}`, (trial) => {
        if (!exceeds(limit * trial.there, trial.at(place.at))) return false;
        const elsewhere = trial.elsewhere(leastAt(limit * trial.there));
        return rivalsOf({ elsewhere, strength: trial.there }, limit).every((other) => {
          const key = borderKey(other);
          return key !== own && before.has(key);
        });
      }) ?? { advice: noSingleChange(plan, place, limit * focal.strength) },
    ...placeOf(plan, place),
  };
}

function unmarked(
  plan: Plan,
  { borders }: Measures,
  focus: Focus,
  focal: FocalEmphasis,
  strongest: StrongPlace,
): RuleFinding {
  const { canvas } = plan;
  let nearest: { readonly away: number; readonly areas: StrongPlace['areas'] } | undefined;
  for (const { at, front, behind, pull } of borders.stretches) {
    const away = distance(at, focus.at);
    if (pull >= UNMARKED && (!nearest || away < nearest.away)) nearest = { away, areas: [front, behind] };
  }
  const reach = length(REACH * canvas.diagonal, canvas);
  return {
    message:
      focal.strength === 0
        ? t('Nothing marks the focal point: no border with contrast lies within {0} of it.', reach)
        : t(
            'Hardly anything marks the focal point: what lies within {0} of it draws the eye {1} as the strongest place, where {2}.',
            reach,
            howStrongly(focal.strength, strongest.strength),
            meeting(plan, strongest.areas),
          ),
    advice: nearest
      ? t(
          'The nearest clear border is {0} away, where {1}: bring it here, or set an object here that differs from what is behind it.',
          length(nearest.away, canvas),
          meeting(plan, nearest.areas),
        )
      : t('Set an object here that differs from what is behind it in value or colour.'),
    location: focus.location,
    at: focus.at,
    objects: objectsOf(strongest),
  };
}
