import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contrast } from './contrast.js';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

const themes = ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const;
const views = [
  'drawing',
  'notan',
  'values',
  'colour',
  'squint',
  'mirror',
  'path',
  'emphasis',
  'transfer',
] as const;
const added = ['squint', 'mirror', 'path', 'emphasis'] as const;

describe('the views of the preview that read the whole picture', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.preview.locator(shape('bowl')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  async function show(view: string): Promise<void> {
    await studio.preview.locator(`.views input[value="${view}"]`).check({ force: true });
    await studio.preview.locator(`.drawing svg[data-view="${view}"]`).waitFor();
  }

  const buttons = () => studio.preview.locator('.views input');
  const slider = () => studio.preview.getByRole('slider', { name: 'Seen from' });
  const blur = async () =>
    Number(await studio.preview.locator('feGaussianBlur').last().getAttribute('stdDeviation'));

  it('blurs the squint by a distance that is chosen with the keyboard, and has that slider nowhere else', async () => {
    await show('drawing');
    expect(await slider().isVisible()).toBe(false);
    expect(await studio.preview.locator('.drawing filter').count()).toBe(0);
    await show('squint');
    // Three times the diagonal of 40 by 30 cm.
    expect(await slider().getAttribute('aria-valuetext')).toBe('1.5 m');
    const before = await blur();
    await slider().press('ArrowRight');
    await eventually(blur).toBeGreaterThan(before);
    expect(await slider().getAttribute('aria-valuetext')).toBe('1.7 m');
    await slider().press('End');
    await eventually(blur).toBeGreaterThan(3.9 * before);
    await studio.workbench.screenshot(artefact('preview-squint-far'));
    await slider().press('ArrowLeft');
    await show('values');
    expect(await slider().isVisible()).toBe(false);
    await show('squint');
    await eventually(blur).toBeGreaterThan(3 * before);
  });

  it('has the picture as large and at the same place in every view, and draws each anew as the text changes', async () => {
    const { goTo, page, preview, shapeOf, type, workbench } = studio;
    const places = new Set<string>();
    for (const view of views) {
      await show(view);
      const box = await preview.locator('[data-layer="mount"] [data-key="mount"]').boundingBox();
      const bar = await preview.locator('.bar').boundingBox();
      if (box === null || bar === null) throw new Error('There is no picture.');
      // The slider of the squint has a row of its own.
      places.add([box.x, box.y - bar.height, box.width].map(Math.round).join());
      const before = await shapeOf('bowl');
      // The text has the focus again.
      await workbench.runCommand('View: Focus First Editor Group');
      await goTo('19:26');
      await type('1');
      await eventually(() => shapeOf('bowl')).not.toBe(before);
      await page.keyboard.press('Control+Z');
      await eventually(() => shapeOf('bowl')).toBe(before);
    }
    expect([...places]).toHaveLength(1);
  });

  it('tells what each view is for', async () => {
    const told = await buttons().evaluateAll((inputs) =>
      inputs.map((input) => input.getAttribute('aria-description') ?? ''),
    );
    // Those of the picture, and the boards of palette, sittings and record.
    expect(told).toHaveLength(views.length + 3);
    expect(told.every((words) => words.endsWith('.'))).toBe(true);
  });

  it('lies where it is clicked in the mirror, and under the shading of the emphasis', async () => {
    const { page, preview, selection, current } = studio;
    for (const view of ['mirror', 'emphasis']) {
      await show(view);
      const box = await preview.locator('[data-layer="picture"] [data-key="ground"]').boundingBox();
      if (box === null) throw new Error('There is no picture.');
      const click = (across: number, down: number) =>
        page.mouse.click(
          box.x + (view === 'mirror' ? 1 - across / 40 : across / 40) * box.width,
          box.y + (down / 30) * box.height,
        );
      // The cloth lies below, and the bowl from 22 to 32 of 40 cm across and from 6 to 20 of 30 cm down.
      await click(10, 28);
      await eventually(selection).toBe('Ln 12, Col 14 (5 selected)');
      await click(30, 17);
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
      await eventually(current).toEqual(['object:bowl']);
      const marked = await preview.locator('.outlines [aria-current] .line').getAttribute('d');
      expect(marked).toBe(await preview.locator(shape('bowl')).getAttribute('d'));
    }
  });

  it.each(themes)('can be read in %s', async (theme) => {
    const { preview, workbench } = studio;
    workbench.setTheme(theme);
    const kind = () => preview.locator('body').getAttribute('data-vscode-theme-kind');
    await eventually(kind).toBe(`vscode-${theme}`);
    for (const view of added) {
      await show(view);
      await workbench.screenshot(artefact(`preview-${view}-${theme}`));
      const { ground, texts, signs } = await preview.locator('body').evaluate((body) => {
        const marks = (selector: string) => [
          ...body.querySelectorAll(`svg [data-layer="captions"] ${selector}`),
        ];
        return {
          ground: getComputedStyle(body).backgroundColor,
          texts: marks('text')
            .filter((text) => !text.getAttribute('data-key')?.endsWith(':number'))
            .map((text) => ({ what: text.textContent, colour: getComputedStyle(text).fill })),
          signs: marks('path[data-key^="legend:"]')
            .map((sign) => getComputedStyle(sign))
            .flatMap(({ fill, stroke }) => [fill, stroke].filter((colour) => colour.startsWith('rgb'))),
        };
      });
      expect(texts.length).toBeGreaterThan(3);
      expect(texts.filter(({ colour }) => contrast(colour, ground) < 4.5)).toEqual([]);
      if (view === 'path') expect(signs.length).toBeGreaterThan(2);
      expect(signs.filter((colour) => contrast(colour, ground) < 3)).toEqual([]);
    }
  });
});
