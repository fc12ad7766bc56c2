import type { LimitUnit } from '../plan/plan.js';

/** How somebody wants a rule to be told in all plans that say nothing else of it. */
export interface RuleChange {
  /** `off` for a rule that is not to be told at all. */
  readonly severity?: 'off' | 'hint' | 'warning';
  /** In the unit of the rule's own limit, a share as a part of one. */
  readonly limit?: number;
}

/** By the rule's id. */
export type RuleSettings = ReadonlyMap<string, RuleChange>;

export const NO_SETTINGS: RuleSettings = new Map();

/** The largest limit in a unit as a setting counts it: %, degrees, or anything. */
export const LARGEST_LIMIT: Readonly<Record<LimitUnit, number>> = {
  part: 100,
  degrees: 180,
  number: Infinity,
};
