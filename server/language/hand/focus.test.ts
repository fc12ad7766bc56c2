import { describe, expect, it } from 'vitest';
import { differing, handBench } from './test-support.js';

describe('the focal point that is moved', () => {
  const at = (words: string): string =>
    `canvas 90 x 60 cm\ndivide thirds, quarters\nfocus ${words}  // her hands\n  win by value\nobject jug\n  shape circle 4 at (12, 8)\n`;
  const move = (words: string, x: number, y: number): string => {
    const bench = handBench(at(words));
    return differing(at(words), bench.after({ kind: 'move', grip: 'focus', to: { x, y } }));
  };
  it.each([
    ['(10, 10)', [60, 20], 'focus upper right of thirds  // her hands'],
    ['(10, 10)', [60.01, 20], 'focus upper right of thirds  // her hands'],
    ['(10, 10)', [61, 20], 'focus (61, 20)  // her hands'],
    ['upper right of thirds', [61, 20], 'focus (61, 20)  // her hands'],
    ['upper right of thirds', [45, 15], 'focus upper centre of quarters  // her hands'],
    ['(50%, 100 mm)', [9, 12], 'focus (10%, 120 mm)  // her hands'],
    ['jug', [13, 8], 'focus (13, 8)  // her hands'],
    ['jug, 2 cm up', [13, 6], 'focus jug, 2 cm up, 1 cm right  // her hands'],
    ['left edge at 20%', [1, 30], 'focus left edge at 50%  // her hands'],
  ] as const)('%s to %j', (words, [x, y], after) => {
    expect(move(words, x, y)).toBe(after);
  });

  it('is put on a crossing by its name', () => {
    const bench = handBench(at('(10, 10)'));
    const after = bench.after({ kind: 'crossing', name: 'quarters upper centre' });
    expect(differing(at('(10, 10)'), after)).toBe('focus upper centre of quarters  // her hands');
    expect(bench.write({ kind: 'crossing', name: 'golden upper centre' })).toBe(
      'The division of the canvas has no such crossing any more.',
    );
  });

  it.each([
    ['canvas 90 x 60 cm\n\nobject jug\n', 'canvas 90 x 60 cm\nfocus lower left\n\nobject jug\n'],
    [
      'canvas  90 x 60 cm\r\n  medium  oil\r\n  // on panel\r\nscale   5\r\n',
      'canvas  90 x 60 cm\r\n  medium  oil\r\n  // on panel\r\nfocus   lower left\r\nscale   5\r\n',
    ],
    ['', 'focus lower left\n'],
  ])('gets a line where there is none: %j', (text, after) => {
    expect(handBench(text).after({ kind: 'crossing', name: 'golden lower left' })).toBe(after);
  });
});
