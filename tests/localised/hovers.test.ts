import { describe, expect, it } from 'vitest';
import { choiceLists, classify, statements } from '../../grammar/index.js';
import { connectingWords } from '../../grammar/words.js';
import { german } from '../../server/entry/german.js';
import { rules } from '../../server/findings/rules.js';
import { everything, openPlan } from '../../server/language/test-support.js';
import { stockNames } from '../../server/plan/stock.js';
import { everyPlan } from '../support/plans.js';
import { markedGerman, wordsLeft } from './marked-german.js';

const abilities = { ...everything, drawings: false, language: markedGerman };

/** Words of the plan language: how statements are written, what can be chosen, rules and stock sizes by name. */
const ofLanguage = wordsOf(
  [
    ...statements.flatMap(({ words, form }) => [...words, form]),
    ...Object.values(choiceLists).flat(),
    ...connectingWords,
    ...rules.map(({ id }) => id),
    ...stockNames(),
    'upper lower left right centre edge corner crossing root three degrees warning hint NAME COLUMN ROW',
  ].join(' '),
);

function wordsOf(text: string): ReadonlySet<string> {
  return new Set([...text.matchAll(/\p{L}{2,}/gu)].map(([word]) => word.toLowerCase()));
}

/**
 * Words that are told and are neither German, nor of the plan, nor of its language; how statements are written aside.
 */
function english(told: string, text: string): readonly string[] {
  const plain = told
    .replaceAll(/```mahl\n[\s\S]*?```/gu, ' ')
    .replaceAll(/\]\(file:[^)]*\)/gu, ' ')
    .replaceAll(/\\(?=[\p{P}\p{S}])/gu, '')
    .replaceAll(/#[0-9a-f]{6}\b/gu, ' ');
  const own = wordsOf(text);
  return [...wordsOf(wordsLeft(plain))].filter((word) => !own.has(word) && !ofLanguage.has(word));
}

const contentOf = (content: unknown): string =>
  typeof content === 'object' && content !== null && 'value' in content
    ? String(content.value)
    : typeof content === 'string'
      ? content
      : '';

const plans = (await everyPlan()).filter(({ name }) => /^(?:examples|server\/measure\/plans)\//u.test(name));

describe.each(plans)('a German reader of $name', ({ text: written }) => {
  const text = written.replaceAll('|', '');
  const { service, uri, failures } = openPlan(text, abilities);
  while (service.mixFurther(uri));
  const snapshot = service.snapshot(uri);
  const lines = snapshot?.lines ?? [];

  it('is told in German what words mean and what is measured', () => {
    const told = (snapshot ? classify(snapshot.tree) : [])
      .filter((token) => token.class !== 'comment')
      .map(({ line, start, end }) => {
        const hover = service.hover(uri, { line, character: Math.floor((start + end) / 2) });
        return contentOf(hover?.contents);
      });
    expect(told.join('')).toContain('⟦');
    expect(told.flatMap((words) => english(words, text).map((word) => `${word}: ${words}`))).toEqual([]);
    expect(failures).toEqual([]);
  });

  it('reads in German what stands beside the text', () => {
    const hints = service.inlayHints(uri, {
      start: { line: 0, character: 0 },
      end: { line: lines.length, character: 0 },
    });
    const told = hints.map(({ label, tooltip }) => `${JSON.stringify(label)} ${contentOf(tooltip)}`);
    expect(told.flatMap((words) => english(words, text))).toEqual([]);
  });

  it('is offered in German what a word means', () => {
    const told = lines.flatMap((words, line) =>
      [words.search(/\S|$/u), words.length].flatMap((character) =>
        service.completions(uri, { line, character }).map(
          ({ detail = '', documentation }) =>
            // What is to be filled in stands in capitals, and a rule with the severity and limit of a plan.
            `${/^[^⟦]*[A-Z]{2}|^(?:hint|warning)/u.test(detail) ? '' : detail} ${contentOf(documentation)}`,
        ),
      ),
    );
    expect(
      [...new Set(told)].flatMap((words) => english(words, text).map((word) => `${word}: ${words}`)),
    ).toEqual([]);
  });
});

it('the hover of a rule is German, with its reasons and its source', () => {
  const told = rules.map(({ id, explanation, source }) => {
    const { service, uri } = openPlan(`rule ${id} hint`, {
      ...everything,
      hoverMarkdown: false,
      language: german,
    });
    const words = contentOf(service.hover(uri, { line: 0, character: 0 })?.contents);
    return [explanation, source].every((one) => words.includes(german[one] ?? one));
  });
  expect(told).not.toContain(false);
  expect(told.length).toBeGreaterThan(60);
});
