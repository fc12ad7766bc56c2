/**
 * The known word that is nearest to a misspelt one, by the letters to put in, take out, change or swap with their
 * neighbour (optimal string alignment): at most 2, and fewer than half of the word. Undefined when none is that near; the first of several.
 */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  const limit = Math.min(2, Math.ceil(word.length / 2) - 1);
  let nearest: string | undefined;
  let best = limit + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= best) continue;
    const changes = editDistance(word, candidate);
    if (changes < best) {
      best = changes;
      nearest = candidate;
    }
  }
  return nearest;
}

function editDistance(one: string, other: string): number {
  let before: readonly number[] = [];
  let previous: readonly number[] = Array.from({ length: other.length + 1 }, (_, index) => index);
  const at = (row: readonly number[], column: number) => row[column] ?? Infinity;
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      const swapped = one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      current.push(
        Math.min(
          at(previous, column) + 1,
          at(current, column - 1) + 1,
          at(previous, column - 1) + (same ? 0 : 1),
          swapped ? at(before, column - 2) + 1 : Infinity,
        ),
      );
    }
    before = previous;
    previous = current;
  }
  return at(previous, other.length);
}
