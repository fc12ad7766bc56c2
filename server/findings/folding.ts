import type { Plan } from '../plan/plan.js';
import { inWords } from '../plan/problems.js';
import type { Finding } from './finding.js';
import { quoted } from './words/words.js';

/** So many findings of one rule are told one by one. */
const MOST_TOLD = 5;
/** So many of more than that, the first that the rule gives. */
const TOLD_OF_MANY = 3;
const MOST_NAMED = 5;

/**
 * The findings of one rule, no more than a painter reads: of more than five that stand the first three, the last of them
 * with how many more there are and of which objects. It has those objects and places too, so that they are marked in the
 * picture. What is set aside stays as it is.
 */
export function folded({ objects }: Plan, findings: readonly Finding[]): readonly Finding[] {
  const standing = findings.filter(({ allowed }) => !allowed);
  const last = standing[TOLD_OF_MANY - 1];
  if (standing.length <= MOST_TOLD || !last) return findings;
  const rest = standing.slice(TOLD_OF_MANY);
  const concerned = [...new Set(rest.flatMap((finding) => finding.objects))];
  const names = concerned.flatMap((object) => objects[object]?.name ?? []).map(quoted);
  const named = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), 'others'] : names;
  const told: Finding = {
    ...last,
    message: `${last.message} So it is with ${rest.length} more${named.length > 0 ? `: ${inWords(named)}` : ''}.`,
    objects: [...new Set([...last.objects, ...concerned])],
    related: [...last.related, ...rest.map(({ location, message }) => ({ location, message }))],
  };
  return findings.flatMap((finding) => (finding === last ? [told] : rest.includes(finding) ? [] : [finding]));
}
