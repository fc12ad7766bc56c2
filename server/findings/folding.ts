import { t } from '../../grammar/index.js';
import { inSteps } from '../measure/areas/place-order.js';
import type { Plan } from '../plan/plan.js';
import { inWords } from '../plan/problems.js';
import type { Finding } from './finding.js';
import { quoted } from './words/words.js';

/** So many findings of one rule are told one by one, where it does not say otherwise. */
const MOST_TOLD = 5;
/** So many of more than that. */
const TOLD_OF_MANY = 3;
const MOST_NAMED = 5;
/** So many more places are led to; of a crowd nobody goes through all. */
const MOST_RELATED = 30;

/**
 * The findings of one rule, no more than a painter reads: of more than `mostTold` that stand the worst three, the last
 * of them with how many more there are and of which leads or objects. It has those and their places too, so that they are marked
 * in the picture. The worst are those that go farthest beyond the limit, where the rule measures that, else the first
 * that it gives. What is set aside stays as it is.
 */
export function folded(
  { objects, leads }: Plan,
  findings: readonly Finding[],
  mostTold = MOST_TOLD,
): readonly Finding[] {
  const standing = findings.filter(({ allowed }) => !allowed).toSorted(worseFirst);
  const [last] = standing.slice(TOLD_OF_MANY - 1);
  if (standing.length <= mostTold || !last) return findings;
  const rest = standing.slice(TOLD_OF_MANY);
  const concerned = [...new Set(rest.flatMap((finding) => finding.objects))];
  const led = [...new Set(rest.flatMap((finding) => finding.leads ?? []))];
  const things = led.length > 0 ? led.map((lead) => leads[lead]) : concerned.map((object) => objects[object]);
  const names = things.flatMap((thing) => thing?.name ?? []).map(quoted);
  const named = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), t('others')] : names;
  const told = changed(last, {
    message: `${last.message} ${
      named.length > 0
        ? t('So it is with {0} more: {1}.', rest.length, inWords(named))
        : t('So it is with {0} more.', rest.length)
    }`,
    objects: [...new Set([...last.objects, ...concerned])],
    ...(led.length > 0 ? { leads: [...new Set([...(last.leads ?? []), ...led])] } : {}),
    related: [
      ...last.related,
      ...rest
        .slice(0, MOST_RELATED)
        .map(({ location, from = location, message }) => ({ location: from, message })),
    ],
  });
  return [
    ...standing.slice(0, TOLD_OF_MANY - 1),
    told,
    ...findings.filter(({ allowed }) => allowed !== undefined),
  ];
}

/** Graver ones first, then those that go farther beyond the limit; of two alike the one that the rule gives first. */
function worseFirst(one: Finding, other: Finding): number {
  return (
    Number(other.severity !== 'hint') - Number(one.severity !== 'hint') ||
    inSteps(other.excess ?? 0, 1) - inSteps(one.excess ?? 0, 1)
  );
}

/** A finding with some of it changed. What mends it is not read, for it may yet have to be worked out. */
function changed(
  finding: Finding,
  changes: Pick<Finding, 'message' | 'objects' | 'leads' | 'related'>,
): Finding {
  const descriptors = Object.getOwnPropertyDescriptors(finding);
  return Object.create(Object.prototype, {
    ...descriptors,
    ...Object.getOwnPropertyDescriptors(changes),
  }) as Finding;
}
