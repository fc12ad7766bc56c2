import { copyFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contrast } from './contrast.js';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

const themes = ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const;
const boards = ['palette', 'sittings', 'record'] as const;
/** Made, not taken: leaning and lit, with a grey card beside the canvas. */
const photograph = new URL('../../examples/record/quinces-03.jpg', import.meta.url);

describe('the views of the preview that tell what is painted with, and when', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'sink.mahl' });
    await studio.preview.locator(shape('jug')).first().waitFor();
  });
  afterAll(() => studio?.workbench.close());

  async function show(view: string): Promise<void> {
    await studio.preview.locator(`.views input[value="${view}"]`).check({ force: true });
    await studio.preview.locator(`.drawing svg[data-view="${view}"]`).waitFor();
  }

  /** All that is written in the drawing, a no-break space as a space. */
  const written = async () =>
    (await studio.preview.locator('.drawing svg text').allTextContents())
      .join('\n')
      .replaceAll('\u00A0', ' ');

  it('tells the mixtures of the palette in parts, once they have been worked out beside the typing', async () => {
    await show('palette');
    await eventually(written).toMatch(/\d+ (?:white|ochre|rose|sea) : \d+ (?:white|ochre|rose|sea)/u);
    await eventually(written).not.toContain('being worked out');
    expect(await written()).toContain('PB15:4');
  });

  it('draws the palette anew when its paints change', async () => {
    const { goTo, page, type, workbench } = studio;
    await workbench.runCommand('View: Focus First Editor Group');
    // Another of its sort: `sea PB15:4` becomes `sea PB15:43`, of which nothing is known.
    await goTo('24:21');
    await type('3');
    await eventually(written).toContain('PB15:43');
    await page.keyboard.press('Control+Z');
    await eventually(written).not.toContain('PB15:43');
  });

  it('leads from a paint to its words, and from the words to the paint', async () => {
    const { preview, selection } = studio;
    await preview.locator('.drawing svg [data-subject="paint:rose"]').first().click({ force: true });
    await eventually(selection).toBe('Ln 23, Col 15 (4 selected)');
  });

  it('shows the picture after each sitting and the days of its layers, and follows a date that is put off', async () => {
    const { goTo, page, type, workbench } = studio;
    await show('sittings');
    await eventually(written).toMatch(/Sat 20 Mar 2027/u);
    await workbench.runCommand('View: Focus First Editor Group');
    await goTo('30:28');
    await page.keyboard.press('Shift+End');
    await type('27');
    await eventually(written).toMatch(/Sat 27 Mar 2027/u);
    await page.keyboard.press('Control+Z');
    await eventually(written).toMatch(/Sat 20 Mar 2027/u);
  });

  it('draws a glaze over the body colour, and leaves it off when it is not wanted', async () => {
    const { preview } = studio;
    await show('colour');
    const more = preview.getByRole('button', { name: 'More', exact: true });
    if ((await more.getAttribute('aria-expanded')) === 'false') await more.press('Enter');
    const glazes = preview.getByRole('button', { name: 'Glazes' });
    const inJug = () => preview.locator(shape('jug')).count();
    await eventually(inJug).toBe(2);
    await glazes.press('Space');
    await eventually(inJug).toBe(1);
    await glazes.press('Space');
    await eventually(inJug).toBe(2);
  });

  it('shows the photograph after a sitting beside the plan, and has corners and grey placed in it', async () => {
    const { goTo, page, preview, refusals, workbench } = studio;
    copyFileSync(photograph, path.join(workbench.folder, 'sink.jpg'));
    for (const line of [28, 34]) {
      await workbench.runCommand('View: Focus First Editor Group');
      await goTo(`${line}:1`);
      await page.keyboard.press('End');
      await page.keyboard.insertText('\nphoto   "sink.jpg"');
    }
    await show('record');
    const images = () => preview.locator('.drawing svg image').count();
    // The photograph, what is off in values and colours, and two small ones.
    await eventually(images).toBe(5);
    expect(await preview.locator('.drawing svg image').first().getAttribute('href')).toMatch(/^blob:/);
    expect(refusals).toEqual([]);
    const shown = () => preview.locator('.sitting output').textContent();
    await eventually(shown).toBe('2 Glaze');
    await preview.locator('body').press(',');
    await eventually(written).toMatch(/Photograph\n1 Flat, /u);
    await preview.locator('[data-key="record:strip:1"]').click({ force: true });
    await eventually(written).toMatch(/Photograph\n2 Glaze, /u);
    await eventually(shown).toBe('2 Glaze');

    const more = preview.getByRole('button', { name: 'More', exact: true });
    if ((await more.getAttribute('aria-expanded')) === 'false') await more.press('Enter');
    await preview.getByRole('button', { name: 'Place its corners' }).press('Enter');
    const line = (words: string) => page.locator('.view-line', { hasText: words }).count();
    const corner = preview.getByRole('button', { name: /^upper left corner of the canvas/ });
    await corner.press('ArrowRight');
    await eventually(() => line('corners (0.1%, 0%) (100%, 0%)')).toBe(1);
    await preview.getByRole('button', { name: 'Click its grey patch' }).click();
    const box = await preview.locator('.corner-board > svg').first().boundingBox();
    if (box === null) throw new Error('There is no photograph.');
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await eventually(() => line('grey    (50%, 50%)')).toBe(1);
    await preview.getByRole('button', { name: 'Place its corners' }).press('Enter');
    await preview.locator('.corner-board image').first().waitFor({ state: 'hidden' });
  });

  it.each(themes)('can be read in %s', async (theme) => {
    const { preview, workbench } = studio;
    workbench.setTheme(theme);
    await eventually(() => preview.locator('body').getAttribute('data-vscode-theme-kind')).toBe(
      `vscode-${theme}`,
    );
    for (const view of boards) {
      await show(view);
      await workbench.screenshot(artefact(`preview-${view}-${theme}`));
      const { ground, texts } = await preview.locator('body').evaluate((body) => ({
        ground: getComputedStyle(body).backgroundColor,
        texts: [...body.querySelectorAll('svg [data-layer="captions"] text')]
          .filter((text) => !text.getAttribute('data-key')?.endsWith(':number'))
          .map((text) => ({ what: text.textContent, colour: getComputedStyle(text).fill })),
      }));
      expect(texts.length).toBeGreaterThan(5);
      expect(texts.filter(({ colour }) => contrast(colour, ground) < 4.5)).toEqual([]);
    }
  });
});
