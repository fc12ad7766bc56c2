/** Two lists, each sorted, as one sorted list; of what compares alike that of the first list comes first. */
export function merged<Thing>(
  one: readonly Thing[],
  other: readonly Thing[],
  compare: (a: Thing, b: Thing) => number,
): readonly Thing[] {
  if (one.length === 0) return other;
  if (other.length === 0) return one;
  const all: Thing[] = [];
  let next = 0;
  for (const thing of one) {
    while (next < other.length && compare(other[next] as Thing, thing) < 0) all.push(other[next++] as Thing);
    all.push(thing);
  }
  while (next < other.length) all.push(other[next++] as Thing);
  return all;
}
