import { describe, expect, it } from 'vitest';
import { readBlocks } from './contestants/bare-blocks.js';
import { readJson } from './contestants/bare-json.js';
import { ours } from './contestants/ours.js';
import { blocksOf } from './documents/blocks.js';
import { styleSheetOf } from './documents/css.js';
import { planOf, planOfLines } from './documents/plan.js';
import { jsonOf, yamlOf } from './documents/records.js';
import { growthOf, ratioOf, spreadOf } from './figures.js';
import { optionsOf, partNames } from './options.js';
import { inTurn } from './rounds.js';
import { typedIn, typedLineOf } from './servers/editing.js';

const kinds = {
  plan: (lines: number) => planOfLines(lines).text,
  blocks: blocksOf,
  css: styleSheetOf,
  json: jsonOf,
  yaml: yamlOf,
};

describe('documents that are measured on', () => {
  for (const [kind, document] of Object.entries(kinds)) {
    it.each([100, 1_000])(`${kind} of exactly %i lines, the same each time`, (lines) => {
      const text = document(lines);
      expect(text.split('\n')).toHaveLength(lines + 1);
      expect(document(lines)).toBe(text);
      expect(text.endsWith('\n')).toBe(true);
    });
  }

  it('are read without a problem', async () => {
    expect(await ours.read(planOfLines(1_000).text)).toBe(0);
    expect(await ours.read(planOf(300, 60).text)).toBe(0);
    expect(readJson(jsonOf(1_000)).problems).toBe(0);
    expect(readBlocks(blocksOf(1_000)).problems).toBe(0);
  });

  it('are as they are meant to be', () => {
    expect(readJson(jsonOf(100)).value).toEqual(JSON.parse(jsonOf(100)));
    const { statements } = readBlocks(blocksOf(300));
    const objects = statements.filter(({ items }) => items[0] === 'object');
    expect(objects).toHaveLength(planOfLines(300).objects);
    expect(objects[0]?.children.map(({ items }) => items[0])).toEqual(
      expect.arrayContaining(['shape', 'colour']),
    );
  });

  it('are typed in at the number that is meant, which is another each time', () => {
    const typed = typedLineOf('a\n  at (3.5, 2)\nb', /^ {2}at \(([\d.]+)/);
    expect(typed.line).toBe(1);
    expect([0, 1, 2].map(typed.after)).toEqual(['  at (3.5, 2)', '  at (3.51, 2)', '  at (3.52, 2)']);
  });

  it.each(Object.keys(typedIn) as (keyof typeof typedIn)[])(
    'as %s can still be read after typing',
    async (kind) => {
      const text = kinds[kind === 'mahl' ? 'plan' : kind](300);
      const { line, after } = typedLineOf(text, typedIn[kind]);
      const lines = text.split('\n');
      expect(after(0)).toBe(lines[line]);
      const typed = lines.with(line, after(3)).join('\n');
      expect(typed).not.toBe(text);
      if (kind === 'mahl') expect(await ours.read(typed)).toBe(0);
      if (kind === 'json') expect(() => JSON.parse(typed) as unknown).not.toThrow();
      expect(after(3)).toMatch(typedIn[kind]);
    },
  );
});

describe('figures', () => {
  it('are medians with quartiles', () => {
    expect(spreadOf([5, 1, 3, 2, 4])).toEqual({ median: 3, lower: 2, upper: 4, samples: 5 });
    expect(ratioOf([2, 4, 9], [1, 2, 3]).median).toBe(2);
  });

  it('tell what power a cost grows with', () => {
    const sizes = [100, 200, 400, 800];
    const squares = growthOf(
      sizes,
      sizes.map((size) => size ** 2 / 7),
    );
    expect(squares.exponent).toBeCloseTo(2, 9);
    expect(squares.ofNLogN).toBeGreaterThan(1.1);
    expect(squares.ofNLogN).toBeLessThan(1.3);
  });

  it('come from samples taken in turn', async () => {
    const order: string[] = [];
    const contestants = ['a', 'b', 'c'].map((name) => ({
      name,
      sample: (round: number) => {
        order.push(name);
        return { elapsed: round, worked: round };
      },
    }));
    const samples = await inTurn(contestants, 2);
    expect(order.join('')).toBe('abcbca');
    expect(samples.get('c')?.map(({ elapsed }) => elapsed)).toEqual([0, 1]);
  });
});

describe('arguments', () => {
  it('choose parts and rounds', () => {
    expect(optionsOf(['--only', 'start,parse', '--rounds', '5'])).toMatchObject({
      parts: ['parse', 'start'],
      rounds: 5,
    });
    expect(optionsOf([]).parts).toEqual(partNames);
  });

  it('that mean nothing are refused', () => {
    expect(() => optionsOf(['--only', 'speed'])).toThrow('No part speed');
    expect(() => optionsOf(['--rounds', 'many'])).toThrow('--rounds');
  });
});
