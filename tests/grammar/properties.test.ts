import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classify, format, parse, walk, type Node, type SyntaxTree } from '../../grammar/index.js';
import { anyText, typedPlan } from './texts.js';

const texts = fc.oneof(typedPlan, anyText);

function linesOf(text: string): readonly string[] {
  return text.replace(/^\ufeff/, '').split(/\r\n?|\n/);
}

/** The tree without what formatting may move: lines, columns and the blanks inside free words. */
function meaning(nodes: readonly Node[]): unknown {
  return JSON.parse(
    JSON.stringify(nodes, (key, value: unknown) =>
      ['start', 'end', 'line', 'lastLine'].includes(key) ? undefined : value,
    ),
  ) as unknown;
}

function commentsOf(tree: SyntaxTree): readonly string[] {
  return tree.comments.map((comment) => comment.text);
}

describe('reading any text', () => {
  it('accounts for every line: a statement, a comment, a blank, or a problem', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const tree = parse(text);
        const accounted = new Set([...tree.problems, ...tree.comments].map(({ line }) => line));
        walk([...tree.nodes, ...tree.detached], (node) => accounted.add(node.line));
        const lines = linesOf(text);
        expect(tree.lineCount).toBe(lines.length);
        const lost = lines.filter((line, index) => line.trim() !== '' && !accounted.has(index));
        expect(lost).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('keeps every place inside its line, and blocks inside the blocks around them', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const tree = parse(text);
        const lines = linesOf(text);
        const inside = (line: number, start: number, end: number): boolean =>
          0 <= start && start <= end && end <= (lines[line]?.length ?? -1);
        for (const { line, start, end } of [...tree.problems, ...tree.comments]) {
          expect(inside(line, start, end)).toBe(true);
        }
        walk([...tree.nodes, ...tree.detached], (node, parents) => {
          expect(inside(node.line, node.statement.start, node.statement.end)).toBe(true);
          const parent = parents.at(-1);
          if (parent === undefined) return;
          expect(parent.line).toBeLessThan(node.line);
          expect(parent.lastLine).toBeGreaterThanOrEqual(node.lastLine);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('says each problem in a sentence, in words a painter knows', () => {
    fc.assert(
      fc.property(texts, (text) => {
        for (const problem of parse(text).problems) {
          expect(problem.message).toMatch(/^\S.*[.?]$/su);
          expect(problem.message).not.toMatch(/undefined|Keyword|Choice|EOF|``/);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('classifies words in order and without overlap', () => {
    fc.assert(
      fc.property(texts, (text) => {
        let last = { line: -1, end: 0 };
        for (const { line, start, end } of classify(parse(text))) {
          expect(line > last.line || start >= last.end).toBe(true);
          expect(end).toBeGreaterThan(start);
          last = { line, end };
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('reading after an edit', () => {
  it('gives what reading afresh gives', () => {
    const edit = fc.record({ at: fc.nat(1000), removed: fc.nat(60), put: texts });
    fc.assert(
      fc.property(typedPlan, fc.array(edit, { maxLength: 5 }), (text, edits) => {
        let current = text;
        let tree = parse(current);
        for (const { at, removed, put } of edits) {
          const from = Math.min(at, current.length);
          current = current.slice(0, from) + put + current.slice(from + removed);
          tree = parse(current, tree);
          expect(tree).toEqual(parse(current));
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('formatting', () => {
  it('changes nothing the second time', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const once = format(text);
        expect(format(once)).toBe(once);
      }),
      { numRuns: 600 },
    );
  });

  it('keeps the tree and every comment', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const before = parse(text);
        const after = parse(format(text));
        expect(commentsOf(after)).toEqual(commentsOf(before));
        expect(meaning(after.nodes)).toEqual(meaning(before.nodes));
        expect(meaning(after.detached)).toEqual(meaning(before.detached));
      }),
      { numRuns: 600 },
    );
  });

  it('mends uneven indentation that could be read, and brings in no problem', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const codes = (tree: SyntaxTree): readonly string[] =>
          tree.problems.map((problem) => problem.code).filter((code) => code !== 'uneven indentation');
        expect(codes(parse(format(text)))).toEqual(codes(parse(text)));
      }),
      { numRuns: 400 },
    );
  });
});

describe('texts that mean harm', () => {
  const deep = Array.from({ length: 10_000 }, (_, depth) => `${' '.repeat(depth)}object a`).join('\n');
  const nasty: Readonly<Record<string, string>> = {
    'a NUL': 'object a\0b\n\0',
    'lone surrogates': 'object \ud800a\udc00 // \ud800',
    'a line of 100,000 letters': `object ${'a'.repeat(100_000)}`,
    'a line of 100,000 foreign signs': '@'.repeat(100_000),
    'a line of 100,000 quotes': '"'.repeat(100_000),
    '100,000 escapes that never end': `concept "${'\\"'.repeat(50_000)}`,
    '100,000 digits': `scale ${'9'.repeat(100_000)}`,
    '50,000 dashes': `scale ${'-'.repeat(50_000)}`,
    '30,000 open brackets': `object a\n  shape outline ${'('.repeat(30_000)}`,
    '30,000 unfinished colours': `colour a ${'rgb('.repeat(30_000)}`,
    '30,000 unfinished notations': `colour a ${'N '.repeat(30_000)}`,
    '10,000 nested levels': deep,
    'a line of 60,000 list items': `path ${'a '.repeat(60_000)}`,
  };

  it.each(Object.entries(nasty))('%s', (_, text) => {
    const tree = parse(text);
    expect(tree.lineCount).toBe(linesOf(text).length);
    const once = format(text);
    expect(format(once)).toBe(once);
    expect(parse(`${text}\n`, tree).problems).toEqual(tree.problems);
  });

  it('a plan of 10,000 lines and 200,000 points is read whole', () => {
    const outline = Array.from({ length: 100 }, (_, index) => `(${index}, ${index % 7}.5)`).join(' ');
    const text = Array.from(
      { length: 2_000 },
      (_, index) => `object o${index}\n  value 3\n  colour rust\n  shape outline ${outline} (${index}, 0)\n`,
    ).join('');
    const { nodes, problems, lineCount } = parse(text);
    expect(problems).toEqual([]);
    expect(lineCount).toBe(8_001);
    expect(nodes).toHaveLength(2_000);
    expect(nodes.at(-1)?.children.at(-1)?.statement).toMatchObject({ shape: { points: { length: 101 } } });
  });
});
