import { describe, expect, it } from 'vitest';
import type { Grip, Spot } from '../../../server/drawing/scene.js';
import type { Made } from './try-feed.js';
import { type Ground, WriteQueue } from './write-queue.js';

/** A text in which a bowl lies, whose edits are made by hand. */
function openText() {
  const text = { version: 1, at: { x: 10, y: 10 } as Spot };
  const asked: Made[] = [];
  const reasons: string[] = [];
  const ground: { now: Ground } = { now: groundOf(text) };
  const queue = new WriteQueue({
    ask: (made) => asked.push(made),
    ground: () => ground.now,
    refused: (reason) => reasons.push(reason),
  });
  const draw = () => {
    ground.now = groundOf(text);
    queue.drawn();
  };
  /** Answers the latest question by making its edit. */
  const write = () => {
    const made = asked.at(-1);
    expect(made?.version).toBe(text.version);
    if (made?.change.kind === 'move') text.at = made.change.to;
    text.version += 1;
    queue.written(asked.length, text.version);
  };
  return { text, asked, reasons, queue, draw, write };
}

function groundOf({ version, at }: { version: number; at: Spot }, fixed?: string): Ground {
  const grip: Grip = { key: 'bowl', subject: 'object:bowl', kind: 'object', at, name: 'bowl' };
  return {
    version,
    handling: {
      grips: [fixed === undefined ? grip : { ...grip, fixed }],
      guides: { lines: [], crossings: [] },
      tones: [],
      colours: [],
      painted: {},
      unit: 'cm',
    },
  };
}

const nudge = (x: number) => ({ kind: 'nudge', grip: 'bowl', by: { x, y: 0 } }) as const;
const dark = { kind: 'change', change: { kind: 'value', subject: 'object:bowl', step: 2 } } as const;

describe('changes that are written', () => {
  it('wait until the one before is in the drawing, and are made on it', () => {
    const { asked, queue, draw, write } = openText();
    queue.add(nudge(1));
    queue.add(dark);
    expect(asked).toHaveLength(1);
    write();
    expect(asked).toHaveLength(1);
    draw();
    expect(asked[1]).toEqual({ version: 2, change: dark.change });
  });

  it('lose no press of a key, however quick', () => {
    const { text, asked, queue, draw, write } = openText();
    for (let press = 0; press < 10; press += 1) queue.add(nudge(0.5));
    expect(queue.outstanding('bowl')).toEqual({ x: 5, y: 0 });
    write();
    expect(queue.outstanding('bowl')).toEqual({ x: 5, y: 0 });
    draw();
    expect(queue.outstanding('bowl')).toEqual({ x: 4.5, y: 0 });
    write();
    draw();
    expect(text.at).toEqual({ x: 15, y: 10 });
    expect(asked).toHaveLength(2);
    expect(queue.busy).toBe(false);
  });

  it('are one for the last value that was gone through by keys', () => {
    const { asked, queue, draw, write } = openText();
    const value = (step: number) =>
      ({ kind: 'change', change: { kind: 'value', subject: 'object:bowl', step } }) as const;
    [2, 3, 4].forEach((step) => queue.add(value(step)));
    write();
    draw();
    expect(asked.map((made) => made.change)).toEqual([value(2).change, value(4).change]);
    const other = { kind: 'change', change: { kind: 'value', subject: 'object:jug', step: 1 } } as const;
    queue.add(other);
    write();
    draw();
    expect(asked).toHaveLength(3);
  });

  it('are one for the last place of a corner of the sketch', () => {
    const { asked, queue, draw, write } = openText();
    const corner = (x: number) =>
      ({
        kind: 'change',
        change: { kind: 'sketch corner', corner: 'upper left', to: { x, y: 4 }, width: 80, height: 60 },
      }) as const;
    [1, 2, 3].forEach((x) => queue.add(corner(x)));
    write();
    draw();
    expect(asked.map((made) => made.change)).toEqual([corner(1).change, corner(3).change]);
  });

  it('make a nudge anew that typing has overtaken', () => {
    const { text, asked, queue, draw, write } = openText();
    queue.add(nudge(1));
    text.version += 1;
    text.at = { x: 20, y: 10 };
    queue.refused(1, 'The text has changed.', true);
    expect(asked).toHaveLength(1);
    draw();
    write();
    draw();
    expect(text.at).toEqual({ x: 21, y: 10 });
  });

  it('give up another change that typing has overtaken, and what waits behind it', () => {
    const { asked, reasons, queue } = openText();
    queue.add(dark);
    queue.add(nudge(1));
    queue.refused(1, 'The text has changed.', true);
    expect(reasons).toEqual(['The text has changed.']);
    expect(queue.busy).toBe(false);
    queue.add(nudge(1));
    expect(asked).toHaveLength(2);
  });

  it('do not take the answer to something else, nor one twice', () => {
    const { asked, queue } = openText();
    queue.add(nudge(1));
    expect(queue.written(9, 2)).toBe(false);
    expect(queue.written(asked.length, 2)).toBe(true);
    expect(queue.written(asked.length, 3)).toBe(false);
  });

  it.each([
    ['is written and not drawn yet', false],
    ['is refused as stale', true],
  ])('go on where the plan is opened anew, and counts from 1 again, while one %s', (_, isStale) => {
    const { text, asked, queue, draw, write } = openText();
    text.version = 50;
    draw();
    queue.add(nudge(1));
    if (isStale) queue.refused(1, 'The text has changed.', true);
    else write();
    text.version = 1;
    draw();
    queue.add(dark);
    if (isStale) {
      write();
      draw();
    }
    expect(asked.at(-1)).toEqual({ version: text.version, change: dark.change });
  });

  it('go on at once after an edit that left the text as it was', () => {
    const { asked, queue, text } = openText();
    queue.add(nudge(0));
    queue.add(dark);
    queue.written(1, text.version);
    expect(asked).toHaveLength(2);
  });
});

describe('what can’t be moved', () => {
  it('is told, and nothing is asked for', () => {
    const reasons: string[] = [];
    const queue = new WriteQueue({
      ask: () => expect.unreachable(),
      ground: () => groundOf({ version: 1, at: { x: 0, y: 0 } }, 'It is on the horizon.'),
      refused: (reason) => reasons.push(reason),
    });
    queue.add(nudge(1));
    queue.add({ kind: 'nudge', grip: 'jug', by: { x: 1, y: 0 } });
    expect(reasons).toEqual([
      'It is on the horizon.',
      'What was to be moved is not in the drawing any more.',
    ]);
  });
});
