import type { Finding, OwnFix } from '../findings/finding.js';
import { holdsGood } from '../findings/fix-trial.js';
import type { Snapshot } from './snapshot.js';

const tried = new WeakMap<Finding, boolean>();

/**
 * The fix of a finding, where it has one that does in the whole plan what it is offered for. It is tried when it is
 * first asked for, which takes about as long as an edit of the plan does.
 */
export function triedFix(snapshot: Snapshot, finding: Finding): OwnFix | undefined {
  const { fix } = finding;
  if (fix === undefined) return undefined;
  const known = tried.get(finding) ?? holdsGood(finding, fix, snapshot, snapshot.lines, snapshot.readInstead);
  tried.set(finding, known);
  return known ? fix : undefined;
}
