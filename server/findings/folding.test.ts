import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { checked } from '../../tests/support/plan.js';
import type { Finding, RuleFinding } from './finding.js';
import { hiddenObject } from './rules/hidden-object.js';

const CANVAS = 'canvas  100 x 50 cm\nfocus   upper right';

/** A wall with so many crumbs behind it, of which nothing is seen. */
function crumbs(count: number, extra = ''): readonly Finding[] {
  const behind = Array.from(
    { length: count },
    (_, index) =>
      `object  crumb${index}\n  plane   background\n  shape   circle 2 at (${5 * index + 4}, 20)\n  value   1`,
  );
  const wall = 'object  wall, dominant\n  shape   rectangle (0, 0) to (100, 50)\n  value   4';
  const { findings } = checked([CANVAS, ...behind, wall, extra].join('\n'));
  return findings.filter(({ rule }) => rule === 'hidden object' || rule === 'needless exception');
}

/** What is told of so many findings of one rule, one of each crumb. */
function standIns(count: number, more: (index: number) => Partial<RuleFinding>): readonly Finding[] {
  const given = Array.from({ length: count }, (_, index): RuleFinding => ({
    message: `\`crumb${index}\` is hidden.`,
    location: { line: index, start: 0, end: 1 },
    objects: [index],
    ...more(index),
  }));
  const rule = vi.spyOn(hiddenObject, 'check').mockReturnValue(given);
  onTestFinished(() => rule.mockRestore());
  return crumbs(count);
}

describe('the findings of one rule', () => {
  it('are told one by one up to five', () => {
    expect(crumbs(5).map(({ objects }) => objects)).toEqual([[0], [1], [2], [3], [4]]);
  });

  it('are the first three of more, with the others named and marked', () => {
    const found = crumbs(6);
    expect(found.map(({ objects }) => objects)).toEqual([[0], [1], [2, 3, 4, 5]]);
    expect(found[2]?.message).toBe(
      'Nothing of `crumb2` is seen: `wall` covers it. So it is with three more: `crumb3`, `crumb4` and `crumb5`.',
    );
    expect(found[2]?.related.some(({ message }) => message.startsWith('Nothing of `crumb5`'))).toBe(true);
  });

  it('name no more than five of many', () => {
    expect(crumbs(12)[2]?.message).toMatch(
      /So it is with nine more: `crumb3`, `crumb4`, `crumb5`, `crumb6`, `crumb7` and others\.$/,
    );
  });

  it('lead to no more than thirty of many', () => {
    expect([33, 34].map((count) => standIns(count, () => ({}))[2]?.related.length)).toEqual([30, 30]);
    expect(standIns(32, () => ({}))[2]?.related).toHaveLength(29);
  });

  it('are the worst three where the rule measures how far they go beyond its limit', () => {
    const found = standIns(7, (index) => ({ excess: [0.1, 0.4, 0.2, 0.4, 0, 0.3, 0.4][index] ?? 0 }));
    expect(found.map(({ objects }) => objects[0])).toEqual([1, 3, 6]);
    expect(found[2]?.message).toBe(
      '`crumb6` is hidden. So it is with four more: `crumb5`, `crumb2`, `crumb0` and `crumb4`.',
    );
  });

  it('are the farthest off of many that lie off the canvas', () => {
    const off = [3, 9, 5, 20, 4, 12].map(
      (far, index) => `object  gull${index}\n  shape   circle 4 at (${-2 - far}, 20)\n  value   1`,
    );
    const { findings } = checked([CANVAS, ...off].join('\n'));
    const told = findings.filter(({ rule }) => rule === 'off the canvas');
    expect(told.map(({ objects }) => objects[0])).toEqual([3, 5, 1]);
  });

  it('are the gravest before the worst', () => {
    const found = standIns(6, (index) => ({
      excess: index,
      severity: index === 1 ? ('warning' as const) : ('hint' as const),
    }));
    expect(found.map(({ objects }) => objects[0])).toEqual([1, 5, 4]);
  });

  it('have what mends them worked out when it is read, and only of those that are read', () => {
    const worked: number[] = [];
    const found = standIns(9, (index) => ({
      remedy: () => {
        worked.push(index);
        return { advice: `Move crumb ${index}.` };
      },
    }));
    expect(found).toHaveLength(3);
    expect(worked).toEqual([]);
    expect(found[2]?.advice).toBe('Move crumb 2.');
    expect([found[2]?.fix, found[2]?.advice]).toEqual([undefined, 'Move crumb 2.']);
    expect(worked).toEqual([2]);
    expect(found[0]?.advice).toBe('Move crumb 0.');
    expect(worked).toEqual([2, 0]);
  });

  it('may be set aside for one that is only counted', () => {
    const found = crumbs(8, 'allow hidden object for crumb6 because "it rolls out in the next picture"');
    expect(found.map(({ rule, objects, allowed }) => [rule, objects, allowed !== undefined])).toEqual([
      ['hidden object', [0], false],
      ['hidden object', [1], false],
      ['hidden object', [2, 3, 4, 5, 7], false],
      ['hidden object', [6], true],
    ]);
  });
});
