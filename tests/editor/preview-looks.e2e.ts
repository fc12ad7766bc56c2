import axe from 'axe-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contrast } from './contrast.js';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

declare global {
  interface Window {
    readonly axe: typeof axe;
  }
}

const themes = ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const;

describe('how the preview looks', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.preview.locator(shape('bowl')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  /** By how many pixels the page is wider than it can be seen. */
  const overflow = () =>
    studio.preview
      .locator('html')
      .evaluate(({ scrollWidth, clientWidth }) => Math.max(0, scrollWidth - clientWidth));

  async function setTheme(theme: (typeof themes)[number]): Promise<void> {
    studio.workbench.setTheme(theme);
    const kind = () => studio.preview.locator('body').getAttribute('data-vscode-theme-kind');
    await eventually(kind).toBe(`vscode-${theme}`);
  }

  it.each(themes)('has text of 4.5 : 1 and signs of 3 : 1 on their grounds in %s', async (theme) => {
    const { goTo, preview, workbench } = studio;
    await setTheme(theme);
    await preview.locator('.findings li').first().waitFor();
    await goTo('19');
    await workbench.screenshot(artefact(`preview-${theme}`));

    const found = await preview.locator('body').evaluate((body) => {
      const texts = [
        ...[...body.querySelectorAll('svg [data-layer="captions"] text')]
          // Figures in the boxes of the value scale stand on the greys of the picture.
          .filter((text) => !(text.getAttribute('fill') ?? '').startsWith('#'))
          .map((text) => ({ text, colour: getComputedStyle(text).fill })),
        ...[
          ...body.querySelectorAll('h2, .count, .views span, .tool, .zoomed-to, .said, .advice, .place'),
        ].map((text) => ({
          text,
          colour: getComputedStyle(text).color,
        })),
      ].map(({ text, colour }) => ({ what: text.textContent, colour }));
      const signs = [...body.querySelectorAll('.sign')].map((sign) => getComputedStyle(sign).backgroundColor);
      const field = body.querySelector('.find input');
      const lines = field === null ? [] : [getComputedStyle(field).borderTopColor];
      const marked = [...body.querySelectorAll('.outlines [aria-current] path')].map(
        (line) => getComputedStyle(line).stroke,
      );
      return { ground: getComputedStyle(body).backgroundColor, texts, signs, lines, marked };
    });
    expect(found.texts.length).toBeGreaterThan(20);
    expect(found.texts.filter(({ colour }) => contrast(colour, found.ground) < 4.5)).toEqual([]);
    expect(found.signs.length).toBeGreaterThan(0);
    expect(found.lines).toHaveLength(1);
    expect([...found.signs, ...found.lines].filter((colour) => contrast(colour, found.ground) < 3)).toEqual(
      [],
    );
    // The line of what the cursor is at has a bed of its own, so that it can be seen on any colour.
    const [bed = '', line = ''] = found.marked;
    expect(contrast(bed, line)).toBeGreaterThanOrEqual(3);
  });

  it.each(themes)('has nothing that axe-core finds at fault in %s', async (theme) => {
    const { page, preview, workbench } = studio;
    await setTheme(theme);
    const more = preview.getByRole('button', { name: 'More', exact: true });
    if ((await more.getAttribute('aria-expanded')) === 'false') await more.press('Enter');
    const names = preview.getByRole('button', { name: 'Names' });
    if ((await names.getAttribute('aria-pressed')) === 'true') await names.press('Space');
    await preview.locator('body').press('+');
    await preview.locator('body').press('/');
    await preview.getByRole('option').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await workbench.screenshot(artefact(`preview-bar-${theme}`));

    const frame = await (await preview.locator('body').elementHandle())?.ownerFrame();
    await frame?.evaluate(axe.source);
    const faults = await frame?.evaluate(async () => {
      const { violations } = await window.axe.run(document.body);
      return violations.map(({ id, nodes }) => ({ id, nodes: nodes.map(({ html }) => html.slice(0, 200)) }));
    });
    expect(faults).toEqual([]);
    await page.keyboard.press('Escape');
    await names.press('Space');
    await preview.locator('body').press('0');
  });

  /** The narrow page is as narrow as an editor makes one; the drawing is set for it. */
  it.each([
    ['narrow', 750, 900],
    ['wide', 2_200, 1_000],
  ])('fits a %s window', async (name, width, height) => {
    await setTheme('light');
    await studio.page.setViewportSize({ width, height });
    await eventually(overflow).toBe(0);
    await eventually(() =>
      studio.preview
        .locator('.drawing')
        .evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth),
    ).toBe(0);
    await studio.preview.locator('.findings li').last().scrollIntoViewIfNeeded();
    await studio.workbench.screenshot(artefact(`preview-${name}-findings`));
    await studio.preview.locator('html').evaluate((html) => html.scrollTo(0, 0));
    await studio.workbench.screenshot(artefact(`preview-${name}`));
  });

  it('fits a narrow window with text of twice the size', async () => {
    await studio.page.setViewportSize({ width: 750, height: 900 });
    const body = studio.preview.locator('body');
    await body.evaluate(({ style }) => (style.fontSize = '26px'));
    await eventually(overflow).toBe(0);
    const small = await studio.preview
      .locator('svg [data-layer="captions"] text')
      .evaluateAll((texts) => Math.min(...texts.map((text) => text.getBoundingClientRect().height)));
    expect(small).toBeGreaterThanOrEqual(15);
    await studio.workbench.screenshot(artefact('preview-large-text'));
    await body.evaluate(({ style }) => (style.fontSize = ''));
  });

  it('has nothing that moves by itself', async () => {
    const moving = await studio.preview.locator('body').evaluate((body) =>
      [body, ...body.querySelectorAll('*')]
        .filter((element) => {
          const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
          return animationName !== 'none' || transitionDuration !== '0s' || scrollBehavior === 'smooth';
        })
        .map(({ className }) => String(className)),
    );
    expect(moving).toEqual([]);
  });
});
