import type { Lab } from '../../plan/colour/model.js';
import { bestAddition, type FoundAddition } from './addition.js';
import { glazesOf, nearestGlaze, type SeenGlaze } from './glaze-book.js';
import { lifted, missedBy } from './missed.js';
import type { MixingStore, Piecework } from './mixer.js';
import type { UsablePaints } from './palette-set.js';
import type { Found } from './table.js';

/** A mixture that misses its colour by more (`missedBy`) does not reach it: that is seen at a glance. CIEDE2000. */
export const BEYOND_REACH = 5;

/** What a plan asks of its palette. */
export interface Question {
  readonly set: UsablePaints;
  /** The colours of the picture. */
  readonly painted: readonly { readonly lab: Lab; readonly isStated: boolean }[];
  /** Further colours that are told with it: those of strings of values. */
  readonly between: readonly Lab[];
  /** Colours of glazes, as they look over white. */
  readonly glazes: readonly Lab[];
}

/** In the order of what was asked; nothing where the palette holds no paint that can be mixed. */
export interface Answer {
  readonly painted: readonly (Found | undefined)[];
  readonly between: readonly (Found | undefined)[];
  readonly glazes: readonly (SeenGlaze | undefined)[];
  /** See `MixtureTable.reach`. */
  readonly reach: readonly number[];
  readonly addition?: FoundAddition;
}

/** All that an answer depends on, in words. */
export function keyOf({ set, painted, between, glazes }: Question): string {
  return JSON.stringify([
    set.paints.map(({ key, isOpaque }) => [key, isOpaque]),
    set.required,
    painted,
    between,
    glazes,
  ]);
}

/** Looks up what a plan asks, in pieces of some milliseconds; what the store has already costs nothing. */
export function searchMixtures(store: MixingStore, question: Question): Piecework<Answer> {
  return store.recall('answers', keyOf(question), () => search(store, question));
}

function* search(store: MixingStore, question: Question): Piecework<Answer> {
  const { set } = question;
  const table = yield* store.table(set);
  const painted: (Found | undefined)[] = [];
  for (const { lab } of question.painted) painted.push(yield* store.nearest(table, lab));
  const between: (Found | undefined)[] = [];
  for (const wanted of question.between) between.push(yield* store.nearest(table, wanted));
  const glazes = yield* searchGlazes(store, question);
  const missed = question.painted.flatMap(({ lab: wanted, isStated }, at) => {
    const found = painted[at];
    const difference = found && isStated ? missedBy(wanted, found.lab) : 0;
    return difference > BEYOND_REACH ? [{ wanted: lifted(wanted), difference }] : [];
  });
  const key = JSON.stringify([set.paints.map((paint) => paint.key), set.required, missed]);
  const added =
    missed.length === 0 ? {} : yield* store.recall('additions', key, () => bestAddition(set, missed));
  return { painted, between, glazes, reach: table.reach, ...added };
}

function* searchGlazes(store: MixingStore, { set, glazes }: Question): Piecework<Answer['glazes']> {
  if (glazes.length === 0) return [];
  // A glaze is a transparent layer, so opaque paints and whites are for it only where there is nothing else.
  const coloured = set.paints.flatMap(({ isWhite }, index) => (isWhite ? [] : [index]));
  const clear = coloured.filter((index) => !set.paints[index]?.isOpaque);
  const usable = clear.length > 0 ? clear : coloured;
  const key = JSON.stringify(usable.map((index) => set.paints[index]?.key));
  const book = yield* store.recall('glazes', key, () => glazesOf(set.paints, usable));
  return glazes.map((wanted) => nearestGlaze(book, wanted));
}
