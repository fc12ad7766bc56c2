import { isNeutral, type Colour } from '../../plan/colour/model.js';
import { munsellHueName, toMunsell } from '../../plan/colour/munsell.js';
import { atValue } from '../../plan/colour/painted.js';
import { stepValue } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';

/** One hue from its darkest to its lightest step, as it is to be painted. */
export interface WantedString {
  readonly name: string;
  readonly steps: readonly { readonly step: number; readonly wanted: Colour }[];
}

/** Hues of colours without a name are gathered to the quarter of one of Munsell's ten, degrees of his circle. */
const QUARTER_HUE = 9;

/**
 * The strings of values of a plan: for each hue painted at more than one step of the scale, its colour at every step
 * from the darkest to the lightest. A hue is a named colour of the plan, or else a Munsell hue to the nearest 2.5;
 * those painted over the larger part come first.
 *
 * @param shares visible shares in the order of `plan.objects`
 */
export function valueStrings(plan: Plan, shares: readonly number[]): readonly WantedString[] {
  const hues = new Map<
    string,
    { name: string; colour: Colour; steps: Set<number>; share: number; most: number }
  >();
  plan.objects.forEach(({ colour, painted, step }, object) => {
    if (!painted || step === undefined) return;
    const base = colour?.colour ?? painted;
    const named = colour?.named === undefined ? undefined : plan.colours[colour.named]?.name;
    const name = named ?? hueOf(base);
    const key = `${named === undefined ? 'hue' : 'named'} ${name}`;
    const share = shares[object] ?? 0;
    const hue = hues.get(key) ?? { name, colour: base, steps: new Set(), share: 0, most: -1 };
    hue.steps.add(Math.min(plan.scale.steps, Math.max(1, Math.round(step))));
    hue.share += share;
    if (share > hue.most) Object.assign(hue, { colour: base, most: share });
    hues.set(key, hue);
  });
  return [...hues.values()]
    .filter(({ steps }) => steps.size > 1)
    .sort((one, other) => other.share - one.share || (one.name < other.name ? -1 : 1))
    .map(({ name, colour, steps }) => {
      const [darkest, lightest] = [Math.min(...steps), Math.max(...steps)];
      return {
        name,
        steps: Array.from({ length: lightest - darkest + 1 }, (_, index) => {
          const step = darkest + index;
          return { step, wanted: atValue(colour, stepValue(step, plan.scale.steps)).shown };
        }),
      };
    });
}

function hueOf(colour: Colour): string {
  const { hueDegrees } = toMunsell(colour);
  if (hueDegrees === undefined || isNeutral(colour)) return 'grey';
  return munsellHueName(Math.round(hueDegrees / QUARTER_HUE) * QUARTER_HUE);
}
