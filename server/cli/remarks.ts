import type { Severity } from '../findings/finding.js';
import type { Snapshot } from '../language/snapshot.js';
import { gravestFirst } from '../language/telling-order.js';
import type { Location, OwnLocation } from '../plan/plan.js';

/** Anything that is said about a plan: what cannot be read, what cannot be resolved, and what the rules find. */
export interface Remark {
  /** In words, such as `unknown word` or `value budget`. */
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly advice?: string;
  readonly location: OwnLocation;
  /** Where it comes from, when that is in a plan that this one builds on. */
  readonly from?: Location;
  readonly related: readonly { readonly location: Location; readonly message: string }[];
  /** Names of the objects concerned. */
  readonly objects: readonly string[];
  readonly setAside?: { readonly reason: string; readonly location: Location };
}

/**
 * All remarks on a plan, gravest first; of one severity what is wrong with the text in its order, and then what the
 * rules find, what matters most to the picture first. Those set aside are included.
 */
export function remarksOf({ tree, plan, findings }: Snapshot): readonly Remark[] {
  const unreadable = tree.problems.map(({ code, message, line, start, end }): Remark => ({
    rule: code,
    severity: 'error',
    message,
    location: { line, start, end },
    related: [],
    objects: [],
  }));
  const unresolved = plan.problems.map(({ code, severity, message, location, from, related }): Remark => ({
    rule: code,
    severity,
    message,
    location,
    ...(from ? { from } : {}),
    related,
    objects: [],
  }));
  const found = findings.map(
    ({ rule, severity, message, advice, location, from, related, objects, allowed }): Remark => ({
      rule,
      severity,
      message,
      ...(advice === undefined ? {} : { advice }),
      location,
      ...(from ? { from } : {}),
      related,
      objects: objects.flatMap((index) => plan.objects[index]?.name ?? []),
      ...(allowed ? { setAside: allowed } : {}),
    }),
  );
  const problems = [...unreadable, ...unresolved].sort(
    (a, b) => a.location.line - b.location.line || a.location.start - b.location.start,
  );
  return gravestFirst([...problems, ...found]);
}

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly hints: number;
  readonly setAside: number;
}

/** How many remarks there are of each gravity; those set aside count only as that. */
export function countRemarks(remarks: readonly Remark[]): Counts {
  const standing = remarks.filter(({ setAside }) => !setAside);
  const count = (severity: Severity) => standing.filter((remark) => remark.severity === severity).length;
  return {
    errors: count('error'),
    warnings: count('warning'),
    hints: count('hint'),
    setAside: remarks.length - standing.length,
  };
}

/** The sums over several plans. */
export function addCounts(all: readonly Counts[]): Counts {
  const sum = (key: keyof Counts) => all.reduce((total, counts) => total + counts[key], 0);
  return { errors: sum('errors'), warnings: sum('warnings'), hints: sum('hints'), setAside: sum('setAside') };
}

/** `1 error, no warnings, 3 hints, 1 set aside` */
export function countsText({ errors, warnings, hints, setAside }: Counts): string {
  const some = (count: number, word: string) =>
    `${count === 0 ? 'no' : count} ${word}${count === 1 ? '' : 's'}`;
  const parts = [some(errors, 'error'), some(warnings, 'warning'), some(hints, 'hint')];
  return [...parts, ...(setAside > 0 ? [`${setAside} set aside`] : [])].join(', ');
}
