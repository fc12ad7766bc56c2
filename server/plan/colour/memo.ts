/**
 * Remembers what `compute` gave for a key. When `capacity` keys are held the store is emptied and fills again:
 * an editor stays open for days, and a plan has far fewer colours than that.
 */
export function memoise<Result>(capacity: number): (key: string, compute: () => Result) => Result {
  const held = new Map<string, Result>();
  return (key, compute) => {
    const known = held.get(key);
    if (known !== undefined || held.has(key)) return known as Result;
    const result = compute();
    if (held.size >= capacity) held.clear();
    held.set(key, result);
    return result;
  };
}
