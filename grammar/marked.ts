/**
 * A sentence that is kept to be `said` later. Apart from what says it, for all that may not load that: what answers
 * before plans can be read, and the thread that measures photographs.
 */
export function marked<English extends string>(english: English): English {
  return english;
}
