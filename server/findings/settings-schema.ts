import type { LimitUnit } from '../plan/plan.js';
import type { Rule, RuleLimit } from './finding.js';
import { rules } from './rules.js';
import { asSetting, greatestOf } from './settings.js';
import { limitInWords } from './words/words.js';

const SEVERITIES = ['off', 'hint', 'warning'] as const;

/**
 * The JSON schema of the editor's setting `mahlstick.rules`: an entry for every rule, with what it is about. The
 * manifest of the extension holds it, and a test keeps them alike.
 */
export function ruleSettingsSchema(): Readonly<Record<string, unknown>> {
  return Object.fromEntries(rules.map((rule) => [rule.id, entryOf(rule)]));
}

function entryOf({ summary, severity, limit, isCaution }: Rule): Readonly<Record<string, unknown>> {
  const usual = `Usually a ${severity}`;
  if (isCaution)
    return {
      description: `${summary} ${usual}; a plan sets it aside with a reason, a setting does not.`,
      enum: SEVERITIES.filter((each) => each !== 'off'),
    };
  if (!limit) return { description: `${summary} ${usual}.`, enum: SEVERITIES };
  return {
    description: `${summary} ${usual}, with the limit ${limitInWords(limit)}.`,
    anyOf: [
      { enum: SEVERITIES },
      {
        type: 'object',
        properties: { severity: { enum: SEVERITIES }, limit: limitSchema(limit) },
        additionalProperties: false,
      },
    ],
  };
}

const UNITS: Readonly<Record<LimitUnit, string>> = {
  part: 'In %',
  degrees: 'In degrees',
  number: 'A number',
};

function limitSchema(limit: RuleLimit): Readonly<Record<string, unknown>> {
  const { unit, value, of, most } = limit;
  const greatest = asSetting(greatestOf(limit), unit);
  const what = unit === 'part' ? `${UNITS[unit]} of ${of}` : `${UNITS[unit]}, ${of}`;
  return {
    type: 'number',
    minimum: 0,
    ...(Number.isFinite(greatest) ? { maximum: greatest } : {}),
    default: asSetting(value, unit),
    description: most === undefined ? `${what}.` : `${what}; at most ${greatest}.`,
  };
}
