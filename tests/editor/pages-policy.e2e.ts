import type { Frame } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attemptIn, type Outcome, webviewTitled } from './attempts.js';
import { openStudio, shape, type Studio } from './studio.js';

/** What the policy of our pages forbids, and by which of its directives the browser refuses it. */
const refusals: Readonly<Record<string, string>> = {
  'a script in the page': 'script-src-elem',
  'a script from elsewhere': 'script-src-elem',
  'a script by a wrong nonce': 'script-src-elem',
  'what a click is to run': 'script-src-attr',
  'an address that runs': 'script-src-elem',
  eval: 'script-src',
  'a function of text': 'script-src',
  'a timer of text': 'script-src',
  WebAssembly: 'script-src',
  'a worker': 'worker-src',
  'a picture from elsewhere': 'img-src',
  'a picture written out': 'img-src',
  'a sound from elsewhere': 'media-src',
  'a style in the page': 'style-src-elem',
  'a style in an attribute': 'style-src-attr',
  'a style from elsewhere': 'style-src-elem',
  'a font from elsewhere': 'font-src',
  'a fetch': 'connect-src',
  'a fetch of a part of the editor': 'connect-src',
  'a socket': 'connect-src',
  'a beacon': 'connect-src',
  'a page in a frame': 'frame-src',
  'an object': 'object-src',
  'another base': 'base-uri',
};

/** No page has a right to send forms, so the browser does not even ask the policy. */
const withoutRight = 'a form that is sent';

const policyOf = (frame: Frame) =>
  frame.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');

async function rightsOf(frame: Frame): Promise<readonly string[]> {
  const element = await frame.frameElement();
  return ((await element.getAttribute('sandbox')) ?? 'all').split(' ').sort();
}

describe('the policy of a page', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.preview.locator(shape('bowl')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  /** Reads the policy in the live page, and tries what it forbids. */
  async function holds(title: RegExp): Promise<Frame> {
    const frame = await webviewTitled(studio.page, title);
    expect(await frame.locator('meta[http-equiv]').count()).toBe(1);
    const [, nonce = '', styles = ''] =
      /^default-src 'none'; script-src 'nonce-([0-9a-f]{32})'; style-src ([^;]+); img-src blob:; base-uri 'none'; form-action 'none'$/u.exec(
        (await policyOf(frame)) ?? '',
      ) ?? [];
    expect(nonce).not.toBe('');
    // Where the editor serves files of extensions from, and no other place.
    expect(styles).toMatch(/^'self' https:\/\/\*\.vscode-cdn\.net$/u);
    expect(await rightsOf(frame)).toEqual([
      'allow-downloads',
      'allow-pointer-lock',
      'allow-same-origin',
      'allow-scripts',
    ]);
    const outcomes = await attemptIn(frame);
    const expected: Record<string, Outcome> = { [withoutRight]: { refusedBy: [], isDone: false } };
    for (const [name, directive] of Object.entries(refusals))
      expected[name] = { refusedBy: [directive], isDone: false };
    expect(outcomes).toEqual(expected);
    return frame;
  }

  it('is the strictest that lets the preview draw, and refuses all else', async () => {
    const frame = await holds(/^Mahlstick preview$/u);
    expect(await frame.locator('script[src*="/dist/"]').count()).toBe(1);
    await studio.preview.locator(shape('bowl')).waitFor();
  });

  it('is the same for two plans side by side', async () => {
    const { workbench } = studio;
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Mahlstick: Compare with Another Plan');
    await workbench.pick('pot.mahl');
    const frame = await holds(/^Compare /u);
    await frame.locator('svg').first().waitFor();
  });

  it('is the same for a wall of plans', async () => {
    const { workbench } = studio;
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Mahlstick: Wall of Plans');
    const frame = await holds(/^Wall of plans/u);
    await frame.locator('svg').first().waitFor();
  });

  it('is that of the editor in its preview of Markdown, which ours runs under without a right of its own', async () => {
    const { workbench } = studio;
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('notes.md');
    await workbench.runCommand('Markdown: Open Preview to the Side');
    const drawn = (await workbench.preview()).locator('.mahlstick-plan svg').first();
    await drawn.waitFor();
    const frame = await (await drawn.elementHandle())?.ownerFrame();
    if (!frame) throw new Error('The drawing is in no page.');
    expect(await policyOf(frame)).toMatch(/^default-src 'none'; .*script-src 'nonce-[\w-]+'/u);
    const nonces = await frame
      .locator('script[src*="/dist/"]')
      .evaluateAll((scripts) => scripts.map((script) => (script as HTMLScriptElement).nonce));
    expect(nonces).toHaveLength(3);
    expect(new Set(nonces).size).toBe(1);
    // Pictures and the like from elsewhere it may have: they are not asked for.
    const barred = [
      'a script in the page',
      'what a click is to run',
      'eval',
      'a function of text',
      'a fetch',
    ];
    expect(await attemptIn(frame, barred)).toEqual(
      Object.fromEntries(barred.map((name) => [name, { refusedBy: [refusals[name]], isDone: false }])),
    );
  });
});
