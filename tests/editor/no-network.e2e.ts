import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { views } from '../../server/drawing/scene.js';
import { viewLabel } from '../../client/preview/views.js';
import { webviewTitled } from './attempts.js';
import { eventually, openStudio, shape, type Studio } from './studio.js';

/** What the editor serves: itself, what is installed in it, and the folder that is open. */
const served = {
  'the editor': /^\/(?:$|static\/(?:build|extensions)\/)/u,
  'what is installed': /^\/static\/devextensions\/(?:client|dist|grammar|package)/u,
  'the plans': /^\/static\/mount(?:\/|$)/u,
} as const;

describe('a plan on a file system that is none of this machine, in an editor that runs in a browser', () => {
  let studio: Studio;
  const asked = () => studio.workbench.requests;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'vase.mahl', host: 'web' });
  });
  afterAll(() => studio?.workbench.close());

  it('is drawn with the part of a file that it names, and told what is to be told', async () => {
    await studio.preview.locator(shape('vase')).waitFor();
    expect((await studio.shapeOf('vase'))?.length).toBeGreaterThan(20);
    await eventually(studio.findings).not.toEqual([]);
    expect((await studio.findings()).join('\n')).not.toContain('vase.svg');
    expect(await studio.page.locator('.explorer-folders-view').innerText()).toContain('vase.svg');
  });

  it('is written, shown in every view, taken out and compared', async () => {
    const { goTo, page, preview, refusals, type, workbench } = studio;
    const fill = () => preview.locator(shape('vase')).getAttribute('fill');
    const before = await fill();
    await goTo('9:11');
    await page.keyboard.press('Shift+ArrowRight');
    await type('4');
    await eventually(fill).not.toBe(before);
    for (const view of views) {
      await workbench.runCommand('Mahlstick: Choose View of the Preview');
      await workbench.pick(viewLabel(view));
      await preview.locator(`.drawing > svg[data-view="${view}"]`).waitFor();
    }
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await preview.locator('.tool.more').click();
    await preview.getByRole('button', { name: 'Copy image' }).click();
    await page.getByText('The drawing is copied as an image.').waitFor();
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Mahlstick: Compare with Another Plan');
    await workbench.pick('pot.mahl');
    const compared = await webviewTitled(page, /^Compare /u);
    await compared.locator('svg').first().waitFor();
    expect(refusals).toEqual([]);
  });

  it('has nothing asked of any other machine, and of this one only what the editor serves', () => {
    const strange = asked().filter(({ address, method }) => {
      const { protocol, hostname, pathname } = new URL(address);
      if (protocol === 'blob:' || protocol === 'data:') return false;
      const isHere = /^(?:[a-z0-9]+\.)?vscode\.localhost$/u.test(hostname) && method === 'GET';
      return !isHere || !Object.values(served).some((part) => part.test(pathname));
    });
    expect(strange).toEqual([]);
    const names = asked().map(({ address }) => new URL(address).pathname);
    // Pages, workers and what workers load are all heard.
    for (const name of [
      'preview.js',
      'side-by-side.js',
      'extension.web.js',
      'core.js',
      'server.web.js',
      'export.js',
    ])
      expect(names).toContain(`/static/devextensions/dist/${name}`);
  });

  it('would be caught at it', async () => {
    const address = await studio.page.evaluate(async () => {
      const asked = `${location.origin}/nothing-of-the-kind`;
      const line = `fetch(${JSON.stringify(asked)}).finally(() => postMessage(1))`;
      const worker = new Worker(URL.createObjectURL(new Blob([line], { type: 'text/javascript' })));
      await new Promise((resolve) => (worker.onmessage = resolve));
      worker.terminate();
      return asked;
    });
    await eventually(() => asked().map((each) => each.address)).toContain(address);
  });
});
