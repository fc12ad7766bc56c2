import { differenceInWords, partsInWords } from '../../findings/words/paints.js';
import type { Mixture, Swatch } from '../../measure/mixing/mixing.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';

/** The parts of a mixture, as they are broken into lines: after a colon, never before it. */
export function partsToWrap({ parts }: Pick<Mixture, 'parts'>, plan: Plan): string {
  return partsInWords(parts, plan).replaceAll(' : ', '\u00A0: ');
}

/** `2.1 off, hardly to be seen`; `about 2.1 off` where it is an estimate. */
export function predictedInWords(difference: number, { isEstimate }: Pick<Mixture, 'isEstimate'>): string {
  return `${isEstimate ? 'about ' : ''}${differenceInWords(difference)}`;
}

/**
 * What each colour of the picture is called: by the colour that the plan names, with its step where that colour is
 * painted in more than one value, else by the largest object that is painted with it.
 */
export function swatchNames(swatches: readonly Swatch[], plan: Plan): readonly string[] {
  const named = swatches.map(({ objects, isGround }) => {
    const largest = plan.objects[objects[0] ?? -1];
    const colour = plan.colours[largest?.colour?.named ?? -1]?.name;
    return { colour, step: largest?.step, plain: largest?.name ?? (isGround ? 'ground' : '') };
  });
  return named.map(({ colour, step, plain }) => {
    if (colour === undefined) return plain;
    const isAlone = named.filter((other) => other.colour === colour).length === 1;
    return isAlone || step === undefined ? colour : `${colour} at step ${plainNumber(step, 1)}`;
  });
}

/** Keys of the swatches, which stay while their colours stay. */
export function swatchKeys(hexes: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  return hexes.map((hex) => {
    const count = (counts.get(hex) ?? 0) + 1;
    counts.set(hex, count);
    return `swatch:${hex}${count === 1 ? '' : `:${count}`}`;
  });
}
