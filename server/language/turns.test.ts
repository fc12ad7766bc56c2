import { expect, test } from 'vitest';
import { Turns } from './turns.js';

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
