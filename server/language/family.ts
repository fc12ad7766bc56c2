import type { OwnLocation } from '../plan/plan.js';
import { basePathOf, type KnownPlan, type Surroundings } from './library.js';
import type { Definition, NameKind, Use } from './names.js';
import { usualSpelling } from './paths.js';
import { touches } from './text.js';

/** A name as it stands in one of several plans that build on each other. */
export interface Occurrence {
  readonly plan: KnownPlan;
  readonly location: OwnLocation;
  readonly defines: boolean;
}

/** What a name stands for. */
export interface Meaning {
  readonly kind: NameKind;
  readonly key: string;
}

export interface NamedPlace extends Meaning {
  readonly location: OwnLocation;
  /** The name is one of the plan that this one is based on. */
  readonly ofBase: boolean;
}

/** The plans that a plan is based on, the nearest first; a ring of plans ends where it closes. */
function basesOf(plan: KnownPlan, around: Surroundings): readonly KnownPlan[] {
  const bases: KnownPlan[] = [];
  const seen = new Set([usualSpelling(plan.uri)]);
  for (let heir = plan; ;) {
    const path = basePathOf(heir.tree);
    const base = path === undefined ? undefined : around.planOf(heir, path);
    if (base === undefined || seen.has(usualSpelling(base.uri))) return bases;
    seen.add(usualSpelling(base.uri));
    bases.push(base);
    heir = base;
  }
}

/** What the name under the caret stands for, here or in a plan that this one is based on. */
export function nameUnder(
  plan: KnownPlan,
  line: number,
  column: number,
  around: Surroundings,
): NamedPlace | undefined {
  const here = ({ location }: { readonly location: OwnLocation }): boolean =>
    location.line === line && touches(location, column);
  const definition = definitionsIn(plan).find(here);
  if (definition !== undefined) return { ...definition, ofBase: false };
  const use = usesIn(plan).find(here);
  const kind = use && kindOf(use, plan, basesOf(plan, around));
  return use === undefined || kind === undefined ? undefined : { ...use, kind };
}

/** Where a name is defined: in the plan itself, else in the nearest that it is based on. */
export function definitionIn(
  plan: KnownPlan,
  { kind, key, ofBase }: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): { readonly plan: KnownPlan; readonly definition: Definition } | undefined {
  for (const candidate of lineage(plan, ofBase, kind, key, around)) {
    const definition = definitionsIn(candidate).find((one) => one.kind === kind && one.key === key);
    if (definition !== undefined) return { plan: candidate, definition };
  }
  return undefined;
}

/** Every place where the name stands for the same: in the plan that first has it, and in all that build on that one. */
export function occurrencesOf(
  plan: KnownPlan,
  meaning: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): readonly Occurrence[] {
  const home = homeOf(plan, meaning, around);
  // What is left out of a plan that is not known is spoken of here alone.
  if (home === undefined) return occurrencesIn(plan, home, meaning, around);
  return around.plans.flatMap((candidate) => occurrencesIn(candidate, home, meaning, around));
}

/** Those of these places that are in the plan itself. */
export function occurrencesHere(
  plan: KnownPlan,
  meaning: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): readonly Occurrence[] {
  return occurrencesIn(plan, homeOf(plan, meaning, around), meaning, around);
}

/** The plans in which a new name could meet another: those that have it or take it from them. */
export function kinOf(
  plan: KnownPlan,
  meaning: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): readonly KnownPlan[] {
  const home = homeOf(plan, meaning, around);
  if (home === undefined) return [];
  const heirs = around.plans.filter(
    (one) => isSame(one, home) || basesOf(one, around).some((base) => isSame(base, home)),
  );
  return [...new Set([...basesOf(home, around), ...heirs])];
}

/** The plan that gives a name, where another one is known to be based on it. */
export function sharedHomeOf(
  plan: KnownPlan,
  meaning: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): KnownPlan | undefined {
  const home = homeOf(plan, meaning, around);
  const isHome = (one: KnownPlan): boolean => home !== undefined && isSame(one, home);
  return around.plans.some((one) => basesOf(one, around).some(isHome)) ? home : undefined;
}

/** What each name of a plan stands for, in the order of definitions and uses. */
export function meaningsIn(
  plan: KnownPlan,
  around: Surroundings,
): readonly (Meaning & Omit<Occurrence, 'plan'>)[] {
  const bases = basesOf(plan, around);
  return [
    ...definitionsIn(plan).map(({ kind, key, location }) => ({ kind, key, location, defines: true })),
    ...usesIn(plan).flatMap((use) => {
      const kind = kindOf(use, plan, bases);
      return kind === undefined ? [] : [{ kind, key: use.key, location: use.location, defines: false }];
    }),
  ];
}

/** The definitions of a plan, those in lines that take no part in it last. */
export function definitionsIn({ names: { definitions, astray } }: KnownPlan): readonly Definition[] {
  return [...definitions, ...astray.definitions];
}

function usesIn({ names: { uses, astray } }: KnownPlan): readonly Use[] {
  return [...uses, ...astray.uses];
}

function occurrencesIn(
  plan: KnownPlan,
  home: KnownPlan | undefined,
  { kind, key }: Meaning,
  around: Surroundings,
): readonly Occurrence[] {
  const bases = basesOf(plan, around);
  const isOfHome = (ofBase: boolean): boolean => {
    const own = homeOf(plan, { kind, key, ofBase }, around);
    return own === undefined || home === undefined ? own === home : isSame(own, home);
  };
  const own = isOfHome(false);
  const definitions = own ? definitionsIn(plan).filter((one) => one.kind === kind && one.key === key) : [];
  const uses = usesIn(plan).filter(
    (use) => use.key === key && kindOf(use, plan, bases) === kind && (use.ofBase ? isOfHome(true) : own),
  );
  return [
    ...definitions.map(({ location }) => ({ plan, location, defines: true })),
    ...uses.map(({ location }) => ({ plan, location, defines: false })),
  ].sort((a, b) => a.location.line - b.location.line || a.location.start - b.location.start);
}

/**
 * The plan that gives the name first: the farthest that has it of those the name comes down from. Nothing for a name of
 * a base that is not known.
 */
function homeOf(
  plan: KnownPlan,
  { kind, key, ofBase }: Omit<NamedPlace, 'location'>,
  around: Surroundings,
): KnownPlan | undefined {
  const line = lineage(plan, ofBase, kind, key, around);
  return line.findLast((candidate) => defines(candidate, kind, key)) ?? line[0];
}

/** The plans from which a name may come, from the nearest on; a plan that leaves the name out takes it from none. */
function lineage(
  plan: KnownPlan,
  ofBase: boolean,
  kind: NameKind,
  key: string,
  around: Surroundings,
): readonly KnownPlan[] {
  const line = [plan, ...basesOf(plan, around)];
  const leavesOut = (candidate: KnownPlan): boolean =>
    usesIn(candidate).some((use) => use.ofBase && use.key === key && use.kinds.includes(kind));
  const first = ofBase ? 1 : 0;
  const last = line.findIndex((candidate, index) => index >= first && leavesOut(candidate));
  return line.slice(first, last < 0 ? undefined : last + 1);
}

/** The likeliest of the kinds that a use may be of for which there is a definition. */
function kindOf(use: Use, plan: KnownPlan, bases: readonly KnownPlan[]): NameKind | undefined {
  const line = use.ofBase ? bases : [plan, ...bases];
  const isDefined = (kind: NameKind): boolean => line.some((candidate) => defines(candidate, kind, use.key));
  return use.kinds.find(isDefined) ?? use.kinds[0];
}

const definedNames = new WeakMap<KnownPlan['names'], ReadonlySet<string>>();

function defines(plan: KnownPlan, kind: NameKind, key: string): boolean {
  let known = definedNames.get(plan.names);
  if (known === undefined) {
    known = new Set(definitionsIn(plan).map((one) => `${one.kind} ${one.key}`));
    definedNames.set(plan.names, known);
  }
  return known.has(`${kind} ${key}`);
}

function isSame(one: KnownPlan, other: KnownPlan): boolean {
  return usualSpelling(one.uri) === usualSpelling(other.uri);
}
