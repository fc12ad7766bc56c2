import { describe, expect, it } from 'vitest';
import { handBench, ROOM } from './test-support.js';

describe('a change that is only tried', () => {
  it('draws what the text gives once it is written, and leaves the document as it is', () => {
    const text = `${ROOM}  shape circle 4 at top of table\n  value 2\n`;
    const change = { kind: 'move', grip: 'object:table', to: { x: 41, y: 33 } } as const;
    const bench = handBench(text);
    expect(bench.tried(change)).toEqual(handBench(bench.after(change)).scene);
    expect(bench.again()).toEqual(bench.scene);
  });

  it('is refused with its reason, like one that is written', () => {
    const bench = handBench(`${ROOM}  shape circle 4 at (1, 1)\n`);
    const change = { kind: 'move', grip: 'object:jar', to: { x: 41, y: 33 } } as const;
    const why = 'What was to be changed is not in the plan any more.';
    expect(bench.tried(change)).toBe(why);
    expect(bench.write(change)).toBe(why);
  });

  it('is refused when it was made in a drawing of another text', () => {
    const bench = handBench(`${ROOM}  shape circle 4 at (1, 1)\n`);
    const change = { kind: 'move', grip: 'object:jug', to: { x: 41, y: 33 } } as const;
    const why = 'The text has changed meanwhile; try it again in the drawing as it is now.';
    expect(bench.write(change, 2)).toBe(why);
    expect(bench.tried(change, 0)).toBe(why);
  });
});
