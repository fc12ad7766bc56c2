import { type Means, t } from '../../../grammar/index.js';
import type { Rule, RuleFinding } from '../finding.js';
import type { FocalEmphasis } from '../../measure/emphasis/emphasis.js';
import type { MeansMeasure } from '../../measure/emphasis/means.js';
import { meeting } from '../../measure/areas/area-words.js';
import type { Plan } from '../../plan/plan.js';
import { isEmphasisLaidIn } from '../seen/laid-in.js';
import { borderKey, meansWords } from '../words/emphasis.js';
import { timesAbove } from '../words/words.js';
import { meansAdvice } from '../advice/means.js';

/** Without values and colours nothing can be said of these. */
const BY_PAINT: ReadonlySet<Means> = new Set(['value', 'colour', 'edges', 'isolation']);

/** Times as much contrast as at the focal point that a place elsewhere may have. */
const ENOUGH = 1.1;

export const unmetMeans: Rule = {
  id: 'unmet means',
  severity: 'warning',
  chapter: 'centre of interest',
  perObject: false,
  summary: 'The focal point does not win by a means that the plan states.',
  explanation:
    'A place wins the eye by contrast of value, by strong colour, by hard edges, by detail, by scale or by standing alone. The plan says by which; each is measured at the focal point and against the rest of the picture. A contrast counts for less the softer its edge.',
  formula:
    'value, colour: borders within 8 % of the diagonal, length x edge sharpness x dV / 10 or dab / 100, no place elsewhere more than a tenth stronger; edges: mean sharpness of borders with contrast, and detail: mean by area (fine 1, some 0.5, little 0), higher within 8 % than in the rest, edges by those of the dominant object there where none is so near; scale: the object there with all on it, none outside of the background larger; isolation: pull of the borders of other things by area, in the ring from 8 to 20 % lower than in the picture; all but detail and scale not told while too much has no value, as for rival; heuristic',
  source: 'the plan states it; how it is measured is the tool’s own',
  check: (plan, measures) => {
    const { focus } = plan;
    const { focal } = measures.emphasis;
    if (!focus || !focal || plan.objects.length === 0) return [];
    const painted = isEmphasisLaidIn(plan, measures);
    return focus.winBy.flatMap(({ value, location }): RuleFinding[] => {
      const measure = focal.means.find(({ means }) => means === value);
      if (!measure || measure.holds || (BY_PAINT.has(value) && !painted)) return [];
      return [
        {
          message:
            besideRival(plan, focal, measure) ??
            t('The focal point is to win by {0}, but {1}.', meansWords(value), measure.inWords),
          remedy: () => meansAdvice(plan, measures, measure),
          location,
          at: focus.at,
        },
      ];
    });
  },
};

/**
 * What is said where the strongest place elsewhere is a rival, which is told with how strongly it draws the eye: the
 * same way round, so that the two figures can be read side by side.
 */
function besideRival(
  plan: Plan,
  { rivals }: FocalEmphasis,
  { means, areas, there, elsewhere }: MeansMeasure,
): string | undefined {
  if (!areas || there === 0) return undefined;
  const key = borderKey({ areas });
  if (!rivals.some((rival) => borderKey(rival) === key)) return undefined;
  return t(
    'The focal point is to win by {0}, but its rival, where {1}, has {2} as much contrast of {0}; up to {3} times is let pass.',
    meansWords(means),
    meeting(plan, areas),
    timesAbove(elsewhere / there, ENOUGH),
    ENOUGH,
  );
}
