import { nearestWord } from '../../grammar/index.js';
import type { Measures } from '../measure/measures.js';
import type { Allowance, Location, Plan } from '../plan/plan.js';
import { inWords } from '../plan/problems.js';
import type { Finding, Rule, RuleFinding } from './finding.js';
import { ruleById, rules } from './rules.js';
import { quoted } from './words.js';

export const NEEDLESS_EXCEPTION = 'needless exception';
export const NO_SUCH_RULE = 'no such rule';
export const IDLE_SETTING = 'idle setting';
export const TOO_NARROW_EXCEPTION = 'too narrow exception';

/**
 * What the rules find in a plan, what matters most to the picture first. Findings that the plan sets aside are there
 * too, with the reason in `allowed`. A pure function: the same plan gives the same findings.
 */
export function check(plan: Plan, measures: Measures): readonly Finding[] {
  const findings = rules.flatMap((rule) => applied(rule, plan, measures));
  return [
    ...findings,
    ...unknownRules(plan),
    ...idleSettings(plan),
    ...exceptionsTooNarrow(plan),
    ...needlessExceptions(plan, findings),
  ];
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
  if (allowance.objects.length === 0) return true;
  return rule.perObject && allowance.objects.some((object) => objects.includes(object));
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
      ...(nearest
        ? {
            fix: {
              title: `Change to ${quoted(nearest)}`,
              edits: [{ kind: 'replace', location, text: nearest }],
            },
          }
        : {}),
    });
  });
}

/** `rule` lines that change nothing. One whose limit was refused is told of that already. */
function idleSettings(plan: Plan): readonly Finding[] {
  return plan.ruleSettings.flatMap(({ rule: id, severity, limit, location }) => {
    const rule = ruleById(id);
    if (!rule) return [];
    if (limit && !rule.limit) {
      return ownFinding(IDLE_SETTING, 'warning', limit.location, {
        message: `${quoted(id)} has no limit, so this one changes nothing.`,
        advice: `Take the limit out; \`rule ${id} hint\` or \`rule ${id} warning\` changes how it is told.`,
      });
    }
    const refused = plan.problems.some((problem) => problem.location.line === location.line);
    if (severity ?? limit ?? refused) return [];
    return ownFinding(IDLE_SETTING, 'hint', location, {
      message: `This line changes nothing of ${quoted(id)}.`,
      advice: `Say \`warning\` or \`hint\`${rule.limit ? ', or give a limit such as `limit 5%`' : ''}.`,
    });
  });
}

function isTooNarrow({ rule, objects }: Allowance): boolean {
  return objects.length > 0 && ruleById(rule)?.perObject === false;
}

function exceptionsTooNarrow(plan: Plan): readonly Finding[] {
  return plan.allowances.filter(isTooNarrow).flatMap(({ rule, objects, location }) =>
    ownFinding(TOO_NARROW_EXCEPTION, 'warning', location, {
      message: `${quoted(rule)} is about the whole picture, so it can’t be set aside for ${namesOf(plan, objects)} alone.`,
      advice: `Write \`allow ${rule} because "…"\` at the left margin.`,
      objects,
    }),
  );
}

function namesOf(plan: Plan, objects: readonly number[]): string {
  return inWords(objects.flatMap((object) => plan.objects[object]?.name ?? []).map(quoted));
}

function needlessExceptions(plan: Plan, findings: readonly Finding[]): readonly Finding[] {
  return plan.allowances.flatMap((allowance) => {
    const { rule, location, objects } = allowance;
    const used = findings.some(({ allowed }) => allowed?.location === location);
    if (used || !ruleById(rule) || isTooNarrow(allowance)) return [];
    return ownFinding(NEEDLESS_EXCEPTION, 'hint', location, {
      message: `${quoted(rule)} is set aside${objects.length > 0 ? ` for ${namesOf(plan, objects)}` : ''}, but it finds nothing there.`,
      advice: 'Take this line out; the rule will speak up when it is broken.',
      fix: { title: 'Take this line out', edits: [{ kind: 'take out line', line: location.line }] },
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
