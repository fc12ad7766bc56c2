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
import { written } from './report.js';
import { inTurn } from './rounds.js';
import { typedIn, typedInPlans, typedLineOf } from './servers/typing.js';

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

  it('are typed in where it is meant, at another text each time', () => {
    const typed = typedLineOf('a\n  shape circle 2 at (3.5, 2)\nb', typedInPlans['an object moved']);
    expect([0, 1, 2].map(typed.after)).toEqual(
      ['3.5', '3.51', '3.52'].map((x) => `  shape circle 2 at (${x}, 2)`),
    );
    expect([typed.type(), typed.type()]).toMatchObject([
      { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 28 } } },
      { range: { end: { line: 1, character: 29 } }, text: typed.after(2) },
    ]);
  });

  it.each(Object.entries(typedIn))('are typed in as %s, which can still be read', (kind, typing) => {
    const text = kinds[kind as keyof typeof typedIn](300);
    const { line, after } = typedLineOf(text, typing);
    const lines = text.split('\n');
    expect(after(0)).toBe(lines[line]);
    expect(after(3)).toMatch(typing.where);
    expect(after(3)).not.toBe(after(2));
    if (kind !== 'json') return;
    expect(() => JSON.parse(lines.with(line, after(3)).join('\n')) as unknown).not.toThrow();
  });

  it.each(Object.entries(typedInPlans))(
    'are typed in as plans, %s, which can still be read',
    async (_, typing) => {
      const { text } = planOf(300, 60);
      const { line, after } = typedLineOf(text, typing);
      const lines = text.split('\n');
      expect(after(0)).toBe(lines[line]);
      for (const edits of [1, 2, 150, 300]) {
        expect(after(edits)).not.toBe(after(edits - 1));
        expect(await ours.read(lines.with(line, after(edits)).join('\n'))).toBe(0);
      }
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

  it('tell how far a cost lies from n and from n log n', () => {
    const sizes = [100, 200, 400, 800];
    const costs = sizes.map((size) => 3 * size * Math.log(size));
    const { offN, offNLogN } = growthOf(sizes, costs);
    expect(offNLogN).toBeCloseTo(0, 9);
    expect(offN).toBeGreaterThan(0.1);
    // Twice as much at one of two sizes is the root of two more than one multiple of n, and as much less at the other.
    expect(growthOf([1, 2], [1, 4]).offN).toBeCloseTo(Math.SQRT2 - 1, 9);
  });

  it('are written with the digits that they have, and not at all where there are none', () => {
    expect(written(spreadOf([1.234, 1.234]))).toBe('1.23 (1.23–1.23)');
    expect(written(spreadOf([NaN, NaN]))).toBe('');
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
