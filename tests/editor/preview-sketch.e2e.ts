import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Studio, artefact, eventually, openStudio, putAway, shape } from './studio.js';

/** A photograph of a sheet that leans: its upper half is blue, its lower half yellow, the table round it black. */
function photographOfSheet(): Buffer {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600">
    <rect width="800" height="600" fill="#000"/>
    <path d="M200 60L640 100L690 320L120 300Z" fill="#2040c0"/>
    <path d="M120 300L690 320L740 560L40 540Z" fill="#e0c020"/>
  </svg>`;
  return new Resvg(svg).render().asPng();
}

describe('a sketch under the drawing', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'sill.mahl' });
    await studio.preview.locator(shape('pot')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  const image = () => studio.preview.locator('.drawing svg image');
  const slider = () => studio.preview.getByRole('slider', { name: 'Sketch' });

  /** The colour of what was made of the sketch, at parts of its width and height. */
  const colourAt = (x: number, y: number) =>
    image().evaluate(
      async (node, at) => {
        const picture = new Image();
        picture.src = node.getAttribute('href') ?? '';
        await picture.decode();
        const canvas = document.createElement('canvas');
        canvas.width = picture.naturalWidth;
        canvas.height = picture.naturalHeight;
        const context = canvas.getContext('2d');
        context?.drawImage(picture, 0, 0);
        const data = context?.getImageData(at.x * canvas.width, at.y * canvas.height, 1, 1).data ?? [];
        return [...data].slice(0, 3);
      },
      { x, y },
    );

  it('is squared up by its corners and lies between mount and picture, as strongly as the plan says', async () => {
    const told = studio.preview.locator('.sketch-told');
    await eventually(() => told.textContent()).toBe(
      'The sketch sheet.png is not shown. There is no such file.',
    );
    writeFileSync(path.join(studio.workbench.folder, 'sheet.png'), photographOfSheet());
    await eventually(() => image().count()).toBe(1);
    await eventually(() => told.textContent()).toBe('');
    expect(await image().getAttribute('href')).toMatch(/^blob:/);
    for (const x of [0.03, 0.5, 0.97]) {
      expect(await colourAt(x, 0.05)).toEqual([0x20, 0x40, 0xc0]);
      expect(await colourAt(x, 0.95)).toEqual([0xe0, 0xc0, 0x20]);
    }
    expect(await image().evaluate((node) => node.nextElementSibling?.getAttribute('data-layer'))).toBe(
      'picture',
    );
    const opacity = () =>
      studio.preview.locator('[data-layer="picture"]').evaluate((layer) => getComputedStyle(layer).opacity);
    await eventually(opacity).toBe('0.6');
    expect(studio.refusals).toEqual([]);
    await studio.workbench.screenshot(artefact('preview-sketch'));

    await studio.preview.getByRole('button', { name: 'More', exact: true }).press('Enter');
    await slider().focus();
    expect(await slider().getAttribute('aria-valuetext')).toBe('40 %');
    await studio.page.keyboard.press('ArrowRight');
    await eventually(opacity).toBe('0.55');
  });

  it('has its corners placed where it is shown as it was taken', async () => {
    const { page, preview, workbench } = studio;
    const line = (words: string) => page.locator('.view-line', { hasText: words }).count();
    await preview.getByRole('button', { name: 'Place its corners' }).press('Enter');
    const corner = (words: string) =>
      preview.getByRole('button', { name: new RegExp(`^${words} corner of the canvas`) });
    await eventually(() => corner('upper left').getAttribute('aria-label')).toContain(
      '200 pixels from the left, 60 from the top',
    );
    const before = await image().getAttribute('href');
    const drag = async (words: string, right: number, down: number) => {
      const board = preview.locator('.corner-board > svg').first();
      await board.scrollIntoViewIfNeeded();
      const { x, y, width, height } = (await corner(words).boundingBox()) ?? {
        x: 0,
        y: 0,
        width: 0,
        height: 0,
      };
      const scale = await board.evaluate((svg) => (svg instanceof SVGSVGElement ? svg.getScreenCTM()?.a : 0));
      const middle = { x: x + width / 2, y: y + height / 2 };
      await page.mouse.move(middle.x, middle.y);
      await page.mouse.down();
      await page.mouse.move(middle.x + right * (scale ?? 0), middle.y + down * (scale ?? 0), { steps: 4 });
    };
    await drag('upper left', 40, -20);
    expect(await line('(200, 60)')).toBe(1);
    await workbench.screenshot(artefact('preview-sketch-corners'));
    await page.mouse.up();
    await eventually(() => corner('upper left').getAttribute('aria-label')).toMatch(
      /(?:239|24[01]) pixels from the left, (?:39|4[01]) from the top$/,
    );
    await eventually(() => line('(200, 60)')).toBe(0);
    // The line is folded in so narrow an editor.
    expect([await line('(640, 100) (740, 560)'), await line('(40, 540)')]).toEqual([1, 1]);
    await eventually(() => image().getAttribute('href')).not.toBe(before);
    // One step takes it back, and what was squared up with it.
    await page.keyboard.press('Control+Z');
    await eventually(() => line('(200, 60) (640, 100) (740, 560)')).toBe(1);
    await eventually(() => corner('upper left').getAttribute('aria-label')).toContain('200 pixels');

    await corner('lower right').focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp']) await page.keyboard.press(key);
    await eventually(() => line('(200, 60) (640, 100) (742, 550)')).toBe(1);
    await drag('lower left', 90, 0);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await eventually(() => corner('lower left').getAttribute('aria-label')).toContain('40 pixels');
    expect(await line('(40, 540)')).toBe(1);
    await preview.getByRole('button', { name: 'Place its corners' }).press('Enter');
    await preview.locator('.sketch-corners').waitFor({ state: 'hidden' });
  });

  it('is turned round in the mirror, and not mixed into what is read by its tones', async () => {
    const { page, preview } = studio;
    await preview.locator('.views input[value="mirror"]').check({ force: true });
    await preview.locator('.drawing svg[data-view="mirror"]').waitFor();
    await eventually(() => image().getAttribute('transform')).toContain('scale(-1 1)');
    await preview.locator('.views input[value="notan"]').check({ force: true });
    await eventually(() => image().count()).toBe(0);
    await preview.locator('.views input[value="drawing"]').focus();
    await page.keyboard.press('Home');
    await preview.locator('.views input[value="drawing"]').check({ force: true });
    await eventually(() => image().count()).toBe(1);
  });

  it('is read again when its file is another', async () => {
    const before = await image().getAttribute('href');
    const green = new Resvg(
      '<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600"><rect width="800" height="600" fill="#208040"/></svg>',
    );
    writeFileSync(path.join(studio.workbench.folder, 'sheet.png'), green.render().asPng());
    await eventually(() => image().getAttribute('href')).not.toBe(before);
    expect(await colourAt(0.5, 0.5)).toEqual([0x20, 0x80, 0x40]);
  });

  it('has a second preview beside it that follows the text too; both come back with the window', async () => {
    const { page, workbench } = studio;
    await studio.preview.locator('body').press('+');
    await eventually(() => studio.preview.locator('.zoomed-to').textContent()).toBe('125 %');
    await workbench.runCommand('Mahlstick: Open Another Preview');
    const tabs = page.locator('.tab', { hasText: 'Preview sill.mahl' });
    await eventually(() => tabs.allInnerTexts()).toEqual([
      expect.stringContaining('Drawing'),
      expect.stringContaining('Notan'),
    ]);
    const frames = page.locator('iframe.webview.ready');
    await eventually(() => frames.count()).toBe(2);
    /** What each of the two previews answers, in the order of the alphabet. */
    const inBoth = async (ask: (preview: FrameLocator) => Promise<string | null>) => {
      const answers = [0, 1].map((index) =>
        ask(frames.nth(index).contentFrame().locator('iframe#active-frame').contentFrame()),
      );
      return (await Promise.all(answers)).sort();
    };
    const shapes = () => inBoth((preview) => preview.locator(shape('pot')).getAttribute('d'));
    const [before] = await shapes();
    expect(await shapes()).toEqual([before, before]);
    await workbench.runCommand('View: Focus First Editor Group');
    await studio.goTo('10:23');
    await page.keyboard.type('1');
    await eventually(async () => new Set([before, ...(await shapes())]).size).toBe(2);
    await eventually(async () => (await shapes()).includes(before ?? null)).toBe(false);
    await workbench.screenshot(artefact('preview-two'));

    await page.keyboard.press('Control+S');
    await putAway(page, /zoom[\\"]*:\{[\\"]*factor[\\"]*:1\.25/u);
    await putAway(page, /view[\\"]*:[\\"]*notan/u);
    await page.reload();
    await eventually(() => frames.count()).toBe(2);
    const views = () =>
      inBoth((preview) => preview.locator('.drawing svg').first().getAttribute('data-view'));
    await eventually(views).toEqual(['drawing', 'notan']);
    const zooms = () => inBoth((preview) => preview.locator('.zoomed-to').textContent());
    await eventually(zooms).toEqual(['100 %', '125 %']);
    const strengths = () => inBoth((preview) => preview.locator('.sketch output').textContent());
    await eventually(strengths).toEqual(['', '45 %']);
  });
});

describe('a preview that can’t show all', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'blank.mahl' });
    // By its name a picture, by what it holds none.
    writeFileSync(path.join(studio.workbench.folder, 'animated.png'), 'GIF89a and so on');
  });
  afterAll(() => studio?.workbench.close());

  it('offers an example where nothing is drawn, and writes it as one edit', async () => {
    const { page, preview, selection, workbench } = studio;
    await preview.getByRole('heading', { name: 'Nothing is drawn yet' }).waitFor();
    await workbench.screenshot(artefact('preview-example'));
    await preview.getByRole('button', { name: 'Insert this example' }).press('Enter');
    await preview.locator(shape('pear')).waitFor();
    await eventually(selection).toContain('(4 selected)');
    // All at once: what is typed key by key may take more than one step to undo.
    await page.keyboard.insertText('plum');
    await preview.locator(shape('plum')).waitFor();
    await page.keyboard.press('Control+Z');
    await preview.locator(shape('pear')).waitFor();
    await page.keyboard.press('Control+Z');
    await preview.getByRole('heading', { name: 'Nothing is drawn yet' }).waitFor();
    await page.keyboard.press('Control+Shift+Z');
    await preview.locator(shape('pear')).waitFor();
  });

  it('says why a sketch is not shown', async () => {
    const { page, preview, workbench } = studio;
    await workbench.runCommand('View: Focus First Editor Group');
    await page.keyboard.press('Control+End');
    await page.keyboard.insertText('\nsketch "animated.png"\n');
    const told = preview.locator('.sketch-told');
    await eventually(() => told.textContent()).toBe(
      'The sketch animated.png is not shown. This is a GIF. A sketch is a PNG, a JPEG or a WebP.',
    );
    await workbench.screenshot(artefact('preview-sketch-refused'));
    expect(await preview.locator('.drawing svg image').count()).toBe(0);
    await page.keyboard.press('Control+Z');
    await page.keyboard.insertText('\nsketch "../../elsewhere.png"\n');
    await eventually(() => told.textContent()).toContain('This file lies outside the folder that is open.');
  });
});
