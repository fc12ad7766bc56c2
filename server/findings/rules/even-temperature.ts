import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { heading, percent, quoted } from '../words/words.js';

/** Warm and cool together have to cover this much before they can be said to be at odds. */
const MOST_OF_PICTURE = 0.8;

export const evenTemperature: Rule = {
  id: 'even temperature',
  severity: 'hint',
  chapter: 'colour',
  limit: { value: 0.05, unit: 'part', of: 'the picture' },
  perObject: false,
  summary: 'Warm and cool colours cover nearly the same area.',
  explanation:
    'A picture is mostly warm or mostly cool, and the other temperature gives it life; in equal parts they quarrel. Warm hues run from red-violet over red and orange to yellow, cool ones from yellow-green over green and blue to violet, on the painters’ wheel whatever wheel the plan chooses. A colour of a Munsell chroma under 1 as painted is neutral.',
  formula: '|warm area - cool area| <= limit, and warm + cool > 80 % of the picture',
  source:
    'common practice, no source; the two halves of the wheel as in Itten, The Art of Color (1961), cold-warm contrast',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const { warm, cool } = measures.hues.temperature;
    if (exceeds(Math.abs(warm - cool), limit) || !exceeds(warm + cool, MOST_OF_PICTURE)) return [];
    return [
      {
        message: `Warm colours cover ${percent(warm)} of the picture and cool ones ${percent(cool)}: neither leads. One should be ahead by more than ${percent(limit)}.`,
        advice: advice(plan, measures, limit),
        location: plan.colours[0]?.location ?? heading(plan),
      },
    ];
  },
};

/**
 * Which temperature is to lead: that of the dominant colour, else the greater; and the smallest object of the other
 * that makes it lead when it is painted so.
 */
function advice(plan: Plan, measures: Measures, limit: number): string {
  const { temperature, objects } = measures.hues;
  const wanted = dominantTemperature(plan, measures);
  const leader = wanted ?? (temperature.warm >= temperature.cool ? 'warm' : 'cool');
  const other = leader === 'warm' ? 'cool' : 'warm';
  const lead = temperature[leader] - temperature[other];
  let best: { readonly object: PlanObject; readonly share: number } | undefined;
  for (const object of plan.objects) {
    const share = measures.objects[object.index]?.share ?? 0;
    if (objects[object.index]?.temperature !== other || !exceeds(lead + 2 * share, limit)) continue;
    if (!best || share < best.share) best = { object, share };
  }
  const reason = wanted ? ', as the dominant colour is' : '';
  if (!best) return `Let the ${leader} colours lead${reason}: bring more of the picture to them.`;
  const after = [temperature[leader] + best.share, temperature[other] - best.share].map(percent);
  return `Let the ${leader} colours lead${reason}: ${quoted(best.object.name)} (${percent(best.share)}) painted ${leader} makes them ${after[0] ?? ''} against ${after[1] ?? ''}.`;
}

function dominantTemperature(plan: Plan, { hues, objects }: Measures): 'warm' | 'cool' | undefined {
  const area = { warm: 0, cool: 0, neutral: 0 };
  for (const { index, colour } of plan.objects) {
    const hue = hues.objects[index];
    if (hue && colour?.role === 'dominant') area[hue.temperature] += objects[index]?.share ?? 0;
  }
  if (area.warm === area.cool) return undefined;
  return area.warm > area.cool ? 'warm' : 'cool';
}
