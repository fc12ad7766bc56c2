import { t } from '../../../grammar/index.js';
import { GROUND } from '../../measure/borders/borders.js';
import type { SeenChroma } from '../../measure/hues/chroma.js';
import type { Measures } from '../../measure/measures.js';
import { fromMunsell, toMunsell } from '../../plan/colour/munsell.js';
import { atValue } from '../../plan/colour/painted.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { greyingWords, leastGreying } from '../advice/greying.js';
import { exceeds, isOff } from '../limits.js';
import { againstLimit } from '../words/words.js';
import { areaName } from '../../measure/areas/area-words.js';

/** Munsell chroma by which a colour is clearly stronger than another, and so draws the eye. */
const CLEARLY = 2;
/** The same where the plan means the place to win by colour: what can just be told apart side by side. */
const BARELY = 0.5;

export const chromaOffFocus: Rule = {
  id: 'chroma off focus',
  severity: 'hint',
  chapter: 'colour',
  limit: { value: 0.08, unit: 'part', of: 'the diagonal' },
  perObject: true,
  summary: 'The strongest chroma in the picture is away from the focal point.',
  explanation:
    'The eye goes to the strongest chroma. Where the plan wants it to rest, no colour should be much weaker than the strongest elsewhere: by half a step of Munsell chroma when the place is to win by colour, by two steps when the plan does not say by what. A plan that names only other means has decided against colour and is left alone. What is seen of less than 0.2 % of the picture is a speck and does not count.',
  formula:
    'distance of the strongest chroma from the focal point / diagonal > limit, and that chroma - strongest within the limit > 0.5 with `win by colour`, >= 2 without `win by`',
  source: 'common practice, no source',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const { focus } = plan;
    if (!focus || isOff(focus.at, plan.canvas)) return [];
    if (focus.winBy.length > 0 && !focus.winBy.some(({ value }) => value === 'colour')) return [];
    const told = rivalOf(plan, measures.hues.chromas, limit);
    if (!told) return [];
    const { rival, best } = told;
    const { measured, wanted } = againstLimit(rival.fromFocus ?? 0, limit, plan.canvas);
    const object = plan.objects[rival.area];
    return [
      {
        message: `${t(
          'The strongest chroma, {0} in {1}, lies {2} from the focal point.',
          plainNumber(rival.chroma, 1),
          areaName(plan, rival.area),
          measured,
        )} ${bestNear(plan, best, wanted)}`,
        ...tryOut(plan, measures, rival, best, limit),
        location: object?.location ?? plan.canvas.ground.location ?? focus.location,
        related: [{ location: focus.location, message: t('The focal point.') }],
        objects: object ? [object.index] : [],
      },
    ];
  },
};

function bestNear(plan: Plan, { chroma, area }: SeenChroma, within: string): string {
  const told = plainNumber(chroma, 1);
  const where = areaName(plan, area);
  return winsByColour(plan)
    ? t(
        'Within {0} of it the strongest is {1}, in {2}; up to {3} weaker is let pass.',
        within,
        told,
        where,
        BARELY,
      )
    : t(
        'Within {0} of it the strongest is {1}, in {2}; less than {3} weaker is let pass.',
        within,
        told,
        where,
        CLEARLY,
      );
}

/** The strongest chroma and the strongest near the focal point, when the first is away from it and clearly stronger. */
function rivalOf(
  plan: Plan,
  chromas: readonly SeenChroma[],
  limit: number,
): { readonly rival: SeenChroma; readonly best: SeenChroma } | undefined {
  const [rival] = chromas;
  const best = chromas.find(({ fromFocus }) => fromFocus !== undefined && !exceeds(fromFocus, limit));
  if (!rival || !best || rival === best) return undefined;
  const ahead = rival.chroma - best.chroma;
  return (winsByColour(plan) ? exceeds(ahead, BARELY) : !exceeds(CLEARLY, ahead))
    ? { rival, best }
    : undefined;
}

/** Of a plan that names means, colour is among them here. */
function winsByColour({ focus }: Plan): boolean {
  return (focus?.winBy.length ?? 0) > 0;
}

/** The least greying after which nothing is to be told, and what the colour at the focal point would need instead. */
function tryOut(
  plan: Plan,
  measures: Measures,
  rival: SeenChroma,
  best: SeenChroma,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const greying = leastGreying(plan, measures, rival.area, ({ chromaOf }) => {
    const after = measures.hues.chromas.map((one) => ({ ...one, chroma: chromaOf(one.area) }));
    return !rivalOf(plan, strongestFirst(after), limit);
  });
  const needed = rival.chroma - (winsByColour(plan) ? BARELY : CLEARLY - BARELY);
  const canRise = canHold(plan, best.area, needed);
  const raised = [areaName(plan, best.area), plainNumber(needed, 1)] as const;
  if (greying) {
    const lower = greyingWords(greying);
    return {
      advice: canRise ? t('{0}, or raise {1} to {2}.', lower, ...raised) : `${lower}.`,
      fix: greying.fix,
    };
  }
  if (canRise) return { advice: t('Raise {0} to {1}.', ...raised) };
  return {
    advice: t(
      'Keep every colour away from the focal point under {0}, or bring a stronger one to it.',
      plainNumber(best.chroma, 1),
    ),
  };
}

function strongestFirst(chromas: readonly SeenChroma[]): readonly SeenChroma[] {
  return [...chromas].sort(
    (one, other) => other.chroma - one.chroma || (one.fromFocus ?? 0) - (other.fromFocus ?? 0),
  );
}

/** Whether a screen shows so much chroma at the hue and value that an area is painted in. */
function canHold({ objects, canvas }: Plan, area: number, chroma: number): boolean {
  const object = objects[area];
  const colour = area === GROUND ? canvas.ground.colour : object?.colour?.colour;
  const value = area === GROUND ? canvas.ground.value : object?.value;
  const hueDegrees = colour && toMunsell(colour).hueDegrees;
  if (hueDegrees === undefined || value === undefined) return false;
  return atValue(fromMunsell(hueDegrees, value, chroma), value).reached;
}
