/** Parts of up to three coloured paints, and of white. Whole, in lowest terms. */
export interface Recipe {
  readonly coloured: readonly number[];
  readonly white: number;
}

/** How finely the mixtures of a palette are tried. */
export interface Fineness {
  /** The most parts of two coloured paints together. */
  readonly two: number;
  /** One part of a paint to so many of another, beyond those; strong paints are used by the touch. */
  readonly touches: readonly number[];
  /** The most parts of three coloured paints together; 0 for no mixtures of three. */
  readonly three: number;
  /** One part of a paint and one of another to so many of a third, beyond those. */
  readonly touchesOfTwo: readonly number[];
}

/**
 * Parts of white to all coloured parts: one by one while they are easily counted, then in steps by which a mixture gets
 * lighter about evenly. The last are for strong paints, of which a touch is enough.
 */
export const WHITE_PARTS = [
  0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 24, 30, 36, 44, 54, 66, 80, 100, 130, 170, 220,
] as const;

/** From the finest; a palette takes the first whose mixtures are few enough. */
const FINENESSES: readonly Fineness[] = [
  { two: 9, touches: [9, 10, 12, 15, 18, 22, 28, 35, 45], three: 6, touchesOfTwo: [5, 8, 12, 18] },
  { two: 8, touches: [8, 10, 12, 15, 20, 30, 40], three: 5, touchesOfTwo: [4, 6, 10, 16] },
  { two: 8, touches: [8, 10, 12, 15, 20, 30, 40], three: 4, touchesOfTwo: [] },
  { two: 8, touches: [8, 10, 12, 15, 20, 30, 40], three: 3, touchesOfTwo: [] },
  { two: 6, touches: [8, 12, 20, 40], three: 0, touchesOfTwo: [] },
  { two: 3, touches: [], three: 0, touchesOfTwo: [] },
  { two: 0, touches: [], three: 0, touchesOfTwo: [] },
];

/** Mixtures beyond this many are not worked out for one palette: it bounds time and memory. */
export const MOST_MIXTURES = 300_000;

/** How many whole parts one coloured paint has beside white. */
const MOST_ALONE = 9;

/** The recipes of one, two and three coloured paints, each kind in a fixed order; `[0]` is white alone. */
export type RecipeBook = readonly [
  readonly Recipe[],
  readonly Recipe[],
  readonly Recipe[],
  readonly Recipe[],
];

/** The recipes of a fineness. */
function recipesOf(fineness: Fineness): RecipeBook {
  return [
    [{ coloured: [], white: 1 }],
    withWhite(Array.from({ length: MOST_ALONE }, (_, parts) => [parts + 1])),
    withWhite([
      ...sums(2, fineness.two),
      ...fineness.touches.flatMap((parts) =>
        parts + 1 > fineness.two
          ? [
              [1, parts],
              [parts, 1],
            ]
          : [],
      ),
    ]),
    withWhite([
      ...sums(3, fineness.three),
      ...fineness.touchesOfTwo.flatMap((parts) =>
        parts + 2 > fineness.three
          ? [
              [1, 1, parts],
              [1, parts, 1],
              [parts, 1, 1],
            ]
          : [],
      ),
    ]),
  ];
}

/** All ways to give `count` paints whole parts, at least one each, that add up to no more than `most`. */
function sums(count: number, most: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return Array.from({ length: Math.max(0, most - count + 1) }, (_, index) => index + 1).flatMap((first) =>
    sums(count - 1, most - first).map((rest) => [first, ...rest]),
  );
}

function withWhite(all: readonly (readonly number[])[]): readonly Recipe[] {
  return all.flatMap((coloured) =>
    WHITE_PARTS.flatMap((white) => (commonDivisor([...coloured, white]) === 1 ? [{ coloured, white }] : [])),
  );
}

function commonDivisor(all: readonly number[]): number {
  return all.reduce((one, other) => {
    let [divisor, rest] = [one, other];
    while (rest > 0) [divisor, rest] = [rest, divisor % rest];
    return divisor;
  }, 0);
}

/** The recipes of every fineness, the finest first; worked out when they are first wanted. */
const books: (RecipeBook | undefined)[] = FINENESSES.map(() => undefined);

export const FINEST = 0;
export const COARSEST = FINENESSES.length - 1;

/** The recipes of a fineness, `FINEST` to `COARSEST`. */
export function recipeBook(fineness: number): RecipeBook {
  const at = Math.min(COARSEST, Math.max(FINEST, fineness));
  return (books[at] ??= recipesOf(FINENESSES[at] ?? { two: 0, touches: [], three: 0, touchesOfTwo: [] }));
}
