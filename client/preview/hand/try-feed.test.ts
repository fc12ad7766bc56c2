import { describe, expect, it } from 'vitest';
import { type Made, TryFeed } from './try-feed.js';

const made = (x: number): Made => ({
  version: 3,
  change: { kind: 'move', grip: 'object:bowl', to: { x, y: 0 } },
});

function openFeed() {
  const asked: Made[] = [];
  return { asked, feed: new TryFeed((each) => asked.push(each)) };
}

describe('changes that are tried', () => {
  it('are asked for one at a time, and of those that wait only the latest', () => {
    const { asked, feed } = openFeed();
    [1, 2, 3].forEach((x) => feed.try(made(x)));
    expect(asked).toEqual([made(1)]);
    expect(feed.answered(1)).toBe('shown');
    expect(asked).toEqual([made(1), made(3)]);
    expect(feed.answered(2)).toBe('shown');
    expect(asked).toHaveLength(2);
  });

  it('are not shown once the hand has let go', () => {
    const { asked, feed } = openFeed();
    feed.try(made(1));
    feed.try(made(2));
    feed.drop();
    expect(feed.answered(1)).toBe('dropped');
    expect(asked).toHaveLength(1);
    feed.try(made(4));
    expect(feed.answered(2)).toBe('shown');
  });

  it('do not take the answer to something else', () => {
    const { feed } = openFeed();
    feed.try(made(1));
    expect(feed.answered(7)).toBe('not asked');
    expect(feed.answered(1)).toBe('shown');
  });

  it('are asked for again after the other side was gone', () => {
    const { asked, feed } = openFeed();
    feed.try(made(1));
    feed.forget();
    feed.try(made(2));
    expect(asked).toEqual([made(1), made(2)]);
  });
});
