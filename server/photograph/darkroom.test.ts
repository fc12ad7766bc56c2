import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';
import { Darkroom, type SquareOrder, type ThreadListener } from './darkroom.js';

const squaring: Squaring = { path: 'a.jpg', corners: [], proportion: 1 };
const bytes = Uint8Array.of(1, 2, 3);
const done: SquaredAnswer = { ok: false, reason: 'done' };

/** Threads that were begun, the latest last, with what each was given to do. */
interface FakeThread {
  readonly listener: ThreadListener;
  readonly orders: SquareOrder[];
  isEnded: boolean;
}
let threads: FakeThread[];
let darkroom: Darkroom;
const latest = (): FakeThread => threads.at(-1) as FakeThread;
const begun = (count: number) =>
  vi.waitFor(() => expect(threads.reduce((sum, { orders }) => sum + orders.length, 0)).toBe(count));

beforeEach(() => {
  threads = [];
  darkroom = new Darkroom((listener) => {
    const thread: FakeThread = { listener, orders: [], isEnded: false };
    threads.push(thread);
    return { post: (order) => thread.orders.push(order), end: () => (thread.isEnded = true) };
  }, 50);
});

describe('a darkroom', () => {
  it('begins no thread before the first photograph, and one for all', async () => {
    expect(threads).toHaveLength(0);
    const parts: number[] = [];
    const [one, other] = [1, 2].map(() =>
      darkroom.square(bytes, squaring, { progress: (part) => parts.push(part) }),
    );
    await begun(1);
    latest().listener.heard({ part: 0.5 });
    latest().listener.heard({ answer: done });
    expect(await one).toBe(done);
    // One photograph at a time.
    await begun(2);
    latest().listener.heard({ answer: done });
    expect(await other).toBe(done);
    expect(threads).toHaveLength(1);
    expect(parts).toEqual([0.5]);
  });

  it('ends a thread that takes too long, and begins another for the next', async () => {
    const one = darkroom.square(bytes, squaring);
    expect(await one).toMatchObject({ ok: false, reason: expect.stringContaining('two minutes') as string });
    expect(latest().isEnded).toBe(true);
    const other = darkroom.square(bytes, squaring);
    await begun(2);
    latest().listener.heard({ answer: done });
    expect(await other).toBe(done);
    expect(threads).toHaveLength(2);
  });

  it('ends the thread when it is told to stop', async () => {
    const controller = new AbortController();
    const one = darkroom.square(bytes, squaring, { signal: controller.signal });
    await begun(1);
    controller.abort();
    expect(await one).toEqual({ ok: false, reason: 'Measuring was stopped.' });
    expect(latest().isEnded).toBe(true);
    expect(await darkroom.square(bytes, squaring, { signal: AbortSignal.abort() })).toMatchObject({
      ok: false,
    });
    expect(threads).toHaveLength(1);
  });

  it('takes nothing that an ended thread has still to say for what is said of the next photograph', async () => {
    const controller = new AbortController();
    const parts: number[] = [];
    void darkroom.square(bytes, squaring, { signal: controller.signal });
    await begun(1);
    const ended = latest();
    controller.abort();
    const next = darkroom.square(bytes, squaring, { progress: (part) => parts.push(part) });
    await begun(2);
    ended.listener.heard({ part: 0.9 });
    ended.listener.heard({ answer: { ok: false, reason: 'of the photograph before' } });
    ended.listener.failed();
    latest().listener.heard({ answer: done });
    expect(await next).toBe(done);
    expect(parts).toEqual([]);
    expect(threads).toHaveLength(2);
  });

  it('says so when a thread ends by itself or can’t begin, and tries anew', async () => {
    const one = darkroom.square(bytes, squaring);
    await begun(1);
    latest().listener.failed();
    expect(await one).toMatchObject({ ok: false, reason: expect.stringContaining('failed') as string });
    const other = darkroom.square(bytes, squaring);
    await begun(2);
    latest().listener.heard({ answer: done });
    expect(await other).toBe(done);

    const shut = new Darkroom(() => {
      throw new Error('no threads here');
    });
    expect(await shut.square(bytes, squaring)).toMatchObject({ ok: false });
  });

  it('ends its thread when it is closed', async () => {
    const one = darkroom.square(bytes, squaring);
    await begun(1);
    darkroom.close();
    expect(await one).toMatchObject({ ok: false });
    expect(latest().isEnded).toBe(true);
  });
});
