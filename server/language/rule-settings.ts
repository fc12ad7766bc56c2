import * as v from 'valibot';
import type { Rule } from '../findings/finding.js';
import { ruleById } from '../findings/rules.js';
import { asSetting, greatestOf, type RuleChange, type RuleSettings } from '../findings/settings.js';
import { quoted } from '../findings/words/words.js';

export interface ReadRuleSettings {
  readonly settings: RuleSettings;
  /** What could not be used, in words. */
  readonly refused: readonly string[];
}

const severity = v.picklist(['off', 'hint', 'warning']);
const forms = v.union([
  severity,
  v.strictObject({ severity: v.optional(severity), limit: v.optional(v.pipe(v.number(), v.finite())) }),
]);

/**
 * The editor's setting of rules: an object of rule ids with `"off"`, `"hint"`, `"warning"` or an object of `severity`
 * and `limit`, the limit in %, degrees or a plain number as the rule's own is. Whatever it is given it answers; what
 * it can't use is left out and told.
 */
export function readRuleSettings(value: unknown): ReadRuleSettings {
  if (value === undefined || value === null) return { settings: new Map(), refused: [] };
  const entries = v.safeParse(v.record(v.string(), v.unknown()), value);
  if (!entries.success || Array.isArray(value)) {
    return { settings: new Map(), refused: ['it is no object of rules'] };
  }
  const settings = new Map<string, RuleChange>();
  const refused: string[] = [];
  for (const [name, written] of Object.entries(entries.output)) {
    const rule = ruleById(
      name
        .toLowerCase()
        .trim()
        .split(/[\s-]+/u)
        .join(' '),
    );
    const change = rule && changeOf(rule, written);
    if (rule && change) settings.set(rule.id, change);
    else
      refused.push(
        rule ? `${quoted(rule.id)} ${wanted(rule)}` : `there is no rule ${quoted(shortened(name))}`,
      );
  }
  return { settings, refused };
}

function changeOf(rule: Rule, written: unknown): RuleChange | undefined {
  const read = v.safeParse(forms, written);
  if (!read.success) return undefined;
  if (typeof read.output === 'string') return { severity: read.output };
  const { severity, limit } = read.output;
  if (limit === undefined) return severity === undefined ? {} : { severity };
  if (!rule.limit || limit < 0 || limit > asSetting(greatestOf(rule.limit), rule.limit.unit))
    return undefined;
  return {
    ...(severity === undefined ? {} : { severity }),
    limit: rule.limit.unit === 'part' ? limit / 100 : limit,
  };
}

function wanted({ limit }: Rule): string {
  const words = 'is "off", "hint" or "warning"';
  if (!limit) return `${words}, and has no limit`;
  const greatest = asSetting(greatestOf(limit), limit.unit);
  return `${words}, or has a severity and a limit from 0${Number.isFinite(greatest) ? ` to ${greatest}` : ''}`;
}

function shortened(name: string): string {
  return name.length > 40 ? `${name.slice(0, 39)}…` : name;
}
