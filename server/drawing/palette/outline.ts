/** Notches narrower than this many directions to either side are of the mixtures that were tried, not of the paints. */
const NOTCH = 2;

/**
 * The outline of what a palette reaches, without notches. Mixtures are tried in whole parts, of which few may fall in a
 * direction between two that are reached; in other parts the hues between can be mixed too. What juts out stays as it
 * is.
 *
 * @param reach most C*ab in each of some directions of hue, evenly spaced round the wheel
 */
export function outlineOfReach(reach: readonly number[]): readonly number[] {
  return widest(widest(reach, Math.max), Math.min).map((chroma, index) =>
    Math.max(chroma, reach[index] ?? 0),
  );
}

function widest(reach: readonly number[], choose: (...all: number[]) => number): readonly number[] {
  const count = reach.length;
  return reach.map((_, index) =>
    choose(
      ...Array.from(
        { length: 2 * NOTCH + 1 },
        (_, step) => reach[(index + step - NOTCH + count) % count] ?? 0,
      ),
    ),
  );
}
