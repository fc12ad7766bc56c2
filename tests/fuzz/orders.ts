import type { CampaignName } from './campaign.js';

/** What a process that looks for faults is asked to do. */
export interface Order {
  readonly campaign: CampaignName;
  /** Of the first round; each round after it takes the next. */
  readonly seed: number;
  /** Cases a round. */
  readonly runs?: number;
  /** It begins no round after so many minutes; without them it makes one. */
  readonly minutes?: number;
  /** Cases found earlier, tried before the first round. */
  readonly kept: readonly unknown[];
  /** Where it writes each case before it tries it, for whoever finds it hanging. */
  readonly currentFile: string;
  /** So long a case may take that never lets go of the process. */
  readonly patienceMilliseconds: number;
}

/** A case of which something does not hold. */
export interface Fault {
  readonly what: string;
  readonly case: unknown;
  /** Of the round in which it came up; none of a case that was kept. */
  readonly seed?: number;
}

/** What such a process tells. */
export type News =
  | { readonly kind: 'round'; readonly seed: number; readonly cases: number }
  | { readonly kind: 'fault'; readonly fault: Fault }
  | { readonly kind: 'done' };
