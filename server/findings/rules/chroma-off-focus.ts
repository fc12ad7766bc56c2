import { GROUND } from '../../measure/borders/borders.js';
import type { SeenChroma } from '../../measure/hues/chroma.js';
import type { Measures } from '../../measure/measures.js';
import { fromMunsell, toMunsell } from '../../plan/colour/munsell.js';
import { atValue } from '../../plan/colour/painted.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { leastGreying } from '../advice/greying.js';
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
        message: `The strongest chroma, ${plainNumber(rival.chroma, 1)} in ${areaName(plan, rival.area)}, lies ${measured} from the focal point. Within ${wanted} of it the strongest is ${plainNumber(best.chroma, 1)}, in ${areaName(plan, best.area)}; ${winsByColour(plan) ? `up to ${BARELY}` : `less than ${CLEARLY}`} weaker is let pass.`,
        ...tryOut(plan, measures, rival, best, limit),
        location: object?.location ?? plan.canvas.ground.location ?? focus.location,
        related: [{ location: focus.location, message: 'The focal point.' }],
        objects: object ? [object.index] : [],
      },
    ];
  },
};

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
  const raise = canRise ? `raise ${areaName(plan, best.area)} to ${plainNumber(needed, 1)}` : undefined;
  if (greying) {
    const lower = `Lower the chroma of ${greying.name} from ${plainNumber(greying.from, 1)} to ${plainNumber(greying.to, 1)}`;
    return { advice: `${lower}${raise ? `, or ${raise}` : ''}.`, fix: greying.fix };
  }
  if (raise) return { advice: `${raise.charAt(0).toUpperCase()}${raise.slice(1)}.` };
  return {
    advice: `Keep every colour away from the focal point under ${plainNumber(best.chroma, 1)}, or bring a stronger one to it.`,
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
