import { t } from '../../../grammar/index.js';
import {
  type FocalEmphasis,
  type StrongPlace,
  NEAR_EDGE,
  RIVAL,
  STRONG,
  isNearEdge,
} from '../../measure/emphasis/emphasis.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { noSingleChange, weakening } from '../advice/emphasis.js';
import { farPart, fromEdge, howStrongly, isReadable, oneABorder, placeOf } from '../words/emphasis.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, leastAt } from '../limits.js';
import { isEmphasisLaidIn } from '../seen/laid-in.js';
import { percent } from '../words/words.js';
import { meeting } from '../../measure/areas/area-words.js';

export const strongEdge: Rule = {
  id: 'strong edge',
  severity: 'hint',
  chapter: 'centre of interest',
  limit: { value: STRONG, unit: 'part', of: 'the strength of the focal point', most: RIVAL },
  perObject: true,
  mostTold: 3,
  summary: 'A strong place lies close to the edge of the canvas.',
  explanation:
    'Strong contrast close to the edge of the canvas takes the eye there and out of the picture, all the more as nothing beyond it calls the eye back. A place as strong as a rival is told as a rival.',
  formula: `strength of a place within ${percent(NEAR_EDGE)} of the diagonal from an edge of the canvas >= limit x strength of the focal point, and < ${percent(RIVAL)} of it; strength as for rival; not told while too much has no value, as for rival; heuristic`,
  source: 'common practice, no source; the weights are the tool’s own',
  check: (plan, measures, limit) => {
    const { focal } = measures.emphasis;
    if (!focal || focal.strength === 0 || !isEmphasisLaidIn(plan, measures)) return [];
    const places = oneABorder(strongOf(focal.elsewhere, focal.strength, limit));
    return places
      .filter((place) => isReadable(plan, place))
      .map((place) => told(plan, measures, place, focal, limit));
  },
};

function strongOf(elsewhere: readonly StrongPlace[], there: number, limit: number): readonly StrongPlace[] {
  return elsewhere.filter(
    ({ fromEdge, strength }) =>
      isNearEdge(fromEdge) && !exceeds(limit * there, strength) && exceeds(RIVAL * there, strength),
  );
}

function told(
  plan: Plan,
  measures: Measures,
  place: StrongPlace,
  focal: FocalEmphasis,
  limit: number,
): RuleFinding {
  return {
    message:
      t(
        'Where {0}, {1}, the picture draws the eye {2} as at the focal point; so near the edge, {3} and more leads it out.',
        meeting(plan, place.areas),
        fromEdge(place, plan.canvas),
        howStrongly(place.strength, focal.strength),
        percent(limit),
      ) + farPart(plan, measures, place),
    remedy: () =>
      weakening(
        plan,
        measures,
        place,
        `strong edge ${limit}`,
        (trial) =>
          exceeds(limit * trial.there, trial.at(place.at)) &&
          strongOf(trial.elsewhere(leastAt(limit * trial.there)), trial.there, limit).length <
            strongOf(focal.elsewhere, focal.strength, limit).length,
      ) ?? { advice: noSingleChange(plan, place, limit * focal.strength) },
    ...placeOf(plan, place),
  };
}
