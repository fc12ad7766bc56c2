import { nearestWord } from '../../grammar/index.js';
import type { Measures } from '../measure/measures.js';
import type { Allowance, Location, Plan } from '../plan/plan.js';
import type { Finding, Rule, RuleFinding } from './finding.js';
import { ruleById, rules } from './rules.js';
import { quoted } from './words.js';

export const NEEDLESS_EXCEPTION = 'needless exception';
export const NO_SUCH_RULE = 'no such rule';

/**
 * What the rules find in a plan, what matters most to the picture first. Findings that the plan sets aside are there
 * too, with the reason in `allowed`. A pure function: the same plan gives the same findings.
 */
export function check(plan: Plan, measures: Measures): readonly Finding[] {
  const findings = rules.flatMap((rule) => applied(rule, plan, measures));
  return [...findings, ...unknownRules(plan), ...needlessExceptions(plan, findings)];
}

/** The findings that stand: those that the plan does not set aside. */
export function standing(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ allowed }) => !allowed);
}

function applied(rule: Rule, plan: Plan, measures: Measures): readonly Finding[] {
  const setting = plan.ruleSettings.findLast((candidate) => candidate.rule === rule.id);
  const limit = setting?.limit?.value ?? rule.limit?.value ?? 0;
  return rule.check(plan, measures, limit).map((found): Finding => {
    const objects = found.objects ?? [];
    const allowance = plan.allowances.find((candidate) => setsAside(candidate, rule, objects));
    return {
      related: [],
      ...found,
      rule: rule.id,
      severity: setting?.severity ?? rule.severity,
      objects,
      ...(allowance ? { allowed: { reason: allowance.reason, location: allowance.location } } : {}),
    };
  });
}

function setsAside(allowance: Allowance, rule: Rule, objects: readonly number[]): boolean {
  if (allowance.rule !== rule.id) return false;
  return allowance.objects.length === 0 || allowance.objects.some((object) => objects.includes(object));
}

function unknownRules(plan: Plan): readonly Finding[] {
  return [...plan.allowances, ...plan.ruleSettings].flatMap(({ rule, location }) => {
    if (ruleById(rule)) return [];
    const nearest = nearestWord(
      rule,
      rules.map(({ id }) => id),
    );
    return ownFinding(NO_SUCH_RULE, 'warning', location, {
      message: `There is no rule called ${quoted(rule)}.${nearest ? ` Did you mean ${quoted(nearest)}?` : ''}`,
      ...(nearest ? { fix: { title: `Change to ${quoted(nearest)}`, replacement: nearest } } : {}),
    });
  });
}

function needlessExceptions(plan: Plan, findings: readonly Finding[]): readonly Finding[] {
  return plan.allowances.flatMap(({ rule, location, objects }) => {
    const used = findings.some(({ allowed }) => allowed?.location === location);
    if (used || !ruleById(rule)) return [];
    const names = objects.flatMap((object) => plan.objects[object]?.name ?? []);
    return ownFinding(NEEDLESS_EXCEPTION, 'hint', location, {
      message: `${quoted(rule)} is set aside${names.length > 0 ? ` for ${names.map(quoted).join(', ')}` : ''}, but it finds nothing there.`,
      advice: 'Take this line out; the rule will speak up when it is broken.',
      objects,
    });
  });
}

function ownFinding(
  rule: string,
  severity: Finding['severity'],
  location: Location,
  found: Omit<RuleFinding, 'location'>,
): Finding {
  return { related: [], objects: [], ...found, rule, severity, location };
}
