import { describe, expect, it } from 'vitest';
import configuration from './language-configuration.json' with { type: 'json' };
import { opensBlock, parse, statements, statementsIn } from './index.js';
import { wordPattern } from './tokens.js';

function pattern({ pattern: source, flags }: { pattern: string; flags: string }): RegExp {
  return new RegExp(source, flags);
}

const { increaseIndentPattern, decreaseIndentPattern } = configuration.indentationRules;

/** A line that begins a block, where it is not the name of its kind alone. */
const writtenAs: Partial<Record<string, string>> = { 'colour definition': 'colour', divide: 'divide own' };

describe('the language configuration', () => {
  it('takes the same stretches of text for words as the parser', () => {
    const words = (text: string, one: RegExp): readonly string[] =>
      text.match(new RegExp(one.source, 'gu')) ?? [];
    const text = 'object Türe-2 girl’s-hat हिन्दी 12 -x a_b дом “山”';
    expect(words(text, pattern(configuration.wordPattern))).toEqual(words(text, wordPattern));
    expect(words(text, wordPattern)).toContain('हिन्दी');
  });

  it('indents after every line that others are written under', () => {
    const margin = statementsIn('plan').map((entry) => entry.kind);
    for (const kind of margin) {
      const opens = pattern(increaseIndentPattern).test(writtenAs[kind] ?? kind);
      expect([kind, opens]).toEqual([kind, opensBlock(kind)]);
    }
    expect(pattern(increaseIndentPattern).test('divide  thirds, own')).toBe(true);
    expect(pattern(increaseIndentPattern).test('divide  golden')).toBe(false);
    expect(pattern(increaseIndentPattern).test('  photo "a.jpg"')).toBe(true);
    expect(pattern(increaseIndentPattern).test('  shape outline (1, 2)')).toBe(true);
    expect(pattern(increaseIndentPattern).test('  shape circle 8')).toBe(false);
  });

  it('goes back to the left margin only for statements that stand nowhere else', () => {
    for (const { words, in: blocks } of statements) {
      const [word = ''] = words;
      if (!pattern(decreaseIndentPattern).test(`  ${word} `)) continue;
      expect([word, blocks]).toEqual([word, ['plan']]);
    }
    expect(pattern(decreaseIndentPattern).test('  object ')).toBe(true);
    expect(pattern(decreaseIndentPattern).test('object ')).toBe(false);
  });

  it('goes back a level after a line that is left empty, and only then', () => {
    const [rule] = configuration.onEnterRules;
    expect(rule?.action).toEqual({ indent: 'outdent' });
    const isEmpty = (line: string) => new RegExp(rule?.beforeText ?? '', 'u').test(line);
    expect(['  ', '\t', '', '  value 3', 'object'].map(isEmpty)).toEqual([true, true, false, false, false]);
  });

  it('begins remarks as the parser does', () => {
    const remark = `${configuration.comments.lineComment} object`;
    expect(parse(remark).comments).toHaveLength(1);
  });
});
