import { expect, onTestFinished, test, vi } from 'vitest';
import { forAWhile, Turns } from './turns.js';

/** Turns taken by hand. */
function byHand() {
  let queue: (() => void)[] = [];
  const worked: string[] = [];
  const turns = new Turns(
    (key) => worked.push(key),
    (callback) => queue.push(callback),
  );
  const turn = (): void => {
    const now = queue;
    queue = [];
    now.forEach((callback) => callback());
  };
  return { turns, turn, worked, idle: () => queue.length === 0 };
}

test('a single edit is worked on after one quiet turn', () => {
  const { turns, turn, worked, idle } = byHand();
  turns.ask('tram');
  turn();
  expect(worked).toEqual([]);
  turn();
  expect(worked).toEqual(['tram']);
  expect(idle()).toBe(true);
});

test('of a burst of edits, one a turn, only the last is worked on', () => {
  const { turns, turn, worked } = byHand();
  for (let edit = 0; edit < 100; edit++) {
    turns.ask('tram');
    turn();
  }
  expect(worked).toEqual([]);
  turn();
  expect(worked).toEqual(['tram']);
});

test('of several plans one is worked on a turn, so that an edit can come between', () => {
  const { turns, turn, worked } = byHand();
  turns.ask('tram');
  turns.ask('orchard');
  turn();
  turn();
  expect(worked).toEqual(['tram']);
  turns.ask('orchard');
  turn();
  expect(worked).toEqual(['tram']);
  turn();
  expect(worked).toEqual(['tram', 'orchard']);
});

test('a plan that is dropped is not worked on', () => {
  const { turns, turn, worked, idle } = byHand();
  turns.ask('tram');
  turns.drop('tram');
  turn();
  turn();
  expect(worked).toEqual([]);
  expect(idle()).toBe(true);
});

/** How many of so many pieces, each of so many milliseconds, are done in one turn, and whether more are left. */
function piecesDone(count: number, milliseconds: number): readonly [done: number, isMore: boolean] {
  let now = 0;
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => now);
  onTestFinished(() => clock.mockRestore());
  let done = 0;
  const isMore = forAWhile(() => {
    now += milliseconds;
    return ++done < count;
  });
  return [done, isMore];
}

test('small pieces of work are done together, a large one alone', () => {
  expect(piecesDone(30, 0.1)).toEqual([30, false]);
  expect(piecesDone(30, 1)).toEqual([5, true]);
  expect(piecesDone(30, 100)).toEqual([1, true]);
  expect(piecesDone(1, 100)).toEqual([1, false]);
});
