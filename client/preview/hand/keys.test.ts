import { describe, expect, it } from 'vitest';
import { askedBy } from './keys.js';

const plain = { code: '', altKey: false, shiftKey: false, ctrlKey: false, metaKey: false };

describe('keys in the drawing', () => {
  it('leave plain arrow keys to going from thing to thing', () => {
    expect(askedBy({ ...plain, key: 'ArrowRight' }, 'thing', 'cm')).toBeUndefined();
    expect(askedBy({ ...plain, key: 'Enter' }, 'thing', 'cm')).toBeUndefined();
  });

  it('move a thing by a step or a large step', () => {
    expect(askedBy({ ...plain, altKey: true, key: 'ArrowUp' }, 'thing', 'cm')).toEqual({
      kind: 'nudge',
      by: { x: 0, y: -0.1 },
    });
    expect(askedBy({ ...plain, altKey: true, shiftKey: true, key: 'ArrowRight' }, 'thing', 'in')).toEqual({
      kind: 'nudge',
      by: { x: 0.5, y: 0 },
    });
  });

  it('move a handle with or without Alt', () => {
    const by = { x: -1, y: 0 };
    expect(askedBy({ ...plain, key: 'ArrowLeft' }, 'handle', 'mm')).toEqual({ kind: 'nudge', by });
    expect(askedBy({ ...plain, altKey: true, key: 'ArrowLeft' }, 'handle', 'mm')).toEqual({
      kind: 'nudge',
      by,
    });
  });

  it('make a thing larger and smaller', () => {
    const larger = askedBy({ ...plain, altKey: true, key: '+' }, 'thing', 'cm');
    const smaller = askedBy({ ...plain, altKey: true, key: '-' }, 'thing', 'cm');
    const factors = [larger, smaller].map((asked) => (asked?.kind === 'resize' ? asked.factor : 0));
    expect(factors).toEqual([1.05, 1 / 1.05]);
    expect(askedBy({ ...plain, key: '+' }, 'thing', 'cm')).toBeUndefined();
    expect(askedBy({ ...plain, altKey: true, key: '+' }, 'handle', 'cm')).toBeUndefined();
  });

  it.each(['=', '±', '≠', '-', '–', '—'])('make a thing larger and smaller on a Mac too: %s', (key) => {
    const asked = askedBy({ ...plain, altKey: true, key }, 'thing', 'cm');
    expect(asked).toEqual({ kind: 'resize', factor: '-–—'.includes(key) ? 1 / 1.05 : 1.05 });
  });

  it('go through handles and leave them', () => {
    expect(askedBy({ ...plain, key: 'g' }, 'thing', 'cm')).toEqual({ kind: 'next handle', back: false });
    expect(askedBy({ ...plain, shiftKey: true, key: 'G' }, 'handle', 'cm')).toEqual({
      kind: 'next handle',
      back: true,
    });
    expect(askedBy({ ...plain, key: 'Escape' }, 'handle', 'cm')).toEqual({ kind: 'leave handle' });
    expect(askedBy({ ...plain, key: 'Escape' }, 'thing', 'cm')).toBeUndefined();
  });

  it('go to the next handle though the shift key is locked, and to the last with a small letter', () => {
    expect(askedBy({ ...plain, key: 'G' }, 'thing', 'cm')).toEqual({ kind: 'next handle', back: false });
    expect(askedBy({ ...plain, shiftKey: true, key: 'g' }, 'thing', 'cm')).toEqual({
      kind: 'next handle',
      back: true,
    });
  });

  it('are known by their places on keyboards of other scripts, and by their letters on Latin ones', () => {
    const cyrillic = { ...plain, key: 'я', code: 'KeyZ', ctrlKey: true };
    expect(askedBy(cyrillic, 'thing', 'cm')).toEqual({ kind: 'step', to: 'undo' });
    expect(askedBy({ ...plain, key: 'γ', code: 'KeyG' }, 'thing', 'cm')).toEqual({
      kind: 'next handle',
      back: false,
    });
    const german = { ...plain, key: 'z', code: 'KeyY', ctrlKey: true };
    expect(askedBy(german, 'thing', 'cm')).toEqual({ kind: 'step', to: 'undo' });
  });

  it('take back and make again, with Ctrl or Cmd', () => {
    expect(askedBy({ ...plain, ctrlKey: true, key: 'z' }, 'thing', 'cm')).toEqual({
      kind: 'step',
      to: 'undo',
    });
    expect(askedBy({ ...plain, metaKey: true, shiftKey: true, key: 'Z' }, 'handle', 'cm')).toEqual({
      kind: 'step',
      to: 'redo',
    });
    expect(askedBy({ ...plain, ctrlKey: true, key: 'y' }, 'thing', 'cm')).toEqual({
      kind: 'step',
      to: 'redo',
    });
    expect(askedBy({ ...plain, ctrlKey: true, key: 'f' }, 'thing', 'cm')).toBeUndefined();
  });
});
