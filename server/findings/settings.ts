import type { LimitUnit } from '../plan/plan.js';
import type { RuleLimit } from './finding.js';

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

/** The largest limit in a unit: the whole, half a turn, or anything. */
const LARGEST: Readonly<Record<LimitUnit, number>> = { part: 1, degrees: 180, number: Infinity };

/** The greatest that a limit can be set to, in its unit. */
export function greatestOf({ unit, most }: RuleLimit): number {
  return most ?? LARGEST[unit];
}

/** A limit as a setting counts it: a share in %. */
export function asSetting(value: number, unit: LimitUnit): number {
  return unit === 'part' ? Number((value * 100).toFixed(6)) : value;
}
