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

const QUARTER = 90;

export const discordOffQuarter: Rule = {
  id: 'discord off quarter',
  severity: 'warning',
  chapter: 'colour',
  limit: { value: 45, unit: 'degrees', of: 'between a discord and the dominant hue or its opposite' },
  perObject: false,
  summary:
    'A colour that the plan calls a discord lies nearer to the dominant hue or its opposite than to a quarter turn.',
  explanation:
    'A discord is the small note that belongs neither to the dominant colour nor to its complement: on the wheel it lies about a quarter turn from both. Nearer to one of them it is only more of that. A hue is that of the colour as it is written, for it stays through light and dark; the dominant hue is the mean of the dominant ones, weighed by the area that is seen and by chroma as painted, on the wheel that the plan chooses. A grey has no hue and is left alone.',
  formula: 'angle between the hue and the mean dominant hue < limit, or > 180° - limit',
  source: 'common practice, no source',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const dominant = measures.hues.roles.find(({ role }) => role === 'dominant');
    if (!dominant) return [];
    const opposite = complementOf(dominant.hueDegrees);
    const nearness = (hueDegrees: number): number =>
      Math.min(hueDistance(hueDegrees, dominant.hueDegrees), hueDistance(hueDegrees, opposite));
    const broken = coloursInRole(plan, measures, 'discord')
      .map((colour) => ({ colour, near: nearness(colour.hueDegrees) }))
      .filter(({ near }) => exceeds(limit, near))
      .sort((one, other) => one.near - other.near);
    return worstThree(broken, ({ colour, near }) => {
      const toDominant = hueDistance(colour.hueDegrees, dominant.hueDegrees) < QUARTER;
      const pole = toDominant ? dominant.hueDegrees : opposite;
      const side = sideOf(colour.hueDegrees, pole);
      const figures = [
        colour.name,
        hueWords(colour.hueDegrees, plan),
        degreesOutside(near, (angle) => exceeds(limit, angle)),
        hueWords(pole, plan),
        onWheel(plan),
        degrees(limit),
      ] as const;
      return {
        message: toDominant
          ? t(
              '{0} is to be a discord, but its hue, {1}, lies {2} from the dominant hue, {3}, {4}; a discord keeps at least {5} off, near a quarter turn.',
              ...figures,
            )
          : t(
              '{0} is to be a discord, but its hue, {1}, lies {2} from the opposite of the dominant hue, {3}, {4}; a discord keeps at least {5} off, near a quarter turn.',
              ...figures,
            ),
        remedy: () =>
          turnAdvice(
            colour,
            plan,
            { start: pole + side * limit, end: pole + side * QUARTER },
            (hueDegrees) => !exceeds(limit, nearness(hueDegrees)),
          ),
        location: colour.location,
        related: dominantCarrier(plan, measures),
        objects: colour.objects,
      };
    });
  },
};
