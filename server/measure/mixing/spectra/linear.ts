/**
 * Solves a square system of linear equations by elimination with row exchange. `matrix` and `rest` are used up.
 * Undefined when the rows do not determine it.
 */
export function solveLinear(matrix: Float64Array[], rest: Float64Array): Float64Array | undefined {
  const size = rest.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(matrix[row]?.[column] ?? 0) > Math.abs(matrix[pivot]?.[column] ?? 0)) pivot = row;
    }
    exchange(matrix, rest, column, pivot);
    const top = matrix[column];
    const head = top?.[column] ?? 0;
    if (!top || !(Math.abs(head) > 1e-300)) return undefined;
    for (let row = column + 1; row < size; row++) {
      const line = matrix[row];
      const factor = (line?.[column] ?? 0) / head;
      if (!line || factor === 0) continue;
      for (let at = column; at < size; at++) line[at] = (line[at] ?? 0) - factor * (top[at] ?? 0);
      rest[row] = (rest[row] ?? 0) - factor * (rest[column] ?? 0);
    }
  }
  const solution = new Float64Array(size);
  for (let row = size - 1; row >= 0; row--) {
    const line = matrix[row];
    let left = rest[row] ?? 0;
    for (let at = row + 1; at < size; at++) left -= (line?.[at] ?? 0) * (solution[at] ?? 0);
    solution[row] = left / (line?.[row] ?? 1);
  }
  return solution;
}

function exchange(matrix: Float64Array[], rest: Float64Array, one: number, other: number): void {
  const [first, second] = [matrix[one], matrix[other]];
  if (one === other || !first || !second) return;
  [matrix[one], matrix[other]] = [second, first];
  [rest[one], rest[other]] = [rest[other] ?? 0, rest[one] ?? 0];
}
