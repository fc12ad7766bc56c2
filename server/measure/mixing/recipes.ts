/** Parts of up to three coloured paints, and of white. Whole, in lowest terms. */
export interface Recipe {
  readonly coloured: readonly number[];
  readonly white: number;
}

/** How finely the mixtures of a palette are tried: what parts a paint may have in mixtures of two and of three. */
interface Fineness {
  readonly two: readonly number[];
  readonly three: readonly number[];
}

/**
 * Parts of white: one by one while they are easily counted, then in steps by which a mixture gets lighter about evenly.
 * The last are for strong paints, of which a touch is enough.
 */
const WHITE_PARTS = [
  0, 1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 26, 34, 44, 58, 76, 100, 140, 200, 280, 400,
] as const;

/** White to one coloured part: less makes no difference, and more drowns any paint. */
const LEAST_WHITE = 0.08;
const MOST_WHITE = 200;

const MANY_PARTS = [1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 18, 22, 28, 36, 45, 60] as const;
const SOME_PARTS = [1, 2, 3, 4, 5, 7, 10, 16, 28, 45] as const;

/**
 * From the finest; a palette takes the first whose mixtures are few enough: one of three colours and white the first,
 * one of six the third, one of twelve the sixth. Parts grow by factors rather than by ones, since paints differ in
 * strength: a touch of blue in much yellow is a green too.
 */
const FINENESSES: readonly Fineness[] = [
  { two: MANY_PARTS, three: [1, 2, 3, 4, 5, 6, 8, 10, 13, 17, 22, 28, 36] },
  { two: MANY_PARTS, three: [1, 2, 3, 4, 6, 8, 12, 18, 26, 40] },
  { two: MANY_PARTS, three: [1, 2, 3, 5, 8, 13, 21, 34] },
  { two: MANY_PARTS, three: [1, 2, 4, 8, 16, 32] },
  { two: SOME_PARTS, three: [1, 2, 4, 9, 20] },
  { two: SOME_PARTS, three: [1, 2, 4, 8] },
  { two: SOME_PARTS, three: [1, 2, 4] },
  { two: SOME_PARTS, three: [1, 2] },
  { two: SOME_PARTS, three: [] },
  { two: [1, 2, 4], three: [] },
  { two: [], three: [] },
];

/** Mixtures beyond this many are not worked out for one palette: it bounds time and memory. */
export const MOST_MIXTURES = 260_000;

/** So many parts of a coloured paint that is alone with white, from one. */
const MOST_ALONE = 9;

/** The recipes of none, one, two and three coloured paints, each kind in a fixed order. */
export type RecipeBook = readonly [
  readonly Recipe[],
  readonly Recipe[],
  readonly Recipe[],
  readonly Recipe[],
];

/** The recipes of every fineness, the finest first; worked out when they are first wanted. */
const books: (RecipeBook | undefined)[] = FINENESSES.map(() => undefined);

export const FINEST = 0;
export const COARSEST = FINENESSES.length - 1;
/** Fine enough to choose a paint by, not to mix by. */
export const ROUGH = 6;

/** The recipes of a fineness, `FINEST` to `COARSEST`. */
export function recipeBook(fineness: number): RecipeBook {
  const at = Math.min(COARSEST, Math.max(FINEST, fineness));
  return (books[at] ??= recipesOf(FINENESSES[at] ?? { two: [], three: [] }));
}

function recipesOf({ two, three }: Fineness): RecipeBook {
  const alone = Array.from({ length: MOST_ALONE }, (_, parts) => parts + 1);
  return [
    [{ coloured: [], white: 1 }],
    withWhite(choices(alone, 1)),
    withWhite(choices(two, 2)),
    withWhite(choices(three, 3)),
  ];
}

/** All ways to give each of `count` paints one of these parts. */
function choices(parts: readonly number[], count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return parts.flatMap((first) => choices(parts, count - 1).map((rest) => [first, ...rest]));
}

/** With every number of parts of white, those in lowest terms. */
function withWhite(all: readonly (readonly number[])[]): readonly Recipe[] {
  return all.flatMap((coloured) => {
    const sum = coloured.reduce((total, parts) => total + parts, 0);
    return WHITE_PARTS.filter(
      (white) => white === 0 || (white >= LEAST_WHITE * sum && white <= MOST_WHITE * sum),
    )
      .filter((white) => commonDivisor([...coloured, white]) === 1)
      .map((white) => ({ coloured, white }));
  });
}

function commonDivisor(all: readonly number[]): number {
  return all.reduce((one, other) => {
    let [divisor, rest] = [one, other];
    while (rest > 0) [divisor, rest] = [rest, divisor % rest];
    return divisor;
  }, 0);
}
