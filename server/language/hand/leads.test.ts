import { describe, expect, it } from 'vitest';
import { handBench, movedBy, ROOM } from './test-support.js';

describe('a lead that is moved', () => {
  const text = (line: string): string => `${ROOM}  shape circle 4 at (12, 8)\n${line}\n`;
  it.each([
    ['lead kerb from (2, 40) to focus  // low', 'from', [3, 1], 'lead kerb from (5, 41) to focus  // low'],
    [
      'lead kerb from left edge at 20% to focus',
      'from',
      [0.5, 5],
      'lead kerb from left edge at 30% to focus',
    ],
    ['lead kerb from left edge to focus', 'from', [0, 5], 'lead kerb from left edge at 60% to focus'],
    [
      'lead kerb from left edge at 100 mm to focus',
      'from',
      [0, 5],
      'lead kerb from left edge at 150 mm to focus',
    ],
    ['lead kerb from left edge at 20% to focus', 'from', [9, 5], 'lead kerb from (9, 15) to focus'],
    [
      'lead kerb from left edge of table at 20% to focus',
      'from',
      [0, 3],
      'lead kerb from left edge of table at 40% to focus',
    ],
    [
      'lead kerb from (2, 40) through (9, 9) (30, 3) to focus',
      'through:2',
      [1, 1],
      'lead kerb from (2, 40) through (9, 9) (31, 4) to focus',
    ],
    ['lead kerb from (2, 40) to jug', 'to', [5, 1], 'lead kerb from (2, 40) to (17, 9)'],
    [
      'lead kerb from (2, 40) to top of jug, 1 cm up',
      'to',
      [5, 0],
      'lead kerb from (2, 40) to top of jug, 1 cm up, 5 cm right',
    ],
    ['lead kerb from (2, 40) to (20, 9)', 'to', [-7.9, -1], 'lead kerb from (2, 40) to jug'],
  ] as const)('%s: %s by %j', (line, place, [right, down], after) => {
    expect(movedBy(text(line), `lead:kerb:${place}`, right, down)).toBe(after);
  });

  it('aims at the focal point again when it is put down on it', () => {
    const bench = handBench(text('lead kerb from (2, 40) to (20, 9)'));
    const to = bench.grip('focus').at;
    const after = bench.after({ kind: 'move', grip: 'lead:kerb:to', to });
    expect(after).toContain('lead kerb from (2, 40) to focus\n');
  });

  it.each([
    [
      'lead kerb from (2, 40) through (9, 9) to jug',
      [1, 2],
      'lead kerb from (3, 42) through (10, 11) to jug',
    ],
    [
      'lead kerb from jug through (9, 19) to (30, 3)',
      [1, 2],
      'lead kerb from jug through (10, 21) to (31, 5)',
    ],
    ['lead kerb along table from (2, 40) to focus', [1, 2], 'lead kerb along table from (3, 42) to focus'],
  ] as const)('as a whole: %s by %j', (line, [right, down], after) => {
    expect(movedBy(text(line), 'lead:kerb', right, down)).toBe(after);
  });

  it('is refused as a whole where all its places are those of other things', () => {
    const bench = handBench(text('lead kerb from jug to focus'));
    expect(bench.write({ kind: 'move', grip: 'lead:kerb', to: { x: 1, y: 1 } })).toBe(
      '`kerb` has no place of its own, only those of other things: move one of its ends by itself.',
    );
  });

  it('is refused where it would lead nowhere', () => {
    const bench = handBench(text('lead kerb from (2, 40) to (20, 9)'));
    expect(bench.write({ kind: 'move', grip: 'lead:kerb:to', to: { x: 2, y: 40 } })).toMatch(
      /leads nowhere/u,
    );
  });

  it('does not aim at a thing whose name reads as another place', () => {
    const named = text('lead kerb from (2, 40) to (20, 9)').replace('object jug', 'object centre');
    expect(movedBy(named, 'lead:kerb:to', -8, -1)).toBe('lead kerb from (2, 40) to (12, 8)');
  });
});
