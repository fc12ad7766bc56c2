import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../support/pdf.js';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

const copiedText = 'The drawing is copied as an image.';

describe('taking the drawing out of the editor', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await studio.preview.locator(shape('bowl')).waitFor();
    // In a panel of this width the buttons wait behind another.
    await studio.preview.locator('.tool.more').click();
  });
  afterAll(() => studio?.workbench.close());

  /** Answers the lists one after the other, then the dialog with the name that it offers. */
  async function exported(choices: readonly string[], name: string): Promise<Uint8Array> {
    const { page, workbench } = studio;
    for (const choice of choices) await workbench.pick(choice);
    const input = page.locator('.quick-input-widget:visible input');
    await eventually(() => input.inputValue()).toContain(name);
    await page.keyboard.press('Enter');
    const file = path.join(workbench.folder, name);
    await eventually(() => existsSync(file) && readFileSync(file).length > 0).toBe(true);
    expect(readdirSync(workbench.folder).filter((each) => each.endsWith('.part'))).toEqual([]);
    return readFileSync(file);
  }

  /** Waits until it is told that the drawing is copied, and gives the types of what is on the clipboard then. */
  async function copied(): Promise<readonly string[]> {
    await studio.page.getByText(copiedText).waitFor();
    return studio.page.evaluate(async () =>
      (await navigator.clipboard.read()).flatMap((item) => [...item.types]),
    );
  }

  it('copies it as an image with a click', async () => {
    const { preview, workbench } = studio;
    await workbench.screenshot(artefact('preview-take-out'));
    await preview.getByRole('button', { name: 'Copy image' }).click();
    expect(await copied()).toContain('image/png');
  });

  it('copies it from the command palette too, with the text in front', async () => {
    const { page, preview, workbench } = studio;
    await page.locator('.monaco-editor .view-line').first().click();
    await page.getByText(copiedText).waitFor({ state: 'hidden' });
    await page.evaluate(() => navigator.clipboard.writeText('nothing'));
    const hasFocus = () => preview.locator('body').evaluate(({ ownerDocument }) => ownerDocument.hasFocus());
    expect(await hasFocus()).toBe(false);
    await workbench.runCommand('Mahlstick: Copy Drawing as Image');
    expect(await copied()).toContain('image/png');
  });

  it('writes the plan sheet as PDF beside the plan', async () => {
    await studio.workbench.runCommand('Mahlstick: Export Drawing...');
    const pdf = await exported(['Plan sheet', 'PDF'], 'bowl-sheet.pdf');
    const { text, title } = await readPdf(pdf);
    expect(title).toMatch(/: plan sheet$/);
    expect(text).toContain('Notan in three tones');
    await studio.page.getByText('bowl-sheet.pdf is written.').first().waitFor();
  });

  it('writes the shown view as PNG of the width that is chosen, by the button too', async () => {
    const button = studio.preview.getByRole('button', { name: 'Export…' });
    await button.click();
    await studio.page.locator('.quick-input-widget:visible').waitFor();
    // In a busy machine the page has the focus of the click only now, which is to leave the list open.
    await button.focus();
    const png = await exported(['Drawing', 'PNG', '1600 pixels'], 'bowl-drawing.png');
    const header = new DataView(png.buffer, png.byteOffset);
    expect(Buffer.from(png.subarray(1, 4)).toString()).toBe('PNG');
    expect(header.getUint32(16)).toBe(1600);
    expect(png.length).toBeGreaterThan(20_000);
  });

  it('writes a view as SVG', async () => {
    await studio.workbench.runCommand('Mahlstick: Export Drawing...');
    const svg = Buffer.from(await exported(['Notan', 'SVG'], 'bowl-notan.svg')).toString();
    expect(svg).toContain('data-view="notan"');
    expect(studio.refusals).toEqual([]);
  });
});
