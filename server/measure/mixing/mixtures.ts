import { type Absorbing, mix, opaqueSpectrum, type Portion } from './kubelka-munk.js';
import { COARSEST, FINEST, MOST_MIXTURES, type Recipe, recipeBook } from './recipes.js';
import { BANDS, labOfSpectrum, type Spectrum, WEIGHTS } from './spectra/bands.js';
import { labOfParts } from '../../plan/colour/cielab.js';
import type { Lab } from '../../plan/colour/model.js';

/** A paint as far as mixtures go. */
export interface MixingPaint {
  /** What it is, whatever it is called: two paints of one key mix alike. */
  readonly key: string;
  readonly absorbing: Absorbing;
  readonly isWhite: boolean;
}

/** Paints of which every mixture holds those `required`, as indices into `paints`. */
export interface PaintSet {
  readonly paints: readonly MixingPaint[];
  readonly required: readonly number[];
}

/** Parts of a paint, which is an index into those of a set. */
export interface PaintParts {
  readonly paint: number;
  readonly parts: number;
}

/** Mixtures of the same paints: those of one, two or three coloured ones, with or without a white. */
export interface Block {
  /** Indices into the paints of the set. */
  readonly coloured: readonly number[];
  readonly white: number | undefined;
  readonly recipes: readonly Recipe[];
  /** The number of its first mixture among all. */
  readonly start: number;
}

/** All mixtures of a set that are tried. */
export interface Blocks {
  readonly all: readonly Block[];
  /** How many mixtures there are. */
  readonly count: number;
}

/** At most so many coloured paints in a mixture. */
const MOST_COLOURED = 3;

/** Mixtures of a set of paints, as finely as their number allows, but not finer than `finest`. */
export function blocksOf(set: PaintSet, finest = FINEST): Blocks {
  for (let fineness = finest; fineness < COARSEST; fineness++) {
    const sets = countSets(set);
    const recipes = recipeBook(fineness);
    const count = sets.reduce((sum, each, size) => sum + each * (recipes[size]?.length ?? 0), 0);
    if (count <= MOST_MIXTURES) return listBlocks(set, fineness);
  }
  return listBlocks(set, COARSEST);
}

/** How many sets of 0, 1, 2 and 3 coloured paints there are, each counted once for every white. */
function countSets({ paints, required }: PaintSet): readonly number[] {
  const whites = Math.max(1, paints.filter(({ isWhite }) => isWhite).length);
  const coloured = paints.length - paints.filter(({ isWhite }) => isWhite).length;
  const fixed = required.filter((index) => paints[index]?.isWhite === false).length;
  return Array.from({ length: MOST_COLOURED + 1 }, (_, size) =>
    size < fixed ? 0 : whites * choose(coloured - fixed, size - fixed),
  );
}

function choose(from: number, count: number): number {
  let ways = 1;
  for (let taken = 0; taken < count; taken++) ways = (ways * (from - taken)) / (taken + 1);
  return ways;
}

function listBlocks({ paints, required }: PaintSet, fineness: number): Blocks {
  const indices = paints.map((_, index) => index);
  const whites = indices.filter((index) => paints[index]?.isWhite);
  const coloured = indices.filter((index) => !paints[index]?.isWhite);
  const fixed = required.filter((index) => coloured.includes(index));
  const fixedWhites = required.filter((index) => whites.includes(index));
  const free = coloured.filter((index) => !fixed.includes(index));
  const recipes = recipeBook(fineness);
  const all: Block[] = [];
  let count = 0;
  const add = (block: Omit<Block, 'start'>): void => {
    if (block.recipes.length === 0) return;
    all.push({ ...block, start: count });
    count += block.recipes.length;
  };
  // Two whites in one mixture are not tried, so none holds both where both are required.
  if (fixedWhites.length > 1) return { all, count };
  for (let size = fixed.length; size <= MOST_COLOURED; size++) {
    const book = recipes[size] ?? [];
    if (book.length === 0) continue;
    const plain = book.filter(({ white }) => white === 0);
    const tinted = book.filter(({ white }) => white > 0);
    for (const others of subsets(free, size - fixed.length)) {
      const inside = [...fixed, ...others].sort((one, other) => one - other);
      if (fixedWhites.length === 0) add({ coloured: inside, white: undefined, recipes: plain });
      for (const white of fixedWhites.length > 0 ? fixedWhites : whites) {
        add({ coloured: inside, white, recipes: tinted });
      }
    }
  }
  return { all, count };
}

function* subsets(of: readonly number[], size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield [];
  else {
    for (let first = from; first <= of.length - size; first++) {
      for (const rest of subsets(of, size - 1, first + 1)) yield [of[first] ?? 0, ...rest];
    }
  }
}

/** Takes the colour of a mixture, by its number among all. */
export type Visit = (lightness: number, a: number, b: number, mixture: number) => void;

/** Mixtures worked out between two yields: some two milliseconds of work. */
const MIXTURES_A_STEP = 4096;

const NO_WHITE: Absorbing = { k: new Float64Array(BANDS), s: new Float64Array(BANDS) };

/**
 * Works out the colour of every mixture, a bounded number of them between two yields.
 *
 * @param weight how many times longer than usual a visit takes; then there are fewer of them between two yields
 */
export function* everyColour(
  { paints }: PaintSet,
  { all }: Blocks,
  visit: Visit,
  weight = 1,
): Generator<void> {
  const most = Math.max(1, Math.floor(MIXTURES_A_STEP / weight));
  const k = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  let since = 0;
  for (const { coloured, white, recipes, start } of all) {
    const tubes = coloured.flatMap((index) => paints[index]?.absorbing ?? []);
    const body = (white === undefined ? undefined : paints[white]?.absorbing) ?? NO_WHITE;
    let laid: readonly number[] | undefined;
    for (let at = 0; at < recipes.length; at++) {
      const recipe = recipes[at];
      if (!recipe) continue;
      // One after the other they differ in the white only, so that the rest is added up once.
      if (recipe.coloured !== laid) addUp(tubes, recipe.coloured, k, s);
      laid = recipe.coloured;
      const [lightness, a, b] = opaqueColour(k, s, body, recipe.white);
      visit(lightness, a, b, start + at);
      if (++since < most) continue;
      since = 0;
      yield;
    }
  }
}

function addUp(
  tubes: readonly Absorbing[],
  parts: readonly number[],
  k: Float64Array,
  s: Float64Array,
): void {
  k.fill(0);
  s.fill(0);
  tubes.forEach((tube, index) => {
    const share = parts[index] ?? 0;
    for (let band = 0; band < k.length; band++) {
      k[band] = (k[band] ?? 0) + share * (tube.k[band] ?? 0);
      s[band] = (s[band] ?? 0) + share * (tube.s[band] ?? 0);
    }
  });
}

/** As `labOfSpectrum(opaqueSpectrum(mix(...)))`, in one go, because there are so many of them. */
function opaqueColour(k: Float64Array, s: Float64Array, body: Absorbing, white: number): Lab {
  const [xs, ys, zs] = WEIGHTS;
  const bands = k.length;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let band = 0; band < bands; band++) {
    const absorbed = (k[band] ?? 0) + white * (body.k[band] ?? 0);
    const scattered = (s[band] ?? 0) + white * (body.s[band] ?? 0);
    const ratio = absorbed / scattered;
    const reflected = 1 / (1 + ratio + Math.sqrt(ratio * (ratio + 2)));
    x += reflected * (xs[band] ?? 0);
    y += reflected * (ys[band] ?? 0);
    z += reflected * (zs[band] ?? 0);
  }
  return labOfParts(x, y, z);
}

/** The paints and parts of a mixture by its number; white last. */
export function partsAt({ all }: Blocks, mixture: number): readonly PaintParts[] {
  let low = 0;
  let high = all.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((all[middle]?.start ?? 0) <= mixture) low = middle;
    else high = middle - 1;
  }
  const block = all[low];
  const recipe = block?.recipes[mixture - block.start];
  if (!block || !recipe) return [];
  return [
    ...block.coloured.map((paint, index) => ({ paint, parts: recipe.coloured[index] ?? 0 })),
    ...(block.white === undefined ? [] : [{ paint: block.white, parts: recipe.white }]),
  ];
}

/** The spectrum of parts of paints in a film that hides what is below it, and its colour. */
export function mixedSpectrum(paints: readonly MixingPaint[], parts: readonly PaintParts[]): Spectrum {
  return opaqueSpectrum(mix(portionsOf(paints, parts)));
}

export function mixedLab(paints: readonly MixingPaint[], parts: readonly PaintParts[]): Lab {
  return labOfSpectrum(mixedSpectrum(paints, parts));
}

/** Parts of paints as what they absorb and scatter. */
export function portionsOf(paints: readonly MixingPaint[], parts: readonly PaintParts[]): readonly Portion[] {
  return parts.flatMap(({ paint, parts: count }) => {
    const tube = paints[paint];
    return tube ? [{ paint: tube.absorbing, parts: count }] : [];
  });
}
