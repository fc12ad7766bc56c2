import type { LimitUnit } from '../plan/plan.js';
import type { Rule, RuleLimit } from './finding.js';
import { rules } from './rules.js';
import { LARGEST_LIMIT } from './settings.js';
import { limitInWords } from './words/words.js';

const SEVERITIES = ['off', 'hint', 'warning'] as const;

/**
 * The JSON schema of the editor's setting `mahlstick.rules`: an entry for every rule, with what it is about. The
 * manifest of the extension holds it, and a test keeps them alike.
 */
export function ruleSettingsSchema(): Readonly<Record<string, unknown>> {
  return Object.fromEntries(rules.map((rule) => [rule.id, entryOf(rule)]));
}

function entryOf({ summary, severity, limit }: Rule): Readonly<Record<string, unknown>> {
  const usual = `Usually a ${severity}`;
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

function limitSchema({ unit, value, of }: RuleLimit): Readonly<Record<string, unknown>> {
  const largest = LARGEST_LIMIT[unit];
  return {
    type: 'number',
    minimum: 0,
    ...(Number.isFinite(largest) ? { maximum: largest } : {}),
    default: unit === 'part' ? Number((value * 100).toFixed(6)) : value,
    description: unit === 'part' ? `${UNITS[unit]} of ${of}.` : `${UNITS[unit]}, ${of}.`,
  };
}
