import { describe, expect, it } from 'vitest';
import { Memory } from './memory.js';

const outline = { name: 'wall' };

describe('what is kept from one version of a plan to the next', () => {
  it('is worked out once while its inputs are the same', () => {
    const memory = new Memory();
    const ask = () => memory.recall('area', 'wall', [outline, 3], () => ({ area: 12 }));
    const first = ask();
    memory.turnOver();
    expect(ask()).toBe(first);
    expect(memory.worked('area')).toBe(1);
  });

  it('is worked out anew for another input, even one that looks alike', () => {
    const memory = new Memory();
    memory.recall('area', 'wall', [outline], () => 1);
    memory.turnOver();
    expect(memory.recall('area', 'wall', [{ ...outline }], () => 2)).toBe(2);
    expect(memory.worked('area')).toBe(2);
  });

  it('is dropped when a whole version did not ask for it', () => {
    const memory = new Memory();
    memory.recall('area', 'wall', [outline], () => 1);
    memory.turnOver();
    memory.turnOver();
    expect(memory.recall('area', 'wall', [outline], () => 2)).toBe(2);
  });

  it('gives the last result to the work that takes its place', () => {
    const memory = new Memory();
    const grown = (by: number) =>
      memory.recall('area', 'wall', [by], (last: number | undefined) => (last ?? 10) + by);
    expect(grown(1)).toBe(11);
    memory.turnOver();
    expect(grown(2)).toBe(13);
  });

  it('stays where all of its kind is kept unasked, and other kinds are dropped', () => {
    const memory = new Memory();
    memory.recall('area', 'wall', [outline], () => 1);
    memory.recall('border', 'wall', [outline], () => 2);
    for (let version = 0; version < 2; version++) {
      memory.turnOver();
      memory.keep('area');
    }
    expect(memory.recall('area', 'wall', [outline], () => 3)).toBe(1);
    expect(memory.recall('border', 'wall', [outline], () => 4)).toBe(4);
  });

  it('is kept apart by kind and key', () => {
    const memory = new Memory();
    expect(memory.recall('area', 'wall', [], () => 1)).toBe(1);
    expect(memory.recall('area', 'floor', [], () => 2)).toBe(2);
    expect(memory.recall('border', 'wall', [], () => 3)).toBe(3);
    expect([memory.worked('area'), memory.worked('border')]).toEqual([2, 1]);
  });

  it('serves a version that is only tried, and stays as it is', () => {
    const memory = new Memory();
    memory.recall('area', 'wall', [outline], () => 1);
    const aside = memory.aside();
    aside.turnOver();
    expect(aside.recall('area', 'wall', [outline], () => 2)).toBe(1);
    expect(aside.recall('area', 'floor', [], () => 3)).toBe(3);
    aside.turnOver();
    aside.turnOver();
    expect(memory.kept).toBe(1);
    expect(memory.recall('area', 'wall', [outline], () => 4)).toBe(1);
    expect(memory.recall('area', 'floor', [], () => 5)).toBe(5);
  });
});
