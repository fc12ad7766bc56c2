import { t } from '../../../grammar/index.js';
import { complementOf, hueDistance } from '../../plan/colour/hue.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import {
  coloursInRole,
  degrees,
  degreesOutside,
  dominantCarrier,
  hueWords,
  onWheel,
  sideOf,
  turnAdvice,
  worstThree,
} from '../seen/role-hues.js';

/** In a family that lies opposite as a whole, one colour may stray this many times as far. */
const STRAY = 2;

export const complementOffOpposite: Rule = {
  id: 'complement off opposite',
  severity: 'warning',
  chapter: 'colour',
  limit: { value: 30, unit: 'degrees', of: 'between a complement and the opposite of the dominant hue' },
  perObject: false,
  summary: 'A colour that the plan calls the complement does not lie opposite the dominant hue.',
  explanation:
    'A complement makes the dominant colour sing because the two hold nothing in common; a colour that is off the opposite is only another colour. A hue is that of the colour as it is written, for it stays through light and dark; the dominant hue is the mean of the dominant ones, weighed by the area that is seen and by chroma as painted, on the wheel that the plan chooses. Several complements may spread like a family: when together they lie opposite, one of them may be off by up to twice the limit. Greys have no hue and are left alone.',
  formula:
    '|hue - (mean dominant hue + 180°)| > limit; > 2 x limit when the mean hue of all complements is within the limit',
  source: 'common practice, no source; 30° is one of the twelve hues of the painters’ wheel',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const dominant = measures.hues.roles.find(({ role }) => role === 'dominant');
    const family = measures.hues.roles.find(({ role }) => role === 'complement');
    if (!dominant) return [];
    const opposite = complementOf(dominant.hueDegrees);
    const offOpposite = (hueDegrees: number): number => hueDistance(hueDegrees, opposite);
    const together = family !== undefined && !exceeds(offOpposite(family.hueDegrees), limit);
    const most = together ? limit * STRAY : limit;
    const broken = coloursInRole(plan, measures, 'complement')
      .map((colour) => ({ colour, off: offOpposite(colour.hueDegrees) }))
      .filter(({ off }) => exceeds(off, most))
      .sort((one, other) => other.off - one.off);
    return worstThree(broken, ({ colour, off }) => {
      const told = [
        colour.name,
        hueWords(colour.hueDegrees, plan),
        hueWords(dominant.hueDegrees, plan),
        hueWords(opposite, plan),
        degreesOutside(off, (angle) => exceeds(angle, most)),
        onWheel(plan),
        degrees(most),
      ] as const;
      return {
        message: together
          ? t(
              '{0} is to be the complement, but its hue is {1}; opposite the dominant {2} lies {3}, {4} away {5}, and in a family of complements up to {6} will do.',
              ...told,
            )
          : t(
              '{0} is to be the complement, but its hue is {1}; opposite the dominant {2} lies {3}, {4} away {5}, and up to {6} counts as opposite.',
              ...told,
            ),
        remedy: () =>
          turnAdvice(
            colour,
            plan,
            { start: opposite + sideOf(colour.hueDegrees, opposite) * limit, end: opposite },
            (hueDegrees) => !exceeds(offOpposite(hueDegrees), limit),
          ),
        location: colour.location,
        related: dominantCarrier(plan, measures),
        objects: colour.objects,
      };
    });
  },
};
