import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Frame } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { webviewTitled } from './attempts.js';
import { eventually, openStudio, shape, type Studio } from './studio.js';

interface Forger {
  /** Sends what it is given to the extension, as the page itself would. */
  forge?: (message: unknown) => void;
  /** What the extension has sent since. */
  heard?: unknown[];
}

const change = { kind: 'move', grip: 'object:bowl', to: { x: 12, y: 12 } };

/**
 * What a page that is taken over would do: the editor gives each page one way to speak to the extension, and this keeps
 * it when our page asks for it. Before the page says that it listens, it sends a change of the text that is otherwise
 * in order.
 */
function takeOver(early: unknown): void {
  const forger = window as unknown as Forger;
  let make: (() => { readonly postMessage: (message: unknown) => void }) | undefined;
  Object.defineProperty(window, 'acquireVsCodeApi', {
    configurable: true,
    set: (given: typeof make) => (make = given),
    get: () =>
      make &&
      (() => {
        const api = make?.();
        forger.heard = [];
        forger.forge = (message) => api?.postMessage(message);
        window.addEventListener('message', ({ data }) => forger.heard?.push(data));
        forger.forge(early);
        return api;
      }),
  });
}

describe('a page of a preview that is taken over', () => {
  let studio: Studio;
  let page: Frame;
  let before: string;
  const text = () => readFileSync(path.join(studio.workbench.folder, 'bowl.mahl'), 'utf8');
  const isChanged = async () =>
    /\bdirty\b/u.test(
      (await studio.page.locator('.tab[data-resource-name="bowl.mahl"]').getAttribute('class')) ?? '',
    );
  const forge = (...messages: readonly unknown[]) =>
    page.evaluate((all) => {
      for (const message of all) (window as unknown as Forger).forge?.(message);
    }, messages);
  const heard = (...types: readonly string[]) =>
    page.evaluate(
      (wanted) =>
        ((window as unknown as Forger).heard ?? []).filter((message) =>
          wanted.includes((message as { type: string }).type),
        ),
      types,
    );
  const outline = () => page.locator(shape('bowl')).getAttribute('d');
  /** The version of the text that is drawn. */
  const version = async () => ((await heard('scene', 'scene change')).at(-1) as { version: number }).version;
  /**
   * What was sent before has come to all that it comes to: a change of what there is not goes the same way to the
   * server, and the second one is asked about after the editor was given what the first ones came to.
   */
  const settled = async (...ids: readonly [number, number]) => {
    for (const id of ids) {
      await forge({
        type: 'write',
        id,
        version: await version(),
        change: { ...change, grip: 'object:none' },
      });
      await eventually(async () => (await heard('refused')).map((m) => (m as { id: number }).id)).toContain(
        id,
      );
    }
  };

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    const { workbench } = studio;
    await studio.page.addInitScript(takeOver, { type: 'write', id: 1, version: 1, change });
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    page = await webviewTitled(studio.page, /^Mahlstick preview$/u);
    await page.locator(shape('bowl')).waitFor();
    await page.waitForFunction(() =>
      (window as unknown as Forger).heard?.some((message) => (message as { type: string }).type === 'scene'),
    );
    before = text();
  });
  afterAll(() => studio?.workbench.close());

  it('writes nothing before it has said that it listens', async () => {
    expect(await version()).toBe(1);
    await settled(8, 9);
    expect(await heard('written')).toEqual([]);
    expect([text(), await isChanged()]).toEqual([before, false]);
  });

  it('is not heard in what is forged, unknown, too large or an answer to nothing', async () => {
    const drawn = await outline();
    const now = await version();
    await forge(
      { type: 'open', uri: 'file:///etc/passwd' },
      { type: 'write', id: 11, version: now, change: { ...change, text: 'canvas 1 x 1 cm' } },
      { type: 'write', id: 12, version: now, change: { kind: 'delete', subject: 'object:bowl' } },
      { type: 'write', id: 13, version: now, change: { ...change, grip: 'constructor' } },
      { type: 'write', id: 14, version: now, change: { ...change, grip: '__proto__' } },
      { type: 'write', id: -1, version: now, change },
      { type: 'step', to: 'workbench.action.terminal.new' },
      { type: 'view', view: 'x'.repeat(3_000) },
      { type: 'ready', constructor: { prototype: { isForged: true } } },
      { type: 'reveal', version: now, location: { line: 999_999, start: 0, end: 4 } },
      { type: 'sitting', sitting: 999 },
      { type: 'sitting', sitting: null },
      { type: 'under', sitting: 999 },
      { type: 'raster', id: 77, png: null },
      { type: 'copied', isCopied: true },
      ['ready'],
      'ready',
      null,
    );
    const refused = async () =>
      ((await heard('refused')) as readonly { readonly id: number }[])
        .map(({ id }) => id)
        .filter((id) => id > 10 && id < 18)
        .sort((a, b) => a - b);
    // Those that are in order and about nothing that there is are answered so, by the server, which is asked for both
    // at once; neither need be answered first.
    await eventually(refused).toEqual([13, 14]);
    await settled(18, 19);
    expect([await refused(), await heard('written')]).toEqual([[13, 14], []]);
    expect([text(), await isChanged(), await outline()]).toEqual([before, false, drawn]);
    expect(await studio.page.getByText('The drawing is copied').count()).toBe(0);
  });

  it('is told that it is late when it writes about another version', async () => {
    const now = await version();
    await forge(
      { type: 'write', id: 21, version: now - 1, change },
      { type: 'write', id: 22, version: now + 1, change },
      { type: 'example', version: now - 1 },
    );
    const areStale = async () =>
      ((await heard('refused')) as readonly { readonly id: number; readonly isStale: boolean }[])
        .filter(({ id }) => id === 21 || id === 22)
        .map(({ isStale }) => isStale);
    await eventually(areStale).toEqual([true, true]);
    await settled(23, 24);
    expect([text(), await isChanged()]).toEqual([before, false]);
  });

  it('writes once what it sends twice, and nothing under a number that is behind', async () => {
    const now = await version();
    const drawn = await outline();
    const elsewhere = { ...change, to: { x: 16, y: 16 } };
    await forge(
      { type: 'write', id: 31, version: now, change },
      { type: 'write', id: 31, version: now, change: elsewhere },
      { type: 'write', id: 30, version: now, change: elsewhere },
    );
    await eventually(() => heard('written').then(({ length }) => length)).toBe(1);
    await eventually(outline).not.toBe(drawn);
    const moved = await outline();
    await forge({ type: 'write', id: 31, version: await version(), change: elsewhere });
    await settled(32, 33);
    expect(await heard('written')).toMatchObject([{ type: 'written', id: 31 }]);
    expect(await outline()).toBe(moved);
    await forge({ type: 'step', to: 'undo' });
    await eventually(outline).toBe(drawn);
    await eventually(isChanged).toBe(false);
  });

  it('does what is in order all the same', async () => {
    await forge({ type: 'view', view: 'notan' });
    await eventually(
      async () => ((await heard('scene')).at(-1) as { scene: { view: string } }).scene.view,
    ).toBe('notan');
    // The editor saves in its own time, so the file may be a step behind the text here.
    expect(await heard('written')).toMatchObject([{ type: 'written', id: 31 }]);
  });
});
