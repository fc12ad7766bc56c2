import type { Lab } from '../../plan/colour/model.js';
import type { PaintSet } from './mixtures.js';
import { type Found, MixtureTable } from './table.js';

/** Work in pieces of some milliseconds, one between two yields. */
export type Piecework<Result> = Generator<void, Result>;

/**
 * Tables of all mixtures of a palette kept at a time, some four megabytes each; the one used longest ago goes first.
 */
const MOST_TABLES = 3;
const MOST_RESULTS = 64;

/** What has been worked out about palettes, by what it depends on and whatever plan asked for it. */
export class MixingStore {
  readonly #tables = new Kept<MixtureTable>(MOST_TABLES);
  readonly #results = new Kept<unknown>(MOST_RESULTS);
  readonly #worked = new Map<string, number>();

  /** The table of all mixtures of a set of paints. */
  *table(set: PaintSet): Piecework<MixtureTable> {
    const key = JSON.stringify([set.paints.map((paint) => paint.key), set.required]);
    const kept = this.#tables.get(key);
    if (kept) return kept;
    const table = yield* MixtureTable.build(set);
    this.#count('tables');
    this.#tables.set(key, table);
    return table;
  }

  /** The mixture of a table that comes nearest to a colour. */
  *nearest(table: MixtureTable, wanted: Lab): Piecework<Found | undefined> {
    if (table.knows(wanted)) return table.find(wanted);
    const found = table.find(wanted);
    this.#count('colours');
    yield;
    return found;
  }

  /** The result of other work on palettes, done only when it is not kept. `key` holds all that it depends on. */
  *recall<Result>(subject: string, key: string, work: () => Piecework<Result>): Piecework<Result> {
    const name = `${subject}\n${key}`;
    const kept = this.#results.get(name);
    if (kept !== undefined) return kept as Result;
    const result = yield* work();
    this.#count(subject);
    this.#results.set(name, result);
    return result;
  }

  #count(subject: string): void {
    this.#worked.set(subject, (this.#worked.get(subject) ?? 0) + 1);
  }

  /** How often work of a kind has been done so far: `tables`, `colours`, `additions`, `glazes`. */
  worked(subject: string): number {
    return this.#worked.get(subject) ?? 0;
  }
}

/** Keeps so many things, those used last. */
class Kept<Thing> {
  readonly #held = new Map<string, Thing>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(key: string): Thing | undefined {
    const thing = this.#held.get(key);
    if (thing === undefined) return undefined;
    // Taken out and put back: a Map keeps the order in which things were put in.
    this.#held.delete(key);
    this.#held.set(key, thing);
    return thing;
  }

  set(key: string, thing: Thing): void {
    this.#held.delete(key);
    this.#held.set(key, thing);
    for (const oldest of this.#held.keys()) {
      if (this.#held.size <= this.#most) break;
      this.#held.delete(oldest);
    }
  }
}

/** Pieces that a patient mixer does at once: enough for a colour or two of a palette that it knows. */
const PIECES_AT_ONCE = 3;

/**
 * Does the work of finding mixtures, either at once or beside the typing. It changes no result, only when it is there.
 *
 * An **eager** mixer answers everything at once: for the command line, drawings, tests, and what is only tried.
 *
 * A **patient** one is for an editor, and serves one document. Asked for something that takes longer than a moment it
 * says nothing and notes the work. `step()` then does one bounded piece of it, a few milliseconds, and says whether
 * more is left; once it says no, measuring the same plan again finds all of it there. What the plan no longer asks for
 * when it is measured again is forgotten. It knows no clock and calls nobody: whoever owns it decides when a piece is
 * done.
 */
export class Mixer {
  readonly store: MixingStore;
  readonly #isPatient: boolean;
  #open = new Map<string, Piecework<unknown>>();
  #done = new Map<string, unknown>();

  private constructor(store: MixingStore, isPatient: boolean) {
    this.store = store;
    this.#isPatient = isPatient;
  }

  /** @param store shared by several mixers, so that documents of the same paints share their tables */
  static eager(store: MixingStore = new MixingStore()): Mixer {
    return new Mixer(store, false);
  }

  static patient(store: MixingStore = new MixingStore()): Mixer {
    return new Mixer(store, true);
  }

  /** An eager one on what this one knows, for a version that is only tried; this one's work stays as it is. */
  aside(): Mixer {
    return Mixer.eager(this.store);
  }

  /** Whether work is noted that `step` has yet to do. */
  get hasWork(): boolean {
    return this.#open.size > 0;
  }

  /** Does one piece of the work that is noted, a few milliseconds of it; says whether more is left. */
  step(): boolean {
    const [next] = this.#open;
    if (!next) return false;
    const [key, work] = next;
    const piece = work.next();
    if (piece.done) {
      this.#open.delete(key);
      this.#done.set(key, piece.value);
    }
    return this.hasWork;
  }

  /** The result of work on one plan, or nothing while it is noted only; asking replaces what was noted before. */
  ask<Result>(key: string, start: () => Piecework<Result>): Result | undefined {
    if (!this.#isPatient) return finish(start());
    const done = this.#done.get(key);
    const open = (this.#open.get(key) as Piecework<Result> | undefined) ?? start();
    this.#open = new Map();
    this.#done = new Map();
    if (done !== undefined) {
      this.#done.set(key, done);
      return done as Result;
    }
    for (let piece = 0; piece < PIECES_AT_ONCE; piece++) {
      const next = open.next();
      if (!next.done) continue;
      this.#done.set(key, next.value);
      return next.value;
    }
    this.#open.set(key, open);
    return undefined;
  }

  /** Forgets the work that is noted, as when a plan has no palette any more. */
  rest(): void {
    this.#open = new Map();
  }
}

function finish<Result>(work: Piecework<Result>): Result {
  for (;;) {
    const piece = work.next();
    if (piece.done) return piece.value;
  }
}
