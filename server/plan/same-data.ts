/** Whether plain data says the same, to the sign of a nought: `Object.is` compares what it holds. */
export function isSameData(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  for (const key of keys) {
    if (!Object.hasOwn(other, key)) return false;
    if (!isSameData(one[key as keyof typeof one], other[key as keyof typeof other])) return false;
  }
  return true;
}

/** Whether two lists are of the very same things, one by one, as `Object.is` compares. */
export function areSameThings(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) if (!Object.is(one[at], other[at])) return false;
  return true;
}
