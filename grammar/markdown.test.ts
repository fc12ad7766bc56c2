import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry, type IGrammar } from 'vscode-textmate';

const read = (file: string): Promise<string> => readFile(new URL(file, import.meta.url), 'utf8');

/**
 * Stands in for a Markdown grammar: a paragraph a line, lists and quotations as editors have them, and nothing of code
 * blocks.
 */
const page = JSON.stringify({
  scopeName: 'text.html.markdown',
  patterns: [{ include: '#block' }],
  repository: {
    block: {
      patterns: [
        {
          begin: '(^|\\G)[ ]{0,3}(?:[*+-]|[0-9]+\\.)[ \\t]',
          while: '((^|\\G)([ ]{2,4}|\\t))|(^[ \\t]*$)',
          patterns: [{ include: '#block' }],
        },
        { begin: '(^|\\G)[ ]{0,3}> ?', while: '(^|\\G)\\s*> ?', patterns: [{ include: '#block' }] },
        { match: '(^|\\G).+', name: 'meta.paragraph.markdown' },
      ],
    },
  },
});

let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await loadWASM(new Uint8Array(await readFile(wasm)).buffer);
  const files: Readonly<Record<string, string>> = {
    'text.html.markdown': page,
    'source.mahl': await read('mahl.tmLanguage.json'),
    'markdown.mahl.codeblock': await read('markdown.tmLanguage.json'),
  };
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: (scope) =>
      Promise.resolve(
        files[scope] === undefined ? null : parseRawGrammar(files[scope], `${scope}.tmLanguage.json`),
      ),
    getInjections: (scope) => (scope === 'text.html.markdown' ? ['markdown.mahl.codeblock'] : []),
  });
  const loaded = await registry.loadGrammar('text.html.markdown');
  if (loaded === null) throw new Error('the grammar did not load');
  grammar = loaded;
});

/** For each line the scope of its first word and whether it counts as a plan. */
function scopesOf(text: string): readonly string[] {
  let stack = INITIAL;
  return text.split('\n').map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    const word = tokens.find(({ startIndex, endIndex }) => /[^\s>]/.test(line.slice(startIndex, endIndex)));
    const found = word?.scopes ?? [];
    return `${found.includes('meta.embedded.block.mahl') ? 'plan: ' : ''}${found.at(-1) ?? ''}`;
  });
}

describe('a plan in a page of Markdown', () => {
  it('is coloured between its fences, and nothing else is', () => {
    expect(scopesOf('Before\n```mahl\ncanvas 40 x 30 cm\n// a remark\n```\nAfter')).toEqual([
      'meta.paragraph.markdown',
      'punctuation.definition.markdown',
      'plan: keyword.control.mahl',
      'plan: comment.line.double-slash.mahl',
      'punctuation.definition.markdown',
      'meta.paragraph.markdown',
    ]);
  });

  it.each(['~~~ mahl', '````mahl', '``` MAHL for the wall', '   ```mahl'])('begins with %s', (fence) => {
    const closing = /[`~]+/.exec(fence)?.[0] ?? '';
    expect(scopesOf(`${fence}\nobject jug\n${closing}\nAfter`).slice(1)).toEqual([
      'plan: keyword.control.mahl',
      'punctuation.definition.markdown',
      'meta.paragraph.markdown',
    ]);
  });

  it('ends with its fence even where a sentence is not closed', () => {
    expect(scopesOf('```mahl\nconcept "One lit door\n```\nAfter').at(-1)).toBe('meta.paragraph.markdown');
  });

  it.each([
    ['a list', '- one\n\n', '  '],
    ['a numbered list', '1. one\n', '   '],
    ['a quotation', '', '> '],
  ])('is coloured within %s', (_, above, before) => {
    const lines = ['```mahl', 'object jug', '  colour teal', '```'].map((line) => before + line);
    const scopes = scopesOf(`${above}${lines.join('\n')}\n\nAfter`);
    expect(scopes.slice(-6)).toEqual([
      'punctuation.definition.markdown',
      'plan: keyword.control.mahl',
      'plan: keyword.control.mahl',
      'punctuation.definition.markdown',
      '',
      'meta.paragraph.markdown',
    ]);
  });

  it.each(['```mahlstick', '```js', '`mahl`'])('does not begin with %s', (line) => {
    expect(scopesOf(`${line}\nobject jug`)[1]).toBe('meta.paragraph.markdown');
  });
});
