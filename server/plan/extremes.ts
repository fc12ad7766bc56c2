/** The largest of some numbers, however many; `-Infinity` where there is none. */
export function largestOf(numbers: Iterable<number>): number {
  let largest = -Infinity;
  for (const number of numbers) largest = Math.max(largest, number);
  return largest;
}

/** The smallest of some numbers, however many; `Infinity` where there is none. */
export function smallestOf(numbers: Iterable<number>): number {
  let smallest = Infinity;
  for (const number of numbers) smallest = Math.min(smallest, number);
  return smallest;
}
