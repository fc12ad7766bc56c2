import type fc from 'fast-check';

/** Every campaign, in the order in which they run. */
export const campaignNames = ['text', 'mutated', 'geometry', 'hostile', 'images', 'edits', 'git'] as const;
export type CampaignName = (typeof campaignNames)[number];

/**
 * One way of looking for faults: cases that nobody has thought of, and what must hold of each. A case is plain JSON, so
 * that it can be kept in a file and handed to another process.
 */
export interface Campaign<Case = unknown> {
  /** How many cases every run of the tests tries. */
  readonly runs: number;
  readonly cases: fc.Arbitrary<Case>;
  /** Throws or rejects, with a sentence, where it does not hold. */
  readonly hold: (one: Case) => void | Promise<void>;
}

/** A campaign among others, whose cases come from itself or from a file that it once wrote. */
export function campaign<Case>(one: Campaign<Case>): Campaign {
  return { ...one, hold: (some) => one.hold(some as Case) };
}
