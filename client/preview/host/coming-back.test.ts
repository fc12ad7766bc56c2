import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ComingBack } from './coming-back.js';

describe('coming back from the text to the drawing', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  const begun = (isHere = () => true) => {
    const ask = vi.fn();
    const back = new ComingBack({ isHere, ask });
    back.begin();
    return { ask, back };
  };

  it('asks the page for a second, and then no more', () => {
    const { ask } = begun();
    vi.advanceTimersByTime(999);
    const before = ask.mock.calls.length;
    vi.advanceTimersByTime(60_000);
    expect(before).toBeGreaterThan(3);
    expect(ask).toHaveBeenCalledTimes(before + 1);
    expect(ask.mock.calls).toEqual([[true], ...Array.from({ length: before }, () => [false])]);
  });

  it('asks as soon as the editor is in the preview, and leaves the text alone when it is there again', () => {
    let isHere = false;
    const { ask } = begun(() => isHere);
    vi.advanceTimersByTime(100);
    expect(ask).not.toHaveBeenCalled();
    isHere = true;
    vi.advanceTimersByTime(100);
    expect(ask).toHaveBeenCalledTimes(1);
    expect(ask).toHaveBeenCalledWith(true);
    isHere = false;
    vi.advanceTimersByTime(60_000);
    expect(ask).toHaveBeenCalledTimes(1);
  });

  it('asks no more once it is ended, and begins anew with the next step', () => {
    const { ask, back } = begun();
    back.end();
    vi.advanceTimersByTime(60_000);
    expect(ask).not.toHaveBeenCalled();
    back.begin();
    vi.advanceTimersByTime(800);
    const ofOne = ask.mock.calls.length;
    back.begin();
    // What the first had still to ask, at one second, is not asked.
    vi.advanceTimersByTime(800);
    expect(ask).toHaveBeenCalledTimes(2 * ofOne);
  });
});
