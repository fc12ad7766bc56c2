import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { format as setAsCode, resolveConfig } from 'prettier';
import { beforeAll, describe, expect, it } from 'vitest';
import { textMateScopes, type ScopesOf } from '../tests/support/textmate-scopes.js';
import { classify, parse, statements, type TextClass } from './index.js';
import { textMateGrammar } from './textmate.js';

const scopes: Readonly<Partial<Record<TextClass, string>>> = {
  sentence: 'string',
  number: 'constant.numeric',
  comment: 'comment',
  colour: 'constant.other.color',
  date: 'constant.other.date',
  unit: 'keyword.other.unit',
};

let scopesOf: ScopesOf;

beforeAll(async () => {
  scopesOf = await textMateScopes();
});

/** Where the two ways of colouring disagree, as "words: class, scope". */
function disagreements(text: string): readonly string[] {
  const lines = text.split('\n');
  const columns = lines.map(scopesOf);
  const opened = new Set<number>();
  return classify(parse(text)).flatMap(({ line, start, end, class: found }) => {
    const first = !opened.has(line);
    opened.add(line);
    const expected = found === 'keyword' && first ? 'keyword.control' : scopes[found];
    if (expected === undefined) return [];
    const given = new Set(columns[line]?.slice(start, end));
    const agrees = given.size === 1 && [...given].every((scope) => scope.startsWith(expected));
    return agrees ? [] : [`${lines[line]?.slice(start, end) ?? ''}: ${found}, ${[...given].join(' ')}`];
  });
}

describe('the TextMate grammar', () => {
  // After a change of the words: `npx vitest run grammar/textmate.test.ts -u` writes the file anew.
  it('is the one in the file', async () => {
    const file = fileURLToPath(new URL('mahl.tmLanguage.json', import.meta.url));
    const style = { ...(await resolveConfig(file)), parser: 'json' };
    await expect(await setAsCode(JSON.stringify(textMateGrammar()), style)).toMatchFileSnapshot(
      'mahl.tmLanguage.json',
    );
  });

  it('agrees with the parser on every example of the reference', async () => {
    const readme = await readFile(new URL('README.md', import.meta.url), 'utf8');
    const examples = [...readme.matchAll(/^```mahl\n([\s\S]*?)^```$/gm)].map(([, text = '']) => text);
    expect(examples.length).toBeGreaterThan(30);
    expect(examples.flatMap(disagreements)).toEqual([]);
  });

  it('agrees with the parser on every example plan', async () => {
    const folder = new URL('../examples/', import.meta.url);
    const plans = (await readdir(folder)).filter((name) => name.endsWith('.mahl'));
    expect(plans.length).toBeGreaterThan(0);
    for (const plan of plans) {
      expect(disagreements(await readFile(new URL(plan, folder), 'utf8'))).toEqual([]);
    }
  });

  it.each([
    'object Türe, dominant // “quoted” 12',
    'concept "a \\" // no comment 12"  // 12',
    'concept “a "b" c” // d',
    'concept "no end // 12',
    'mood quiet, 12 "then" // later',
    'mood "quiet"  // later',
    'canvas 80x50cm',
    'canvas 7 1/2 in × 7½ in',
    'horizon -3cm',
    'colour N5 N5/',
    'object x12\n  repeat 3 every (.5, -1/2)',
    'COLOR ash N 6/',
    'colour teal oklch(0.6 0.1 200)',
    'budget value 4 20%, 5 30%',
  ])('agrees with the parser on %s', (text) => {
    expect(disagreements(text)).toEqual([]);
  });

  it('colours the word that opens every statement', () => {
    for (const { words } of statements) {
      if (words.length === 0) continue;
      const opening = words.join(' ');
      expect(new Set(scopesOf(`  ${opening} `).slice(2, 2 + opening.length))).toEqual(
        new Set(['keyword.control.mahl']),
      );
    }
  });
});
