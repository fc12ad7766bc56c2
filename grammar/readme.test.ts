import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { format, parse, statements, walk, type StatementKind } from './index.js';
import { notation } from './notation.js';
import { grammarPages } from './production.js';

const readme = readFileSync(new URL('README.md', import.meta.url), 'utf8');
const examples = [...readme.matchAll(/^```mahl\n([\s\S]*?)^```$/gm)].map(([, text = '']) => text);

describe('the reference', () => {
  it.each(examples)('has an example that is read without a problem and is formatted: %s', (example) => {
    expect(parse(example).problems).toEqual([]);
    expect(format(example)).toBe(example);
  });

  it('shows every kind of statement in an example', () => {
    const shown = new Set<StatementKind>();
    for (const example of examples) walk(parse(example).nodes, (node) => shown.add(node.statement.kind));
    const missing = statements.map((entry) => entry.kind).filter((kind) => !shown.has(kind));
    expect(missing).toEqual([]);
  });

  it('holds the grammar of every statement', () => {
    const written = new Set([...readme.matchAll(/^```ebnf (\w+)$/gm)].map(([, page = '']) => page));
    const drawn = new Set([...readme.matchAll(/\]\(railroad\/(\w+)\.svg\)$/gm)].map(([, page = '']) => page));
    expect(grammarPages().filter((page) => !written.has(page) || !drawn.has(page))).toEqual([]);
  });

  // After a change of the grammar: `npx vitest run grammar/readme.test.ts -u` writes the blocks anew.
  it('holds the grammar as the parser has it', async () => {
    const fresh = readme.replace(
      /^```ebnf (\w+)\n[\s\S]*?^```$/gm,
      (_, page: string) => `\`\`\`ebnf ${page}\n${notation(page)}\n\`\`\``,
    );
    await expect(fresh).toMatchFileSnapshot('README.md');
  });

  it('names the default of every statement that has one', () => {
    const words = readme.replace(/\s+/g, ' ').toLowerCase();
    const missing = statements
      .map(
        ({ byDefault = '' }) =>
          byDefault
            .split(/[,;]/)[0]
            ?.replace(/^version /, '')
            .toLowerCase() ?? '',
      )
      .filter((value) => !words.includes(value));
    expect(missing).toEqual([]);
  });
});
