import { t } from '../../grammar/index.js';
import { inSteps } from '../measure/areas/place-order.js';
import type { Plan } from '../plan/plan.js';
import { inWords } from '../plan/problems.js';
import type { Finding } from './finding.js';
import { asTold, type Found, messageOf } from './told.js';
import { counted, quoted } from './words/words.js';

/** So many findings of one rule are told one by one, where it does not say otherwise. */
const MOST_TOLD = 5;
/** So many of more than that. */
const TOLD_OF_MANY = 3;
const MOST_NAMED = 5;
/** So many more places are led to; of a crowd nobody goes through all. */
const MOST_RELATED = 30;

/**
 * The findings of one rule, no more than a painter reads: of more than the rule's `mostTold` that stand the worst
 * three, the last of them with how many more there are and of which leads or objects. It has those and their places
 * too, so that they are marked in the picture. The worst are those that go farthest beyond the limit, where the rule
 * measures that, else the first that it gives. What is set aside stays as it is.
 */
export function folded(plan: Plan, found: readonly Found[]): readonly Finding[] {
  const standing = found.filter(({ allowance }) => !allowance).toSorted(worseFirst);
  const last = standing[TOLD_OF_MANY - 1];
  if (standing.length <= (last?.by.mostTold ?? MOST_TOLD) || !last)
    return found.map((one) => asTold(plan, one));
  return [
    ...standing.slice(0, TOLD_OF_MANY - 1).map((one) => asTold(plan, one)),
    withTheRest(plan, last, standing.slice(TOLD_OF_MANY)),
    ...found.filter(({ allowance }) => allowance).map((one) => asTold(plan, one)),
  ];
}

function withTheRest(plan: Plan, last: Found, rest: readonly Found[]): Finding {
  const { objects = [], leads = [], related = [] } = last.what;
  const concerned = [...new Set(rest.flatMap(({ what }) => what.objects ?? []))];
  const led = [...new Set(rest.flatMap(({ what }) => what.leads ?? []))];
  const things =
    led.length > 0 ? led.map((lead) => plan.leads[lead]) : concerned.map((object) => plan.objects[object]);
  const names = things.flatMap((thing) => thing?.name ?? []);
  const told = (names.length > MOST_NAMED ? names.slice(0, MOST_NAMED) : names).map(quoted);
  const named = names.length > MOST_NAMED ? [...told, t('others')] : told;
  return asTold(plan, last, {
    message: `${messageOf(last)} ${restInWords(rest.length, named)}`,
    objects: [...new Set([...objects, ...concerned])],
    ...(led.length > 0 ? { leads: [...new Set([...leads, ...led])] } : {}),
    related: [
      ...related,
      ...rest.slice(0, MOST_RELATED).map((one) => ({ location: one.what.location, message: messageOf(one) })),
    ],
  });
}

function restInWords(count: number, named: readonly string[]): string {
  if (named.length === 0)
    return count === 1 ? t('So it is with one more.') : t('So it is with {0} more.', counted(count));
  return count === 1
    ? t('So it is with one more: {0}.', inWords(named))
    : t('So it is with {0} more: {1}.', counted(count), inWords(named));
}

/** Graver ones first, then those that go farther beyond the limit; of two alike the one that the rule gives first. */
function worseFirst(one: Found, other: Found): number {
  return (
    Number(other.severity !== 'hint') - Number(one.severity !== 'hint') ||
    inSteps(other.what.excess ?? 0, 1) - inSteps(one.what.excess ?? 0, 1)
  );
}
