import { parse } from '../../grammar/index.js';
import { check, standing } from '../../server/findings/check.js';
import type { Finding, Severity } from '../../server/findings/finding.js';
import { ruleById } from '../../server/findings/rules.js';
import { measure } from '../../server/measure/measure.js';
import { resolvePlan, type ResolveOptions } from '../../server/plan/resolve.js';

/** Anything that is told of a text, what could not be read among it. */
export interface Remark {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  /** What it is about, whatever its figures are. */
  readonly gist: string;
  readonly objects: readonly string[];
}

export interface Read {
  /** Those that stand. */
  readonly findings: readonly Finding[];
  readonly remarks: readonly Remark[];
  readonly remarkOf: (finding: Finding) => Remark;
}

/** A rule of which so many are told may have more that are only counted. */
const MOST_TOLD = 3;

/** All that is told of a text, read afresh. */
export function readAfresh(text: string, options: ResolveOptions = {}): Read {
  const tree = parse(text);
  const plan = resolvePlan(tree, options);
  const findings = standing(check(plan, measure(plan)));
  const remarkOf = ({ rule, severity, message, objects }: Finding): Remark => {
    const names = objects.map((index) => plan.objects[index]?.name ?? '').sort();
    const about = ruleById(rule)?.perObject === true ? names.join(', ') : clause(message);
    return { rule, severity, message, gist: `${rule}: ${about}`, objects: names };
  };
  return {
    findings,
    remarkOf,
    remarks: [
      ...tree.problems.map(({ code, message }): Remark => ({
        rule: code,
        severity: 'error',
        message,
        gist: `${code}: ${message}`,
        objects: [],
      })),
      ...plan.problems.map(({ code, severity, message }): Remark => ({
        rule: code,
        severity,
        message,
        gist: `${code}: ${message}`,
        objects: [],
      })),
      ...findings.map(remarkOf),
    ],
  };
}

/** `The darks cover`, of a sentence that goes on with figures; names may have figures in them. */
function clause(message: string): string {
  return /^(?:`[^`]*`|[^\d,;:(`])*/u.exec(message)?.[0] ?? '';
}

/** Whether a finding is told no longer. */
export function isGone(finding: Finding, before: Read, after: Read): boolean {
  const { gist } = before.remarkOf(finding);
  return countOf(gist, after.remarks) < countOf(gist, before.remarks);
}

/**
 * The errors and warnings that a text has and another had not. What is told of fewer objects than before is not new.
 */
export function newlyTold(before: Read, after: Read): readonly Remark[] {
  const graveBefore = before.remarks.filter(isGrave);
  return after.remarks.filter(isGrave).filter(({ gist, rule, objects }, _, graveAfter) => {
    const some = graveBefore.some(
      (other) =>
        other.rule === rule && objects.length > 0 && objects.every((name) => other.objects.includes(name)),
    );
    if (some && ruleById(rule)?.perObject !== true) return false;
    const told = graveBefore.filter((other) => other.rule === rule).length;
    const mayBeCounted =
      told >= MOST_TOLD && graveAfter.filter((other) => other.rule === rule).length <= told;
    return !mayBeCounted && countOf(gist, graveAfter) > countOf(gist, graveBefore);
  });
}

function isGrave({ severity }: Remark): boolean {
  return severity !== 'hint';
}

function countOf(gist: string, remarks: readonly Remark[]): number {
  return remarks.filter((remark) => remark.gist === gist).length;
}
