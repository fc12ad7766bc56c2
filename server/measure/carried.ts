/** What was worked out for each thing of a list. */
export interface Carried<Thing, Result> {
  readonly things: readonly Thing[];
  /** In the order of the things; the same list as long as nothing in it changes. */
  readonly results: readonly Result[];
}

/**
 * The result of `work` for each thing of a list, carried over from the list before wherever the same thing stands at
 * the same place: of thousands that an edit leaves as they were, each costs one look.
 *
 * @param work may depend on nothing but the thing, or on what `last` was worked out with too
 */
export function carried<Thing, Result>(
  things: readonly Thing[],
  last: Carried<Thing, Result> | undefined,
  work: (thing: Thing, place: number, before: Result | undefined) => Result,
): Carried<Thing, Result> {
  if (things === last?.things) return last;
  const before = last?.things.length === things.length ? last : undefined;
  if (!before) return { things, results: things.map((thing, place) => work(thing, place, undefined)) };
  let results: Result[] | undefined;
  for (let place = 0; place < things.length; place++) {
    const thing = things[place] as Thing;
    if (Object.is(thing, before.things[place])) continue;
    const known = before.results[place] as Result;
    const result = work(thing, place, known);
    if (!Object.is(result, known)) (results ??= before.results.slice())[place] = result;
  }
  return { things, results: results ?? before.results };
}
