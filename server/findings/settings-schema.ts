import type { LimitUnit } from '../plan/plan.js';
import type { Rule, RuleLimit } from './finding.js';
import { ruleSlug, rules } from './rules.js';
import { asSetting, greatestOf } from './settings.js';
import { limitInWords } from './words/words.js';

const SEVERITIES = ['off', 'hint', 'warning'] as const;

/** The editor's setting `mahlstick.rules`. */
export interface RuleSettings {
  /** Its JSON schema: an entry for every rule, described by `%key%` as a manifest does it. */
  readonly schema: Readonly<Record<string, unknown>>;
  /** What the keys stand for, in English. */
  readonly texts: Readonly<Record<string, string>>;
}

/** The manifest of the extension holds the schema, `package.nls.json` the texts, and a test keeps them alike. */
export function ruleSettings(): RuleSettings {
  return {
    schema: Object.fromEntries(rules.map((rule) => [rule.id, entryOf(rule)])),
    texts: Object.fromEntries(rules.flatMap(textsOf)),
  };
}

/** What keys of all these texts begin with. */
export const RULE_KEY = 'rule.';

const keyOf = (rule: Rule): string => `${RULE_KEY}${ruleSlug(rule.id)}`;
const limitKeyOf = (rule: Rule): string => `${keyOf(rule)}.limit`;

function entryOf(rule: Rule): Readonly<Record<string, unknown>> {
  const { limit, isCaution } = rule;
  const description = `%${keyOf(rule)}%`;
  if (isCaution) return { description, enum: SEVERITIES.filter((each) => each !== 'off') };
  if (!limit) return { description, enum: SEVERITIES };
  return {
    description,
    anyOf: [
      { enum: SEVERITIES },
      {
        type: 'object',
        properties: { severity: { enum: SEVERITIES }, limit: limitSchema(limit, `%${limitKeyOf(rule)}%`) },
        additionalProperties: false,
      },
    ],
  };
}

function limitSchema(limit: RuleLimit, description: string): Readonly<Record<string, unknown>> {
  const { unit, value } = limit;
  const greatest = asSetting(greatestOf(limit), unit);
  return {
    type: 'number',
    minimum: 0,
    ...(Number.isFinite(greatest) ? { maximum: greatest } : {}),
    default: asSetting(value, unit),
    description,
  };
}

function textsOf(rule: Rule): readonly (readonly [string, string])[] {
  const { summary, severity, limit, isCaution } = rule;
  const usual = `Usually a ${severity}`;
  if (isCaution)
    return [[keyOf(rule), `${summary} ${usual}; a plan sets it aside with a reason, a setting does not.`]];
  if (!limit) return [[keyOf(rule), `${summary} ${usual}.`]];
  return [
    [keyOf(rule), `${summary} ${usual}, with the limit ${limitInWords(limit)}.`],
    [limitKeyOf(rule), limitText(limit)],
  ];
}

const UNITS: Readonly<Record<LimitUnit, string>> = {
  part: 'In %',
  degrees: 'In degrees',
  number: 'A number',
};

function limitText(limit: RuleLimit): string {
  const { unit, of, most } = limit;
  const what = unit === 'part' ? `${UNITS[unit]} of ${of}` : `${UNITS[unit]}, ${of}`;
  return most === undefined ? `${what}.` : `${what}; at most ${asSetting(greatestOf(limit), unit)}.`;
}
