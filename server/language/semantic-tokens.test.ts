import { beforeAll, describe, expect, test } from 'vitest';
import type { SemanticTokens } from 'vscode-languageserver-types';
import { everyPlan } from '../../tests/support/plans.js';
import { textMateScopes, type ScopesOf } from '../../tests/support/textmate-scopes.js';
import { legend } from './token-legend.js';
import { openPlan } from './test-support.js';

interface Token {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly type: string;
  readonly modifiers: readonly string[];
}

function unpacked(data: readonly number[]): readonly Token[] {
  const tokens: Token[] = [];
  let line = 0;
  let start = 0;
  for (let index = 0; index < data.length; index += 5) {
    const [lines = 0, columns = 0, length = 0, type = 0, bits = 0] = data.slice(index, index + 5);
    start = lines === 0 ? start + columns : columns;
    line += lines;
    const modifiers = legend.tokenModifiers.filter((_, bit) => (bits & (1 << bit)) !== 0);
    tokens.push({ line, start, end: start + length, type: legend.tokenTypes[type] ?? '', modifiers });
  }
  return tokens;
}

/** The scopes in which a word of that type may stand. */
const agreeing: Readonly<Record<string, RegExp>> = {
  keyword: /^keyword\.control/u,
  operator: /^keyword\.(?:other|operator)/u,
  string: /^string/u,
  number: /^constant\.(?:numeric|other\.date)/u,
  comment: /^comment/u,
  // The words of a rule are words of the language only behind `allow` and `rule`.
  enumMember: /^(?:support\.constant|constant\.other\.color|keyword\.other|variable\.other)/u,
  // Only what a word stands for in its statement tells a name from a word of the language: the grammar knows words
  // alone.
  variable: /^(?:variable|support\.constant|keyword\.other|string\.unquoted|constant\.numeric)/u,
  type: /^entity\.name\.type/u,
};

let scopesOf: ScopesOf;
beforeAll(async () => {
  scopesOf = await textMateScopes();
});

test('every word of every plan is told as the TextMate grammar has it', async () => {
  const plans = await everyPlan();
  expect(plans.length).toBeGreaterThan(80);
  for (const { name, text } of plans) {
    const { service, uri } = openPlan(text.replaceAll('|', ''));
    const lines = service.snapshot(uri)?.lines ?? [];
    const columns = lines.map(scopesOf);
    const tokens = unpacked(service.semanticTokens(uri).data);
    expect(tokens.length, name).toBeGreaterThan(5);
    const odd = tokens.flatMap(({ line, start, end, type }) => {
      const scopes = [...new Set(columns[line]?.slice(start, end))];
      const agrees = scopes.length === 1 && scopes.every((scope) => agreeing[type]?.test(scope));
      return agrees
        ? []
        : [`${name}:${line + 1} ${lines[line]?.slice(start, end)}: ${type}, ${scopes.join(' ')}`];
    });
    expect(odd).toEqual([]);
    // In the order of the text, and none over another.
    tokens.reduce(
      (last, token) => {
        expect(token.line > last.line || token.start >= last.end, `${name}:${token.line + 1}`).toBe(true);
        return token;
      },
      { line: 0, start: 0, end: 0, type: '', modifiers: [] },
    );
  }
});

const plan = 'object sky, dominant\n  value 3\ncolour teal #2f6f73 // so\npath sky';

function told(text: string): readonly string[] {
  const { service, uri } = openPlan(text);
  const lines = text.split('\n');
  return unpacked(service.semanticTokens(uri).data).map(
    ({ line, start, end, type, modifiers }) =>
      `${lines[line]?.slice(start, end)}: ${[type, ...modifiers].join(' ')}`,
  );
}

test('what each word is', () => {
  expect(told(plan)).toEqual([
    'object: keyword',
    'sky: type declaration',
    'dominant: enumMember',
    'value: keyword',
    '3: number',
    'colour: keyword',
    'teal: variable declaration readonly',
    '#2f6f73: enumMember readonly',
    '// so: comment',
    'path: keyword',
    'sky: variable',
  ]);
});

test('a name that is a word of the language is a name where it stands for one', () => {
  expect(told('object value\npath value')).toEqual([
    'object: keyword',
    'value: type declaration',
    'path: keyword',
    'value: variable',
  ]);
});

test('the roles in a budget of colours are words of the language, the groups in one of values are names', () => {
  expect(told('budget colour dominant 70%')).toContain('dominant: enumMember');
  expect(told('budget value dominant 70%')).toContain('dominant: variable');
});

test('the lines that a range touches', () => {
  const { service, uri } = openPlan(plan);
  const range = { start: { line: 1, character: 4 }, end: { line: 2, character: 1 } };
  expect(unpacked(service.semanticTokensIn(uri, range).data).map(({ line }) => line)).toEqual([
    1, 1, 2, 2, 2, 2,
  ]);
});

describe('after an edit', () => {
  /** What a client makes of an answer. */
  const patched = (
    data: readonly number[],
    edits: readonly { start: number; deleteCount: number; data?: number[] }[],
  ) =>
    edits.reduce<number[]>(
      (all, { start, deleteCount, data: added = [] }) => all.toSpliced(start, deleteCount, ...added),
      [...data],
    );

  const change = (text: string) => {
    const bench = openPlan(plan);
    const first = bench.service.semanticTokens(bench.uri);
    bench.service.change(bench.uri, 2, [{ text }]);
    return { ...bench, first };
  };

  test.each(['', `\n${plan}`, plan.replace('teal', 'dusk blue'), `${plan}, tram`, plan])(
    'only what changes is sent: %j',
    (text) => {
      const { service, uri, first } = change(text);
      const answer = service.semanticTokensDelta(uri, first.resultId ?? '');
      if (!('edits' in answer)) throw new Error('it was sent whole');
      expect(answer.edits.length).toBeLessThanOrEqual(1);
      const fresh = openPlan(text).service.semanticTokens('file:///studio/plan.mahl').data;
      expect(patched(first.data, answer.edits)).toEqual(fresh);
      expect(answer.resultId).not.toBe(first.resultId);
    },
  );

  test('everything is sent when the client has an older answer than the last', () => {
    const { service, uri, first } = change('path sky');
    const second = service.semanticTokens(uri);
    const answer: SemanticTokens | object = service.semanticTokensDelta(uri, first.resultId ?? '');
    expect(answer).toHaveProperty('data', second.data);
    expect(service.semanticTokensDelta(uri, 'no such')).toHaveProperty('data', second.data);
  });
});
