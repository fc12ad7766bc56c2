import type { ColourRole } from '../../../grammar/index.js';
import { hueName, meanHue } from '../../plan/colour/hue.js';
import { LEAST_CHROMA } from '../../plan/colour/hue-warmth.js';
import type { Plan } from '../../plan/plan.js';
import { GROUND } from '../borders/borders.js';
import type { AreaHue, RoleHue } from './hues.js';

const ROLES: readonly ColourRole[] = ['dominant', 'complement', 'discord', 'neutral'];

/** An area with a colour, and the part of the picture that is seen of it. */
export interface SeenHue {
  /** Index of the object, or `GROUND`. */
  readonly area: number;
  readonly share: number;
  readonly hue: AreaHue;
}

/**
 * The mean hue of each role that has one, with the part of the picture that the role covers. A role that is grey on
 * the whole, of mean chroma under 1 as painted, has none: nobody sees a complement to nearly black.
 */
export function roleHues(plan: Plan, seen: readonly SeenHue[]): readonly (RoleHue & { share: number })[] {
  const byRole = new Map<ColourRole, SeenHue[]>(ROLES.map((role) => [role, []]));
  for (const one of seen) {
    const role = roleOf(plan, one.area);
    if (role) byRole.get(role)?.push(one);
  }
  return [...byRole].flatMap(([role, own]) => {
    const hueDegrees = meanHue(
      own.flatMap(({ share, hue }) =>
        hue.hueDegrees === undefined ? [] : [{ hueDegrees: hue.hueDegrees, weight: share * hue.chroma }],
      ),
    );
    if (hueDegrees === undefined) return [];
    const share = own.reduce((sum, one) => sum + one.share, 0);
    const mean = (figure: (one: SeenHue) => number): number => {
      let sum = 0;
      for (const one of own) sum += one.share * figure(one);
      return sum / share;
    };
    const chroma = mean(({ hue }) => hue.chroma);
    if (chroma < LEAST_CHROMA) return [];
    return [
      {
        role,
        hueDegrees,
        name: hueName(hueDegrees, plan.wheel),
        value: mean(({ area }) => valueOf(plan, area)),
        chroma,
        strength: mean(({ area, hue }) => valueOf(plan, area) * hue.chroma),
        share,
      },
    ];
  });
}

function roleOf(plan: Plan, area: number): ColourRole | undefined {
  return area === GROUND ? plan.canvas.ground.role : plan.objects[area]?.colour?.role;
}

function valueOf(plan: Plan, area: number): number {
  return (area === GROUND ? plan.canvas.ground.value : plan.objects[area]?.value) ?? 0;
}

/**
 * The part that one of two opposite hues takes of the area of both, by Munsell's advice: areas inversely as value x
 * chroma, the stronger the smaller. Munsell, Atlas of the Munsell Color System, 1915, chart G. Morriss and Dunlap,
 * Influence of Value on Spatial Balance of Color Pairs, found that what people choose does not bear it out.
 *
 * @param strength value x chroma of the one
 * @param oppositeStrength value x chroma of the other; the two must not both be nought
 */
export function areaShareBesideOpposite(strength: number, oppositeStrength: number): number {
  return oppositeStrength / (strength + oppositeStrength);
}
