import isSame from 'fast-deep-equal';
import type { Grip, Handling, Painted } from './handling/handles.js';
import type { Mark } from './mark-kinds.js';
import type { Scene, SceneLayer, Subject } from './scene.js';

/**
 * What makes one scene of another, as plain JSON data. Most of what is drawn stays as it is when a plan is edited; only
 * what does not is in here, and all that is no long list.
 */
export interface SceneChange {
  readonly rest: Omit<Scene, 'layers' | 'subjects' | 'handling'>;
  /** Back to front; all the layers of the new scene. */
  readonly layers: readonly LayerChange[];
  readonly subjects: ListChange<Entry<Subject>>;
  readonly handling?: HandlingChange;
}

export interface LayerChange extends Omit<SceneLayer, 'marks'> {
  readonly marks: ListChange<Mark>;
}

export interface HandlingChange {
  readonly rest: Omit<Handling, 'grips' | 'painted'>;
  readonly grips: ListChange<Grip>;
  readonly painted: ListChange<Entry<Painted>>;
}

/** One of what is kept by key, in its order. */
export type Entry<T> = readonly [key: string, value: T];

/** The list as it is now, from its beginning to its end. */
export type ListChange<T> = readonly Stretch<T>[];

/** So many items of the list before, from that index on; or items that were not in it as they are now. */
export type Stretch<T> =
  { readonly kept: readonly [from: number, count: number] } | { readonly made: readonly T[] };

/** A list is not longer than that: no scene has so much in it, however often a change asks for the same. */
const LONGEST = 1_000_000;

/** @returns what makes `after` of `before`; what the two share is not gone through */
export function sceneChange(before: Scene, after: Scene): SceneChange {
  const { layers, subjects, handling, ...rest } = after;
  return {
    rest,
    layers: layers.map(({ marks, ...layer }) => ({
      ...layer,
      marks: listChange(marksOf(before, layer.name), marks, byOwnKey),
    })),
    subjects: entriesChange(before.subjects, subjects),
    ...(handling === undefined ? {} : { handling: handlingChange(before.handling, handling) }),
  };
}

/** @returns the scene that a change makes of another; undefined where it is a change of some other scene */
export function changedScene(
  before: Scene,
  { rest, layers, subjects, handling }: SceneChange,
): Scene | undefined {
  try {
    return {
      ...rest,
      layers: layers.map(({ marks, ...layer }) => ({
        ...layer,
        marks: changedList(marksOf(before, layer.name), marks),
      })),
      subjects: Object.fromEntries(changedList(Object.entries(before.subjects), subjects)),
      ...(handling === undefined ? {} : { handling: changedHandling(before.handling, handling) }),
    };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** @returns the scene that is told whole, or by what makes it of the one before; undefined where it is of some other */
export function toldScene(
  told: { readonly scene: Scene } | { readonly change: SceneChange },
  before: Scene | undefined,
): Scene | undefined {
  if ('scene' in told) return told.scene;
  return before && changedScene(before, told.change);
}

function handlingChange(before: Handling | undefined, { grips, painted, ...rest }: Handling): HandlingChange {
  return {
    rest,
    grips: listChange(before?.grips ?? [], grips, byOwnKey),
    painted: entriesChange(before?.painted ?? {}, painted),
  };
}

function changedHandling(before: Handling | undefined, { rest, grips, painted }: HandlingChange): Handling {
  return {
    ...rest,
    grips: changedList(before?.grips ?? [], grips),
    painted: Object.fromEntries(changedList(Object.entries(before?.painted ?? {}), painted)),
  };
}

const byOwnKey = ({ key }: { readonly key: string }): string => key;
const byEntry = ([key]: Entry<unknown>): string => key;

function marksOf({ layers }: Scene, name: SceneLayer['name']): readonly Mark[] {
  return layers.find((layer) => layer.name === name)?.marks ?? [];
}

function entriesChange<T>(
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): ListChange<Entry<T>> {
  const entries = Object.entries(after);
  return listChange(before === after ? entries : Object.entries(before), entries, byEntry);
}

/** Items that have kept their key are compared, which are mostly those in the same place. */
function listChange<T>(before: readonly T[], after: readonly T[], keyOf: (item: T) => string): ListChange<T> {
  if (before === after && after.length > 0) return [{ kept: [0, after.length] }];
  const stretches = new Stretches<T>();
  let places: ReadonlyMap<string, number> | undefined;
  let next = 0;
  for (const item of after) {
    let known = before[next];
    let at = next;
    if (known === undefined || (known !== item && keyOf(known) !== keyOf(item))) {
      places ??= new Map(before.map((one, index) => [keyOf(one), index]));
      at = places.get(keyOf(item)) ?? before.length;
      known = before[at];
    }
    if (known !== undefined && isSame(known, item)) stretches.keep(at);
    else stretches.make(item);
    if (known !== undefined) next = at + 1;
  }
  return stretches.list;
}

/** @throws {RangeError} where the change is one of another list */
function changedList<T>(before: readonly T[], change: ListChange<T>): readonly T[] {
  const items: T[] = [];
  for (const stretch of change) {
    const added =
      'made' in stretch ? stretch.made : before.slice(stretch.kept[0], stretch.kept[0] + stretch.kept[1]);
    if ('kept' in stretch && added.length !== stretch.kept[1])
      throw new RangeError('a change of a longer list');
    if (items.length + added.length > LONGEST) throw new RangeError('too long a list');
    for (const item of added) items.push(item);
  }
  return items;
}

/** Puts together what follows one another. */
class Stretches<T> {
  readonly list: Stretch<T>[] = [];
  #kept: [from: number, count: number] | undefined;
  #made: T[] | undefined;

  keep(index: number): void {
    if (this.#kept !== undefined && index === this.#kept[0] + this.#kept[1]) {
      this.#kept[1] += 1;
      return;
    }
    this.#kept = [index, 1];
    this.#made = undefined;
    this.list.push({ kept: this.#kept });
  }

  make(item: T): void {
    if (this.#made !== undefined) {
      this.#made.push(item);
      return;
    }
    this.#made = [item];
    this.#kept = undefined;
    this.list.push({ made: this.#made });
  }
}
