import { describe, expect, it } from 'vitest';
import { Restarts } from './restarts.js';

describe('starting a server again', () => {
  it('happens four times in three minutes, then no more', () => {
    const restarts = new Restarts(() => 0);
    expect([1, 2, 3, 4, 5].map(() => restarts.ended())).toEqual([true, true, true, true, false]);
  });

  it('goes on for a server that ends now and then', () => {
    let now = 0;
    const restarts = new Restarts(() => now);
    for (let end = 0; end < 20; end++) {
      now += 60_000;
      expect(restarts.ended()).toBe(true);
    }
  });

  it('has all its tries again when the painter asks for it', () => {
    const restarts = new Restarts(() => 0, 1);
    expect([restarts.ended(), restarts.ended()]).toEqual([true, false]);
    restarts.forget();
    expect(restarts.ended()).toBe(true);
  });
});
