import { describe, expect, it } from 'vitest';
import type { View } from '../../server/drawing/scene.js';
import { type SceneChange, sceneChange } from '../../server/drawing/scene-change.js';
import type { ChangedScene, WholeScene } from '../../server/language/protocol.js';
import { type Delivery, SceneFeed } from './scene-feed.js';
import { stillLife } from './still-life.js';

/** A feed whose questions are answered by hand. */
function openFeed() {
  const asked: {
    view: View;
    distanceMillimetres: number | undefined;
    known: number;
    answer: (version: number | null) => Promise<void>;
    tell: (answer: WholeScene | ChangedScene) => Promise<void>;
    fail: () => Promise<void>;
  }[] = [];
  const delivered: { epoch: number; version: number; view: View }[] = [];
  const deliveries: Delivery[] = [];
  const failures: unknown[] = [];
  const feed = new SceneFeed(
    { view: 'drawing' },
    {
      ask: ({ view, distanceMillimetres }, known) =>
        new Promise<WholeScene | ChangedScene | null>((resolve, reject) => {
          asked.push({
            view,
            distanceMillimetres,
            known,
            answer: (version) => {
              resolve(version === null ? null : { version, scene: { ...stillLife, view } });
              return settled();
            },
            tell: (answer) => {
              resolve(answer);
              return settled();
            },
            fail: () => {
              reject(new Error('gone'));
              return settled();
            },
          });
        }),
      deliver: (delivery) => {
        deliveries.push(delivery);
        delivered.push({ epoch: delivery.epoch, version: delivery.version, view: delivery.scene.view });
      },
      failed: (error) => failures.push(error),
    },
  );
  return { feed, asked, delivered, deliveries, failures };
}

async function settled(): Promise<void> {
  for (let turn = 0; turn < 5; turn++) await Promise.resolve();
}

describe('the feed of scenes', () => {
  it('asks once more, not once a change, when the plan changes while it waits', async () => {
    const { feed, asked, delivered } = openFeed();
    feed.refresh();
    feed.refresh();
    feed.refresh();
    expect(asked).toHaveLength(1);
    await asked[0]?.answer(1);
    expect(asked).toHaveLength(2);
    await asked[1]?.answer(3);
    expect(asked).toHaveLength(2);
    expect(delivered.map(({ epoch, version }) => [epoch, version])).toEqual([
      [1, 1],
      [2, 3],
    ]);
  });

  it('drops the answer for a view that is no longer shown', async () => {
    const { feed, asked, delivered } = openFeed();
    feed.refresh();
    feed.show({ view: 'notan' });
    await asked[0]?.answer(1);
    await asked[1]?.answer(1);
    expect(delivered).toEqual([{ epoch: 1, version: 1, view: 'notan' }]);
  });

  it('asks for the last of many distances only, when a slider is drawn along', async () => {
    const { feed, asked } = openFeed();
    for (const distanceMillimetres of [1_000, 1_100, 1_200, 1_300]) {
      feed.show({ view: 'squint', distanceMillimetres });
    }
    expect(asked.map(({ distanceMillimetres }) => distanceMillimetres)).toEqual([1_000]);
    await asked[0]?.answer(1);
    expect(asked.map(({ distanceMillimetres }) => distanceMillimetres)).toEqual([1_000, 1_300]);
  });

  it('drops an answer older than the last one, and takes the same version again', async () => {
    const { feed, asked, delivered } = openFeed();
    for (const version of [5, 4, 5]) {
      feed.refresh();
      await asked.at(-1)?.answer(version);
    }
    expect(delivered.map(({ version }) => version)).toEqual([5, 5]);
  });

  it('takes a lower version of a document that was opened anew, and no late answer of the one before', async () => {
    const { feed, asked, delivered } = openFeed();
    feed.refresh();
    await asked[0]?.answer(5);
    feed.refresh();
    feed.begin();
    await asked[1]?.answer(6);
    await asked[2]?.answer(1);
    expect(delivered.map(({ epoch, version }) => [epoch, version])).toEqual([
      [1, 5],
      [2, 1],
    ]);
  });

  it('tells of a failure and asks again when the plan changes', async () => {
    const { feed, asked, delivered, failures } = openFeed();
    feed.refresh();
    await asked[0]?.fail();
    expect(failures).toHaveLength(1);
    feed.refresh();
    await asked[1]?.answer(null);
    feed.refresh();
    await asked[2]?.answer(2);
    expect(delivered.map(({ version }) => version)).toEqual([2]);
  });

  it('delivers nothing after it was stopped', async () => {
    const { feed, asked, delivered } = openFeed();
    feed.refresh();
    feed.stop();
    await asked[0]?.answer(1);
    feed.refresh();
    expect(asked).toHaveLength(1);
    expect(delivered).toEqual([]);
  });

  describe('that are told by what is another in them', () => {
    const other = { ...stillLife, title: 'Another' };
    const change = sceneChange(stillLife, other);

    async function begun() {
      const opened = openFeed();
      opened.feed.refresh();
      await opened.asked[0]?.tell({ version: 1, id: 7, scene: stillLife });
      return opened;
    }

    it('says which it has, and delivers the next with what makes it of that one', async () => {
      const { feed, asked, deliveries } = await begun();
      feed.refresh();
      expect(asked.map(({ known }) => known)).toEqual([0, 7]);
      await asked[1]?.tell({ version: 2, id: 8, change });
      expect(deliveries[1]).toEqual({ epoch: 2, version: 2, scene: other, change });
      feed.refresh();
      expect(asked[2]?.known).toBe(8);
    });

    it('delivers a whole one to a page that has lost what it had, also while it is asked for', async () => {
      const { feed, asked, deliveries } = await begun();
      feed.refresh();
      feed.forget();
      await asked[1]?.tell({ version: 2, id: 8, change });
      expect(deliveries[1]).toEqual({ epoch: 2, version: 2, scene: other });
      feed.forget();
      feed.refresh();
      expect(asked[2]?.known).toBe(0);
    });

    it('says that it has none when the document is another', async () => {
      const { feed, asked } = await begun();
      feed.begin();
      expect(asked[1]?.known).toBe(0);
    });

    it('asks for a whole one where a change does not fit', async () => {
      const { feed, asked, deliveries } = await begun();
      feed.refresh();
      const misfit: SceneChange = { ...change, subjects: [{ kept: [0, 1_000] }] };
      await asked[1]?.tell({ version: 2, id: 8, change: misfit });
      expect(deliveries).toHaveLength(1);
      expect(asked[2]?.known).toBe(0);
      await asked[2]?.tell({ version: 2, id: 9, scene: other });
      expect(deliveries[1]).toEqual({ epoch: 2, version: 2, scene: other });
    });
  });
});
