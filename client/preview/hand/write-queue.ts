import { t } from '../../../grammar/localised.js';
import type { Handling, Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { gripIn, putDown } from './grips.js';
import { sum } from './place.js';
import type { Made } from './try-feed.js';

/** What is to be written: a change, or how far a grip is to go from where it lies by then. */
export type Wish =
  | { readonly kind: 'change'; readonly change: HandChange }
  | { readonly kind: 'nudge'; readonly grip: string; readonly by: Spot };

/**
 * The drawing that is on the page: of which version, and what can be taken hold of in it, which on a board is nothing.
 */
export interface Ground {
  readonly version: number;
  readonly handling?: Handling | undefined;
}

export interface WriteQueueHost {
  /** Asks for the edit, and gives the number that the answer will bear. */
  readonly ask: (made: Made) => number;
  readonly ground: () => Ground | undefined;
  /** A wish can't be met, and why. */
  readonly refused: (reason: string) => void;
}

/**
 * Writes changes one after the other. Each is made on a drawing of the text that holds the ones before, so none is
 * stale and none is lost; nudges of one grip that come meanwhile become one, as do values and colours tried out on one
 * thing.
 */
export class WriteQueue {
  readonly #host: WriteQueueHost;
  #wishes: Wish[] = [];
  /** The one that is being written, or is written and not drawn yet. */
  #current: { readonly wish: Wish; readonly id: number; readonly version: number } | undefined;
  /** The version of the text that a drawing is waited for. */
  #awaited: number | undefined;
  /** Of the drawing that the last change was made on: drawings of an earlier one are of a text that was opened anew. */
  #madeOn = 0;

  constructor(host: WriteQueueHost) {
    this.#host = host;
  }

  /** Whether anything is not in the drawing yet. */
  get busy(): boolean {
    return this.#current !== undefined || this.#awaited !== undefined || this.#wishes.length > 0;
  }

  add(wish: Wish): void {
    const last = this.#wishes.at(-1);
    const both = last === undefined ? undefined : joined(last, wish);
    if (both === undefined) this.#wishes.push(wish);
    else this.#wishes[this.#wishes.length - 1] = both;
    this.#work();
  }

  /** How far a grip is still to go from where it is drawn. */
  outstanding(grip: string): Spot {
    return [...(this.#current === undefined ? [] : [this.#current.wish]), ...this.#wishes]
      .filter((wish) => wish.kind === 'nudge' && wish.grip === grip)
      .reduce((all, wish) => (wish.kind === 'nudge' ? sum(all, wish.by) : all), { x: 0, y: 0 });
  }

  /** The edit is made: the text has this version now. False for an answer to something else. */
  written(id: number, version: number): boolean {
    if (this.#current?.id !== id || this.#awaited !== undefined) return false;
    this.#awaited = version;
    this.drawn();
    return true;
  }

  /** The edit can't be made. A nudge that the text has overtaken is made anew on the drawing of the new text. */
  refused(id: number, reason: string, isStale: boolean): boolean {
    const current = this.#current;
    if (current?.id !== id || this.#awaited !== undefined) return false;
    if (isStale && current.wish.kind === 'nudge') {
      this.#wishes.unshift(current.wish);
      this.#current = undefined;
      this.#awaited = current.version + 1;
      this.drawn();
      return true;
    }
    this.forget();
    this.#host.refused(reason);
    return true;
  }

  /** Another drawing is on the page. */
  drawn(): void {
    const ground = this.#host.ground();
    if (ground === undefined || this.#awaited === undefined) return;
    const isOpenedAnew = ground.version < this.#madeOn;
    if (ground.version < this.#awaited && !isOpenedAnew) return;
    this.#awaited = undefined;
    this.#current = undefined;
    this.#work();
  }

  /** The other side is gone, or the text can't be written. */
  forget(): void {
    this.#wishes = [];
    this.#current = undefined;
    this.#awaited = undefined;
  }

  #work(): void {
    if (this.#current !== undefined || this.#awaited !== undefined) return;
    const ground = this.#host.ground();
    const wish = this.#wishes[0];
    if (ground === undefined || wish === undefined) return;
    this.#wishes.shift();
    const change = changeOf(wish, ground);
    if (typeof change === 'string') {
      this.forget();
      this.#host.refused(change);
      return;
    }
    const made = { version: ground.version, change };
    this.#madeOn = ground.version;
    this.#current = { wish, id: this.#host.ask(made), version: ground.version };
  }
}

/**
 * Two wishes as one: nudges of a grip add up, and of values or colours of a thing, or places of a corner, the last is
 * meant.
 */
function joined(earlier: Wish, later: Wish): Wish | undefined {
  if (earlier.kind === 'nudge')
    return later.kind === 'nudge' && later.grip === earlier.grip
      ? { ...later, by: sum(earlier.by, later.by) }
      : undefined;
  if (later.kind === 'nudge') return undefined;
  const [before, after] = [earlier.change, later.change];
  if (after.kind === 'sketch corner')
    return before.kind === after.kind && before.corner === after.corner ? later : undefined;
  const isPaint = after.kind === 'value' || after.kind === 'colour';
  return isPaint && before.kind === after.kind && before.subject === after.subject ? later : undefined;
}

/** The change that a wish comes to, or why there is none. */
function changeOf(wish: Wish, { handling }: Ground): HandChange | string {
  if (wish.kind === 'change') return wish.change;
  const grip = handling && gripIn(handling, wish.grip);
  if (grip === undefined) return t('What was to be moved is not in the drawing any more.');
  return grip.fixed ?? putDown(grip, sum(grip.at, wish.by), false);
}
