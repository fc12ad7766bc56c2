import type { Rule, RuleFinding } from '../finding.js';
import { heading, quoted } from '../words.js';

export const oneDominant: Rule = {
  id: 'one dominant',
  severity: 'hint',
  chapter: 'objects',
  perObject: true,
  summary: 'A picture has one dominant object.',
  explanation:
    'One feature is more important than all the rest; where two contend for that place the picture splits.',
  formula: 'number of dominant objects = 1',
  source: 'J. Ruskin, The Elements of Drawing (1857), the law of principality',
  check: (plan) => {
    const [first, ...others] = plan.objects.filter(({ role }) => role === 'dominant');
    if (plan.objects.length === 0 || (first && others.length === 0)) return [];
    if (!first) {
      return [
        {
          message: 'No object is dominant.',
          advice: `Mark the one that the picture is about: \`object ${plan.objects[0]?.name ?? 'gate'}, dominant\`, say.`,
          location: heading(plan),
        },
      ];
    }
    return others.map((other): RuleFinding => ({
      message: `${quoted(first.name)} is dominant already, and so is ${quoted(other.name)}.`,
      advice: `Make ${quoted(other.name)} secondary.`,
      location: other.location,
      related: [{ location: first.location, message: `${quoted(first.name)} is dominant here.` }],
      objects: [other.index],
    }));
  },
};
