import { said, t } from '../../grammar/index.js';
import type { Rule, RuleLimit } from './finding.js';
import { ruleSlug, rules } from './rules.js';
import { asSetting, greatestOf } from './settings.js';
import { ruleInShort } from './words/rule-in-short.js';

const SEVERITIES = ['off', 'hint', 'warning'] as const;

/** The editor's setting `mahlstick.rules`. */
export interface RuleSettings {
  /** Its JSON schema: an entry for every rule, described by `%key%` as a manifest does it. */
  readonly schema: Readonly<Record<string, unknown>>;
  /** What the keys stand for, in the language that is spoken. */
  readonly texts: Readonly<Record<string, string>>;
}

/**
 * The manifest of the extension holds the schema, `package.nls.json` the texts in English and `package.nls.de.json`
 * those in German, and a test keeps them alike.
 */
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
  const { limit, isCaution } = rule;
  const inShort = [keyOf(rule), ruleInShort(rule)] as const;
  return limit && !isCaution ? [inShort, [limitKeyOf(rule), limitText(limit)]] : [inShort];
}

function limitText(limit: RuleLimit): string {
  const { unit, of, most } = limit;
  const what =
    unit === 'part'
      ? t('In {0}', said(`{0} of ${of}`, '%'))
      : unit === 'degrees'
        ? t('In degrees, {0}', withoutFigure(of))
        : t('A number, {0}', withoutFigure(of));
  return most === undefined ? `${what}.` : t('{0}; at most {1}.', what, asSetting(greatestOf(limit), unit));
}

/** What a limit is of: `times the weight`, also in a language that ties it to its figure, as `1.2-mal`. */
function withoutFigure(of: string): string {
  return said(`{0} ${of}`, '').replace(/^[\s-]+/u, '');
}
