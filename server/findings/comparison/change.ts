import type { Measures } from '../../measure/measures.js';
import type { Frame } from '../../measure/comparison/frame.js';
import type { ObjectPairs } from '../../measure/comparison/pairs.js';
import type { Location, Plan } from '../../plan/plan.js';
import type { Finding } from '../finding.js';

/** What changes are told under, in the order of what matters to the picture. */
export const topics = [
  'canvas',
  'division',
  'centre of interest',
  'objects',
  'eye path',
  'values',
  'colours',
  'palette',
  'sittings',
  'findings',
  'rules',
  'words',
] as const;
export type Topic = (typeof topics)[number];

/** What became of a thing. */
export const changeKinds = [
  'new',
  'gone',
  'renamed',
  'moved',
  'turned',
  'sized',
  'reshaped',
  'more seen',
  'less seen',
  'order',
  'lighter',
  'darker',
  'colour',
  'changed',
] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** What differs between two plans, in a painter's words. */
export interface Change {
  readonly topic: Topic;
  readonly kind: ChangeKind;
  /** A whole sentence. */
  readonly message: string;
  /** The name of the object concerned, in the later plan unless it is gone. */
  readonly object?: string;
  /** What a figure was and is. */
  readonly figure?: Figure;
  /** Canvas units of the later plan to the right and down; on canvases of different sizes parts of width and height. */
  readonly move?: { readonly right: number; readonly down: number };
  /** Where it stands in the earlier text. */
  readonly earlier?: Location;
  readonly later?: Location;
}

export interface Figure {
  readonly from: number;
  readonly to: number;
  readonly unit: 'part of the picture' | 'step' | 'Munsell value' | 'CIEDE2000' | 'degrees';
}

/** A plan with all that is worked out of it. */
export interface EvaluatedPlan {
  readonly plan: Plan;
  readonly measures: Measures;
  /** Those set aside included. */
  readonly findings: readonly Finding[];
}

/** Two plans held against each other. */
export interface Compared {
  readonly earlier: EvaluatedPlan;
  readonly later: EvaluatedPlan;
  readonly frame: Frame;
  readonly objects: ObjectPairs;
}

/** Optional properties without those that are not there, as exact optional properties ask. */
export function places(
  earlier: Location | undefined,
  later: Location | undefined,
): Pick<Change, 'earlier' | 'later'> {
  return { ...(earlier ? { earlier } : {}), ...(later ? { later } : {}) };
}

/** One change of something that a plan has or has not: new, gone, or another. `undefined` when it reads alike. */
export function changeOf(
  topic: Topic,
  [before, now]: readonly [string | undefined, string | undefined],
  words: {
    readonly new: (now: string) => string;
    readonly gone: (before: string) => string;
    readonly changed: (now: string, before: string) => string;
  },
  where: Pick<Change, 'earlier' | 'later' | 'object'> = {},
): readonly Change[] {
  if (before === now) return [];
  if (now === undefined) return [{ topic, kind: 'gone', message: words.gone(before ?? ''), ...where }];
  if (before === undefined) return [{ topic, kind: 'new', message: words.new(now), ...where }];
  return [{ topic, kind: 'changed', message: words.changed(now, before), ...where }];
}

/** One change of something that every plan has: it is another now. */
export function otherNow(
  topic: Topic,
  [before, now]: readonly [string, string],
  changed: (now: string, before: string) => string,
  where: Pick<Change, 'earlier' | 'later' | 'object'> = {},
): readonly Change[] {
  return before === now ? [] : [{ topic, kind: 'changed', message: changed(now, before), ...where }];
}

/** Things that are new and things that are gone, each told where it stands. */
export function comeAndGone<T extends { readonly location: Location }>(
  topic: Topic,
  { come, gone }: { readonly come: readonly T[]; readonly gone: readonly T[] },
  words: { readonly new: (thing: T) => string; readonly gone: (thing: T) => string },
  about: Pick<Change, 'object'> = {},
): readonly Change[] {
  return [
    ...come.map((thing): Change => ({
      topic,
      kind: 'new',
      message: words.new(thing),
      ...about,
      later: thing.location,
    })),
    ...gone.map((thing): Change => ({
      topic,
      kind: 'gone',
      message: words.gone(thing),
      ...about,
      earlier: thing.location,
    })),
  ];
}

/**
 * Things of two plans that have the same key, those gone and those come, in the order of their texts; of a repeated
 * key the first counts.
 */
export function byKey<T>(
  earlier: readonly T[],
  later: readonly T[],
  keyOf: (thing: T) => string,
): {
  readonly both: readonly (readonly [T, T])[];
  readonly gone: readonly T[];
  readonly come: readonly T[];
} {
  const firstOf = (things: readonly T[]) =>
    new Map([...things].reverse().map((thing) => [keyOf(thing), thing] as const));
  const [before, now] = [firstOf(earlier), firstOf(later)];
  const inOrder = (things: readonly T[], of: ReadonlyMap<string, T>): readonly T[] =>
    things.filter((thing) => of.get(keyOf(thing)) === thing);
  return {
    both: inOrder(later, now).flatMap((thing) => {
      const other = before.get(keyOf(thing));
      return other === undefined ? [] : [[other, thing] as const];
    }),
    gone: inOrder(earlier, before).filter((thing) => !now.has(keyOf(thing))),
    come: inOrder(later, now).filter((thing) => !before.has(keyOf(thing))),
  };
}

/**
 * What the objects of the earlier plan are called in the later one, by their index; those that are gone keep their
 * names.
 */
export function nowCalled({
  earlier,
  later,
  objects,
}: Pick<Compared, 'earlier' | 'later' | 'objects'>): (object: number) => string {
  const partner = new Map(objects.pairs.map((pair) => [pair.earlier, later.plan.objects[pair.later]?.name]));
  return (object) => partner.get(object) ?? earlier.plan.objects[object]?.name ?? '';
}

/** What the objects of the later plan are called. */
export function calledIn({ objects }: Plan): (object: number) => string {
  return (object) => objects[object]?.name ?? '';
}
