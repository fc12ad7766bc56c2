import type { Lab } from '../../plan/colour/colour.js';
import { labDifference } from '../../plan/colour/difference.js';
import { fractionalStep, valueOfLab } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';
import type { Memory } from '../memory.js';
import type { Mask } from './masks.js';
import { meanColour, pixelCount, type Pixels, stepBorders } from './pixels.js';
import type { RecordObject } from './record.js';
import { nearestRole, type RoleColour } from './roles.js';
import type { Target } from './targets.js';

/** Pixels without the rim from which on an object is measured. */
const ENOUGH = 40;
/** What has to change of an object to be told: a quarter of a step, or two units of CIEDE2000, which is hardly seen. */
const STEPS_MOVED = 0.25;
const COLOUR_MOVED = 2;

/** A photograph as objects are measured in it. */
export interface InPhotograph {
  readonly pixels: Pixels;
  readonly masks: readonly Mask[];
  /** Tells photographs apart in the memory. */
  readonly key: string;
}

/** What a photograph shows of each object that enough is seen of, held to what is to stand there. */
export function recordObjects(
  plan: Plan,
  shares: readonly number[],
  {
    targets,
    colours,
    now,
    before,
  }: {
    readonly targets: readonly Target[];
    readonly colours: readonly RoleColour[];
    readonly now: InPhotograph;
    readonly before?: InPhotograph | undefined;
  },
  memory: Memory,
): readonly RecordObject[] {
  const means = meansOf(plan, now, memory);
  const earlier = before && meansOf(plan, before, memory);
  return plan.objects.flatMap(({ index }): readonly RecordObject[] => {
    const mean = means.get(index);
    if (!mean) return [];
    const { colour, mask } = mean;
    const value = valueOfLab(colour);
    const target = targets[index] ?? { worked: false, counts: 'nothing' };
    const against = heldTo(colour, target, plan.scale.steps);
    const then = earlier?.get(index);
    const nearest = nearestRole(colour, colours);
    const since = then && heldTo(then.colour, target, plan.scale.steps);
    return [
      {
        object: index,
        share: shares[index] ?? 0,
        colour,
        value,
        step: fractionalStep(value, plan.scale.steps),
        worked: target.worked,
        ...(nearest === undefined ? {} : { nearestRole: nearest }),
        ...(against ? { against } : {}),
        ...(against && since
          ? {
              since: {
                stepsOff: since.stepsOff,
                ...(since.difference === undefined ? {} : { difference: since.difference }),
                went: wentFrom(since, against),
              },
            }
          : {}),
        get steps() {
          return memory.recall(
            'steps of an object',
            `${now.key}\n${index}`,
            [now.pixels, mask, plan.scale.steps],
            () => stepsIn(now.pixels, mask, plan.scale.steps),
          );
        },
      },
    ];
  });
}

type Against = NonNullable<RecordObject['against']>;

/** How a mean colour stands to what is to be there; nothing where nothing is. */
function heldTo(colour: Lab, { shown, counts }: Target, steps: number): Against | undefined {
  if (!shown || counts === 'nothing') return undefined;
  const wanted = fractionalStep(valueOfLab(shown), steps);
  const value = { step: wanted, stepsOff: fractionalStep(valueOfLab(colour), steps) - wanted };
  if (counts === 'value') return value;
  return {
    ...value,
    colour: shown,
    difference: labDifference(shown, colour),
    hueAndChroma: labDifference(shown, [shown[0], colour[1], colour[2]]),
  };
}

function wentFrom(then: Against, now: Against): 'nearer' | 'away' | 'neither' {
  const [away, least] =
    now.difference === undefined || then.difference === undefined
      ? [Math.abs(now.stepsOff) - Math.abs(then.stepsOff), STEPS_MOVED]
      : [now.difference - then.difference, COLOUR_MOVED];
  if (Math.abs(away) < least) return 'neither';
  return away < 0 ? 'nearer' : 'away';
}

interface Mean {
  readonly colour: Lab;
  readonly mask: Mask;
}

function meansOf(
  plan: Plan,
  { pixels, masks, key }: InPhotograph,
  memory: Memory,
): ReadonlyMap<number, Mean> {
  return new Map(
    masks.flatMap((mask) => {
      if (pixelCount(mask.inner) < ENOUGH) return [];
      const name = `${key}\n${plan.objects[mask.object]?.key ?? ''}`;
      const colour = memory.recall('mean of an object', name, [pixels, mask], () =>
        meanColour(pixels, mask.inner),
      );
      return colour ? [[mask.object, { colour, mask }] as const] : [];
    }),
  );
}

/** How what is seen in a mask, rim and all, is shared out among the steps, as parts of the picture. */
function stepsIn({ lab, width, height }: Pixels, { runs }: Mask, steps: number): readonly number[] {
  const borders = stepBorders(steps);
  const counts = Array.from({ length: steps }, () => 0);
  for (let i = 0; i + 1 < runs.length; i += 2) {
    for (let pixel = runs[i] as number; pixel < (runs[i + 1] as number); pixel++) {
      const lightness = lab[3 * pixel] as number;
      let step = 0;
      while (step < borders.length && lightness >= (borders[step] as number)) step++;
      counts[step] = (counts[step] as number) + 1;
    }
  }
  return counts.map((count) => count / (width * height));
}
