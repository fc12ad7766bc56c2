import type { Measures } from '../measure/measures.js';
import type { Location, Plan } from '../plan/plan.js';

export type Severity = 'error' | 'warning' | 'hint';

/** Where a plan breaks its own intention or a rule of thumb. */
export interface Finding {
  /** The rule's id in words, such as `value budget`. */
  readonly rule: string;
  readonly severity: Severity;
  /** What was measured, what was wanted, where. Plain studio English, whole sentences. */
  readonly message: string;
  /** One thing to try. */
  readonly advice?: string;
  readonly location: Location;
  readonly related: readonly { readonly location: Location; readonly message: string }[];
  /** Indices into `plan.objects` of the objects concerned. */
  readonly objects: readonly number[];
  /** An edit of the words at `location` that mends it. */
  readonly fix?: { readonly title: string; readonly replacement: string };
  /** Set when the plan sets it aside with a reason; such a finding is not reported as a warning. */
  readonly allowed?: { readonly reason: string; readonly location: Location };
}

/** A rule of the trade, one a file, collected in `rules.ts`. */
export interface Rule {
  /** In words, lower case, no punctuation; `allow <id> because "..."` sets it aside. */
  readonly id: string;
  readonly severity: 'warning' | 'hint';
  /** Threshold as a part of one, with what it is a part of, if the rule has one. */
  readonly limit?: { readonly value: number; readonly of: string };
  /** Whether `allow ... for OBJECT` makes sense. */
  readonly perObject: boolean;
  /** One sentence for hover and settings. */
  readonly summary: string;
  /** Why painters hold to it, for the reference; plain text. */
  readonly explanation: string;
  readonly formula: string;
  /** A published source, or `common practice, no source`. */
  readonly source: string;
  check(plan: Plan, measures: Measures, limit: number): readonly RuleFinding[];
}

export type RuleFinding = Pick<Finding, 'message' | 'location'> &
  Partial<Pick<Finding, 'advice' | 'related' | 'objects' | 'fix'>>;
