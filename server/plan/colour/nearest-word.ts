/**
 * The known word that is nearest to a misspelt one, by the letters to put in, take out or change (Levenshtein):
 * at most 2, and fewer than half of the word. Undefined when none is that near; the first of several.
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
  let previous = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const change = one[row - 1] === other[column - 1] ? 0 : 1;
      current.push(
        Math.min(
          (previous[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (previous[column - 1] ?? 0) + change,
        ),
      );
    }
    previous = current;
  }
  return previous[other.length] ?? 0;
}
