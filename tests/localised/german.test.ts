import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { speaking, statements } from '../../grammar/index.js';
import { standing } from '../../server/findings/check.js';
import type { Finding } from '../../server/findings/finding.js';
import { rules } from '../../server/findings/rules.js';
import { limitInWords } from '../../server/findings/words/words.js';
import { german } from '../../server/entry/german.js';
import { checked } from '../support/plan.js';
import { sourcesIn } from '../support/sources.js';
import { placesOf, sentencesIn } from './keys.js';
import { markedGerman, notGerman } from './marked-german.js';

const root = path.resolve(import.meta.dirname, '../..');
const plans = path.join(root, 'server/findings/plans');

const inSources = sentencesIn(root, sourcesIn(root, ['grammar', 'server']));
/** What rules keep as data, of which sentences are made. */
const inRules = rules.flatMap(({ summary, explanation, source, limit }) => [
  summary,
  explanation,
  source,
  ...(limit ? [limit.unit === 'part' ? `{0} of ${limit.of}` : `{0} ${limit.of}`] : []),
]);
/** What the table of the grammar keeps of statements, each beside what holds without it. */
const inStatements = statements.flatMap(({ meaning, byDefault }) => [
  meaning,
  ...(byDefault === undefined ? [] : [`Left out: ${byDefault}.`]),
]);
const english = new Set([...inSources.files.keys(), ...inRules, ...inStatements]);

describe('the German sentences', () => {
  it('are there for all that is said, and for nothing else', () => {
    expect([...english].filter((sentence) => !Object.hasOwn(german, sentence))).toEqual([]);
    expect(Object.keys(german).filter((sentence) => !english.has(sentence))).toEqual([]);
    expect(english.size).toBeGreaterThan(800);
  });

  it('have the places of the English ones, each filled', () => {
    const unlike = Object.entries(german).filter(
      ([sentence, told]) =>
        placesOf(sentence).join() !== placesOf(told).join() || told.trim() !== told || told === '',
    );
    expect(unlike).toEqual([]);
  });

  it('end as the English ones do', () => {
    const ending = (sentence: string): string => /[.?:;,]$/u.exec(sentence)?.[0] ?? '';
    const unlike = Object.entries(german).filter(
      ([sentence, told]) => ending(sentence).replace(',', '') !== ending(told).replace(',', ''),
    );
    expect(unlike.map(([sentence]) => sentence)).toEqual([]);
  });

  it('are written out where they are said', () => {
    const kept = inSources.unwritten.filter((call) => !call.startsWith('grammar/localised.ts: '));
    expect(kept).toEqual([]);
    expect(inSources.miscounted).toEqual([]);
  });
});

function wordsOf(finding: Finding): readonly string[] {
  return [
    finding.message,
    finding.advice ?? '',
    finding.fix?.title ?? '',
    ...finding.related.map(({ message }) => message),
  ];
}

const texts = readdirSync(plans)
  .filter((file) => file.endsWith('.breaks.mahl'))
  .map((file) => ({ file, text: readFileSync(path.join(plans, file), 'utf8') }));

it.each(texts)('what $file breaks is told without a word that is left in English', ({ text }) => {
  const { plan, told } = speaking(markedGerman, () => {
    const { plan, findings } = checked(text);
    return { plan, told: standing(findings).map(wordsOf) };
  });
  const paints = plan.palette?.paints.map(({ name }) => name) ?? [];
  expect(told.length).toBeGreaterThan(0);
  expect(told.flat().filter((words) => notGerman(words, paints) !== '')).toEqual([]);
  for (const words of told) {
    const [message, ...others] = words.map((one) =>
      one.replaceAll(/[⟦⟧]/gu, '').replaceAll(/`[^`]*`/gu, '`…`'),
    );
    expect(message).toMatch(/^[\p{L}`„\d].*[.?!]$/su);
    expect([message, ...others].join('\n')).not.toMatch(/undefined|NaN|\{\d\}|  | ,/u);
  }
});

describe('a rule', () => {
  it.each(rules)('$id is told with its reasons and its limit in German', (rule) => {
    const { summary, explanation, source, limit } = rule;
    for (const told of [summary, explanation, source]) expect(german[told]).not.toBe(told);
    if (!limit) return;
    expect(notGerman(speaking(markedGerman, () => limitInWords(limit)))).toBe('');
  });
});
