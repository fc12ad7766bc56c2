/** So that planes of the same value are told as such in spite of rounding. */
const ROUNDING = 1e-9;

/**
 * Which planes are not in the order that the plan states, by the index of the farther of two neighbours. `values` are
 * the mean Munsell values of the planes, the farthest first; a plane without one is passed over.
 */
export function disorderedPlanes(
  trend: 'lighten' | 'darken' | undefined,
  values: readonly (number | undefined)[],
): readonly number[] {
  if (trend === undefined) return [];
  const valued = values.flatMap((value, plane) => (value === undefined ? [] : { plane, value }));
  return valued.flatMap(({ plane, value }, at) => {
    const nearer = valued[at + 1];
    if (!nearer) return [];
    const further = trend === 'lighten' ? value - nearer.value : nearer.value - value;
    return further > ROUNDING ? [] : plane;
  });
}
