import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../hosts/workspace.mjs';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

const count = 5_000;
const longName = 'n'.repeat(3_000);

/** Five thousand objects in rows of a hundred, one with a name as long as a page and one from off the canvas. */
function manyObjects(): string {
  const objects = Array.from({ length: count }, (_, index) => {
    const [x, y] = [index % 100, Math.floor(index / 100) * 2];
    return `object o${index}\n  shape rectangle (${x}, ${y}) to (${x + 1}, ${y + 2})\n  value ${(index % 5) + 1}\n`;
  });
  const long = `object ${longName}\n  shape rectangle (200, 200) to (210, 210)\n  value 1\n`;
  return ['plan "\u202Elive \u0007 eb"', 'canvas 100 x 100 cm', ...objects, long].join('\n');
}

describe('the preview of a plan that means ill', () => {
  let studio: Studio;

  beforeAll(async () => {
    const plans = path.join(temporaryFolder('hostile'), 'hostile');
    mkdirSync(plans);
    writeFileSync(path.join(plans, 'many.mahl'), manyObjects());
    studio = await openStudio({ plans, plan: 'many.mahl' });
    await studio.preview.locator(shape('o0')).waitFor({ timeout: 60_000 });
  });
  afterAll(() => studio?.workbench.close());

  it('shows what is drawn of it, its controls as signs that can be seen', async () => {
    const { preview, workbench } = studio;
    expect(
      await preview.locator('[data-layer="picture"] [data-subject^="object:"]').count(),
    ).toBeGreaterThanOrEqual(count);
    const texts = await preview.locator('svg text').allTextContents();
    expect(texts.join()).toContain('\uFFFDlive \uFFFD eb');
    expect(Math.max(...texts.map(({ length }) => length))).toBeLessThan(200);
    await workbench.screenshot(artefact('preview-many'));
  });

  it('can still be clicked in and gone through', async () => {
    const { focused, page, preview, selection } = studio;
    await preview.locator(shape('o4040')).click({ force: true });
    await eventually(selection).toMatch(/\(5 selected\)$/);
    await preview.locator('.outlines [tabindex="0"]').focus();
    await page.keyboard.press('End');
    await eventually(focused).toEqual([`object:${longName}`]);
    await page.keyboard.press('ArrowUp');
    await eventually(focused).toEqual([`object:o${count - 1}`]);
    await page.keyboard.press('Enter');
    await eventually(selection).toMatch(/^Ln 19999, .*\(5 selected\)$/);
  });

  it('still follows what is typed', async () => {
    const { goTo, page, preview, type } = studio;
    const fill = () => preview.locator(shape('o0')).getAttribute('fill');
    const before = await fill();
    await goTo('5:10');
    await page.keyboard.press('Shift+ArrowLeft');
    await type('5');
    await eventually(fill).not.toBe(before);
    await page.keyboard.press('Control+Z');
    await eventually(fill).toBe(before);
  });
});
