import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, isOff } from '../limits.js';
import { length, percent, quoted } from '../words.js';

export const dominantOffFocus: Rule = {
  id: 'dominant off focus',
  severity: 'warning',
  chapter: 'centre of interest',
  limit: { value: 0.05, unit: 'part', of: 'the diagonal' },
  perObject: true,
  summary: 'The dominant object is not at the focal point.',
  explanation:
    'The plan says where the eye is to rest and which object is to rule; they belong together. The object is at the point when what is seen of it holds the point, or its border is close by.',
  formula: 'point outside the visible shape, and distance to its border / diagonal > limit',
  source: 'common practice, no source',
  check: (plan, { focus }, limit): readonly RuleFinding[] => {
    if (!plan.focus || !focus || isOff(plan.focus.at, plan.canvas)) return [];
    // That there are several is told elsewhere; one of them at the point is enough, and one that is not seen is told too.
    const seen = focus.dominants.filter(({ distanceShare }) => Number.isFinite(distanceShare));
    if (seen.some(({ holds, distanceShare }) => holds || !exceeds(distanceShare, limit))) return [];
    const [first] = [...seen].sort((one, other) => one.object - other.object);
    const object = first && plan.objects[first.object];
    if (!object) return [];
    const { distanceShare } = first;
    return [
      {
        message: `${quoted(object.name)} is dominant but ends ${length(distanceShare * plan.canvas.diagonal, plan.canvas)} from the focal point (${percent(distanceShare)} of the diagonal; up to ${percent(limit)} is close).`,
        advice: `Write \`at focus\` under ${quoted(object.name)}, or move the focal point to it.`,
        location: object.location,
        related: [{ location: plan.focus.location, message: 'The focal point.' }],
        objects: [first.object],
      },
    ];
  },
};
