/** Where a number in `value` is not finite, as a path of keys. */
export function unfinished(value: unknown, at = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [at];
  if (ArrayBuffer.isView(value)) return [...(value as Float64Array)].every(Number.isFinite) ? [] : [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => unfinished(part, `${at}.${key}`));
}
