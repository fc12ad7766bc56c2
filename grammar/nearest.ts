/** A longer word is no slip of the pen, and comparing takes the square of its length. */
const LONGEST_MEANT = 64;

/**
 * The candidate most like `word`, or undefined when none is near enough to be meant. Distance is
 * Damerau-Levenshtein (optimal string alignment) on lower case; a third of the word's length is near enough,
 * one change in a short word.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST_MEANT) return undefined;
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - wanted.length) >= bestDistance) continue;
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/**
 * Insertions, deletions, changes and swaps of neighbours between two words, no stretch edited twice (optimal
 * string alignment; Damerau 1964). Counts UTF-16 code units.
 */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const changed = from[row - 1] === to[column - 1] ? 0 : 1;
      let distance = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + changed,
      );
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) distance = Math.min(distance, (beforeLast[column - 2] ?? 0) + 1);
      current.push(distance);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
