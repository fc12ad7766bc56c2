import type { Node } from '../../grammar/index.js';
import type { Measures } from '../measure/measures.js';
import type { Point } from '../plan/geometry/point.js';
import type { LimitUnit, Location, OwnLocation, Plan } from '../plan/plan.js';

export type Severity = 'error' | 'warning' | 'hint';

/** Where a plan breaks its own intention or a rule of thumb. */
export interface Finding {
  /** The rule's id in words, such as `value budget`. */
  readonly rule: string;
  readonly severity: Severity;
  /** What was measured, what was wanted, where. Plain studio English, whole sentences. */
  readonly message: string;
  /** One thing to try. */
  readonly advice?: string | undefined;
  readonly location: OwnLocation;
  /** Where what it is about stands, when that is in a plan that this one builds on. */
  readonly from?: Location;
  readonly related: readonly { readonly location: Location; readonly message: string }[];
  /** Indices into `plan.objects` of the objects concerned. */
  readonly objects: readonly number[];
  /** Indices into `plan.leads` of the leads that it is about. */
  readonly leads?: readonly number[];
  /** Index into `plan.cues` of the cue that it is about. */
  readonly cue?: number;
  /** Where in the picture it is, canvas units, when that is one place rather than an object as a whole. */
  readonly at?: Point;
  /** How far it goes beyond the limit, in what the rule measures: of many findings of one rule the worst are told. */
  readonly excess?: number;
  /** Edits of the plan after which the rule has nothing more to say here. */
  readonly fix?: OwnFix | undefined;
  /** Set when the plan sets it aside with a reason; such a finding is not reported as a warning. */
  readonly allowed?: { readonly reason: string; readonly location: Location };
}

/** One thing to try, and the edits that do it where edits can. */
export type Remedy = Pick<Finding, 'advice'> & { readonly fix?: Fix | undefined };

/** What mends a finding, as edits of the text that do not touch each other. */
export interface Fix {
  /** An order to the tool: `Take wall to step 3`. */
  readonly title: string;
  readonly edits: readonly FixEdit[];
}

/** A fix that changes the plan's own text alone. */
export interface OwnFix extends Fix {
  readonly edits: readonly OwnEdit[];
}

/** An edit as a rule thinks of it: the place, or the statement, may be one of a plan that the plan builds on. */
export type FixEdit =
  OwnEdit | { readonly kind: 'replace'; readonly location: Location; readonly text: string };

/** An edit of the plan's own text. */
export type OwnEdit =
  /** Other words for those at a place; an empty place is written at, an empty text takes out. */
  | { readonly kind: 'replace'; readonly location: OwnLocation; readonly text: string }
  /** A statement as new lines at the end of a statement's block, indented as that block is. */
  | { readonly kind: 'add line'; readonly under: Node; readonly text: string }
  /** A statement, with what stands under it, as new lines at the end of the plan. */
  | { readonly kind: 'add statement'; readonly text: string }
  | { readonly kind: 'take out line'; readonly line: number };

/** The chapters of the reference, in the order of the studio. */
export const chapters = [
  'concept',
  'division',
  'centre of interest',
  'objects',
  'eye path',
  'values',
  'colour',
  'palette',
  'sittings',
  'record',
  'transfer',
  'cautions',
] as const;
export type Chapter = (typeof chapters)[number];

/** A rule of the trade, one a file, collected in `rules.ts`. */
export interface Rule {
  /** In words, lower case, no punctuation; `allow <id> because "..."` sets it aside. */
  readonly id: string;
  readonly severity: 'warning' | 'hint';
  readonly chapter: Chapter;
  /** Its threshold, if it has one. */
  readonly limit?: RuleLimit;
  /** Whether `allow ... for OBJECT` makes sense. */
  readonly perObject: boolean;
  /** Whether `allow ... for LEAD` makes sense: its findings say in `leads` what they are about. */
  readonly perLead?: boolean;
  /** Whether `allow ... for "CUE"` makes sense: its findings say in `cue` what they are about. */
  readonly perCue?: boolean;
  /** Of more findings than these that stand, five unless said, only the worst three are told and the rest counted. */
  readonly mostTold?: number;
  /** A caution: no setting turns it off for plans that give no reason; it stays a hint at least. */
  readonly isCaution?: boolean;
  /** One sentence for hover and settings. */
  readonly summary: string;
  /** Why painters hold to it, for the reference; plain text. */
  readonly explanation: string;
  readonly formula: string;
  /** A published source, or `common practice, no source`. */
  readonly source: string;
  check(plan: Plan, measures: Measures, limit: number): readonly RuleFinding[];
}

/** A threshold: a part of one with what it is a part of, or so many degrees, or a plain number of something. */
export interface RuleLimit {
  readonly value: number;
  readonly unit: LimitUnit;
  /** What is measured: `the diagonal`, `between complement and opposite`. */
  readonly of: string;
  /** The greatest that it can be set to, where nothing is looked at beyond. */
  readonly most?: number;
}

/** What a rule finds; a severity of its own stands before the rule's, and a setting before both. */
export type RuleFinding = Pick<Finding, 'message'> & {
  /** Where what it is about stands, in the plan or in one that it builds on. */
  readonly location: Location;
} & Partial<
    Pick<Finding, 'severity' | 'advice' | 'related' | 'objects' | 'leads' | 'cue' | 'at' | 'excess'>
  > & {
    readonly fix?: Fix | undefined;
    /** Instead of `advice` and `fix`, where they are tried out on the picture: worked out when one is first read. */
    readonly remedy?: () => Remedy;
  };
