import { expect, it } from 'vitest';
import type { FromPage } from '../messages.js';
import { MessageOrder } from './message-order.js';

const ready: FromPage = { type: 'ready' };
const change = { kind: 'move', grip: 'object:bowl', to: { x: 1, y: 2 } } as const;
const write = (id: number): FromPage => ({ type: 'write', id, version: 1, change });
const attempt = (id: number): FromPage => ({ type: 'try', id, version: 1, change });

it('takes nothing before the page listens, nor after it was hidden', () => {
  const order = new MessageOrder();
  expect(order.takes(write(1))).toBe(false);
  expect(order.takes({ type: 'view', view: 'notan' })).toBe(false);
  expect(order.takes(ready)).toBe(true);
  expect(order.takes(write(1))).toBe(true);
  order.end();
  expect(order.listens).toBe(false);
  expect(order.takes({ type: 'example', version: 1 })).toBe(false);
});

it('takes each number once, and none that is behind', () => {
  const order = new MessageOrder();
  order.takes(ready);
  expect(
    [attempt(1), write(2), write(2), attempt(2), attempt(1), write(7)].map((m) => order.takes(m)),
  ).toEqual([true, true, false, false, false, true]);
  // A page that is made anew counts anew.
  order.takes(ready);
  expect(order.takes(attempt(1))).toBe(true);
});

it('takes word of a copy once for each that was asked for', () => {
  const order = new MessageOrder();
  const copied: FromPage = { type: 'copied', isCopied: true };
  order.takes(ready);
  expect(order.takes(copied)).toBe(false);
  order.takes({ type: 'copy' });
  expect([order.takes(copied), order.takes(copied)]).toEqual([true, false]);
});
