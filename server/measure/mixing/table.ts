import { labDifference } from '../../plan/colour/difference.js';
import type { Lab } from '../../plan/colour/model.js';
import {
  type Blocks,
  blocksOf,
  everyColour,
  mixedLab,
  type PaintParts,
  type PaintSet,
  partsAt,
} from './mixtures.js';
import { leastDifference, mayBeWithin } from './quick-difference.js';

/** A mixture found for a colour. */
export interface Found {
  /** By its index in the paints of the table, white last. */
  readonly parts: readonly PaintParts[];
  /** The colour that it is predicted to dry to. */
  readonly lab: Lab;
  /** CIEDE2000 from the colour that was asked for. */
  readonly difference: number;
}

/** Mixtures within this of the nearest count as as good as it: simpler is better. CIEDE2000. */
const AS_GOOD = 0.3;

/** So do all within this of the colour itself: about 1 is the least that is seen side by side. */
const NOT_SEEN = 1;

/** Up to which difference a mixture is as good as the nearest one. */
export function goodUpTo(nearest: number): number {
  return Math.max(nearest + AS_GOOD, NOT_SEEN);
}

/** Directions of hue at which the reach of a palette is told. */
const REACH_HUES = 72;

/** Mixtures put in their place between two yields. */
const MOVED_A_STEP = 65536;

/** Colours looked up that are kept; many times those of one plan. */
const MOST_KEPT = 4096;

const SHELVES_A_LIGHTNESS = 20;
const SHELVES = 100 * SHELVES_A_LIGHTNESS + 1;

function shelfOf(lightness: number): number {
  return Math.min(SHELVES - 1, Math.max(0, Math.floor(lightness * SHELVES_A_LIGHTNESS)));
}

/**
 * All mixtures of a palette with their colours, laid out by lightness so that the nearest to a colour is found fast.
 */
export class MixtureTable {
  readonly #set: PaintSet;
  readonly #blocks: Blocks;
  /** Shelf by shelf; the mixtures on shelf i begin at `#shelves[i]`. */
  readonly #shelves: Uint32Array;
  /** L*, a*, b* one after the other. */
  readonly #labs: Float32Array;
  readonly #mixtures: Uint32Array;
  readonly #found = new Map<string, Found | undefined>();

  /** The most C*ab among all mixtures within 2.5 degrees of each of 72 hue angles of CIELAB, whatever the lightness. */
  readonly reach: readonly number[];

  private constructor(
    set: PaintSet,
    blocks: Blocks,
    shelves: Uint32Array,
    labs: Float32Array,
    mixtures: Uint32Array,
    reach: readonly number[],
  ) {
    this.#set = set;
    this.#blocks = blocks;
    this.#shelves = shelves;
    this.#labs = labs;
    this.#mixtures = mixtures;
    this.reach = reach;
  }

  /** Works out a table, a bounded piece between two yields; the last gives it. */
  static *build(set: PaintSet): Generator<void, MixtureTable> {
    const blocks = blocksOf(set);
    const unsorted = new Float32Array(3 * blocks.count);
    const shelves = new Uint32Array(SHELVES + 1);
    const reach = new Float64Array(REACH_HUES);
    yield* everyColour(set, blocks, (lightness, a, b, mixture) => {
      unsorted[3 * mixture] = lightness;
      unsorted[3 * mixture + 1] = a;
      unsorted[3 * mixture + 2] = b;
      // By what is kept of it, in single precision, as it will be put in its place.
      const shelf = shelfOf(unsorted[3 * mixture] ?? 0) + 1;
      shelves[shelf] = (shelves[shelf] ?? 0) + 1;
      const hue = Math.round((Math.atan2(b, a) / (2 * Math.PI) + 1) * REACH_HUES) % REACH_HUES;
      reach[hue] = Math.max(reach[hue] ?? 0, Math.sqrt(a * a + b * b));
    });
    for (let shelf = 0; shelf < SHELVES; shelf++) {
      shelves[shelf + 1] = (shelves[shelf + 1] ?? 0) + (shelves[shelf] ?? 0);
    }
    yield;
    const labs = new Float32Array(unsorted.length);
    const mixtures = new Uint32Array(blocks.count);
    const next = shelves.slice();
    for (let mixture = 0; mixture < blocks.count; mixture++) {
      const shelf = shelfOf(unsorted[3 * mixture] ?? 0);
      const place = next[shelf] ?? 0;
      next[shelf] = place + 1;
      for (let axis = 0; axis < 3; axis++) labs[3 * place + axis] = unsorted[3 * mixture + axis] ?? 0;
      mixtures[place] = mixture;
      if (mixture % MOVED_A_STEP === MOVED_A_STEP - 1) yield;
    }
    return new MixtureTable(set, blocks, shelves, labs, mixtures, [...reach]);
  }

  /** How many mixtures it holds. */
  get count(): number {
    return this.#blocks.count;
  }

  /** Whether the mixture nearest to a colour has been looked up already. */
  knows(wanted: Lab): boolean {
    return this.#found.has(wanted.join(' '));
  }

  /** As `nearest`, and kept. */
  find(wanted: Lab): Found | undefined {
    const key = wanted.join(' ');
    if (this.#found.has(key)) return this.#found.get(key);
    const found = this.nearest(wanted);
    if (this.#found.size >= MOST_KEPT) this.#found.clear();
    this.#found.set(key, found);
    return found;
  }

  /**
   * The mixture nearest to a colour by CIEDE2000, or a simpler one that is as good: among those within 0.3 of the
   * nearest or within 1 of the colour the one with the fewest paints, then with the fewest parts, then the nearest.
   * Nothing when the table is empty.
   */
  nearest(wanted: Lab): Found | undefined {
    const near: { place: number; difference: number }[] = [];
    let best = Infinity;
    const look = (shelf: number): void => {
      const end = this.#shelves[shelf + 1] ?? 0;
      for (let place = this.#shelves[shelf] ?? 0; place < end; place++) {
        const lightness = this.#labs[3 * place] ?? 0;
        const a = this.#labs[3 * place + 1] ?? 0;
        const b = this.#labs[3 * place + 2] ?? 0;
        if (!mayBeWithin(goodUpTo(best), wanted, lightness, a, b)) continue;
        const difference = labDifference(wanted, [lightness, a, b]);
        if (difference > goodUpTo(best)) continue;
        near.push({ place, difference });
        best = Math.min(best, difference);
      }
    };
    const middle = shelfOf(wanted[0]);
    look(middle);
    let [lower, higher] = [middle - 1, middle + 1];
    // Shelf by shelf away from the colour, until lightness alone is farther than the nearest mixture.
    while (lower >= 0 || higher < SHELVES) {
      const top = (lower + 1) / SHELVES_A_LIGHTNESS;
      if (lower >= 0 && leastDifference(wanted[0], top) > goodUpTo(best)) lower = -1;
      if (lower >= 0) look(lower--);
      const bottom = higher / SHELVES_A_LIGHTNESS;
      if (higher < SHELVES && leastDifference(wanted[0], bottom) > goodUpTo(best)) higher = SHELVES;
      if (higher < SHELVES) look(higher++);
    }
    return this.#simplest(
      wanted,
      near.filter(({ difference }) => difference <= goodUpTo(best)),
    );
  }

  #simplest(
    wanted: Lab,
    near: readonly { readonly place: number; readonly difference: number }[],
  ): Found | undefined {
    const all = near.map(({ place, difference }) => {
      const mixture = this.#mixtures[place] ?? 0;
      const parts = partsAt(this.#blocks, mixture);
      return { parts, difference, mixture, sum: parts.reduce((sum, each) => sum + each.parts, 0) };
    });
    all.sort(
      (one, other) =>
        one.parts.length - other.parts.length ||
        one.sum - other.sum ||
        one.difference - other.difference ||
        one.mixture - other.mixture,
    );
    const [first] = all;
    if (!first) return undefined;
    const lab = mixedLab(this.#set.paints, first.parts);
    return { parts: first.parts, lab, difference: labDifference(wanted, lab) };
  }
}
