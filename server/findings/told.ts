import { speaking, spokenNow } from '../../grammar/index.js';
import type { Measures } from '../measure/measures.js';
import { isOwn, placeHere, withOrigin } from '../plan/based-on/here.js';
import type { Allowance, Plan } from '../plan/plan.js';
import { ownFix } from './edits/own.js';
import { setsAside } from './exceptions.js';
import type { Finding, Rule, RuleFinding, Severity } from './finding.js';

/** What a rule has found, before it is told: of a crowd most is only counted. */
export interface Found {
  readonly by: Rule;
  readonly what: RuleFinding;
  readonly severity: Severity;
  /** The exception that sets it aside. */
  readonly allowance?: Allowance | undefined;
}

/**
 * What a rule finds, in its order, with what the plan sets aside of it.
 *
 * @param severity as it is set, if it is
 */
export function foundBy(
  rule: Rule,
  plan: Plan,
  measures: Measures,
  limit: number,
  severity?: Severity,
): readonly Found[] {
  const allowances = plan.allowances.filter((allowance) => allowance.rule === rule.id);
  return rule.check(plan, measures, limit).map((what) => ({
    by: rule,
    what,
    severity: severity ?? what.severity ?? rule.severity,
    allowance:
      allowances.length > 0 ? allowances.find((allowance) => setsAside(allowance, rule, what)) : undefined,
  }));
}

/** What was measured and wanted, with where that stands when it is in another plan. */
export function messageOf({ what: { message, location } }: Found): string {
  return withOrigin(message, location);
}

/**
 * As a finding.
 *
 * @param more what is told otherwise
 */
export function asTold(
  plan: Plan,
  found: Found,
  more: Partial<Pick<Finding, 'message' | 'objects' | 'leads' | 'related'>> = {},
): Finding {
  const { by, what, severity, allowance } = found;
  const { remedy, fix, location, ...told } = what;
  const finding = {
    related: [],
    objects: [],
    ...told,
    message: messageOf(found),
    location: placeHere(plan, location),
    ...(isOwn(location) ? {} : { from: location }),
    rule: by.id,
    severity,
    ...(allowance ? { allowed: { reason: allowance.reason, location: allowance.location } } : {}),
    ...more,
  };
  if (!remedy) return fix ? { ...finding, fix: ownFix(plan, fix) } : finding;
  return withRemedy(finding, () => {
    const worked = remedy();
    return { advice: worked.advice, fix: ownFix(plan, worked.fix) };
  });
}

/** Plain data to any reader; what mends it is worked out once, when it is first read. */
function withRemedy(finding: Finding, work: () => Pick<Finding, 'advice' | 'fix'>): Finding {
  let known: Pick<Finding, 'advice' | 'fix'> | undefined;
  const language = spokenNow();
  const remedy = (): Pick<Finding, 'advice' | 'fix'> => (known ??= speaking(language, work));
  return {
    ...finding,
    get advice() {
      return remedy().advice;
    },
    get fix() {
      return remedy().fix;
    },
  };
}
