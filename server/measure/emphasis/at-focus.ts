/** Part of the diagonal within which what is seen of an object brings it to the focal point. */
export const AT_FOCUS = 0.05;
/** So that what is exactly as far counts in spite of rounding. */
const ROUNDING = 1e-9;

/** Whether a distance from the focal point, part of the diagonal, is no more than 5 %. */
export function isAtFocus(distanceShare: number): boolean {
  return distanceShare <= AT_FOCUS + ROUNDING;
}
