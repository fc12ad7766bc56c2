/** Sums of the same areas in another order differ in their last digits. */
const ROUNDING = 1e-9;

/** Whether the first of two changes has the lower cost, figure by figure. */
export function isCheaper(one: readonly number[], other: readonly number[]): boolean {
  for (const [at, figure] of one.entries()) {
    const difference = figure - (other[at] ?? 0);
    if (Math.abs(difference) > ROUNDING) return difference < 0;
  }
  return false;
}
