import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { type Studio, artefact, eventually, openStudio, putAway, shape } from './studio.js';

describe('a preview and the document that it is of', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'pot.mahl' });
    await studio.preview.locator(shape('pot')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  const tab = (name: string) => studio.page.locator(`.tab[data-resource-name="${name}"]`);
  const previewTab = (name: string) => studio.page.locator('.tab', { hasText: `Preview ${name}` });

  it('brings the text back, its words selected, when its tab was closed and the drawing is clicked', async () => {
    const { workbench, preview, selection } = studio;
    await workbench.runCommand('View: Close Editor');
    await tab('pot.mahl').waitFor({ state: 'detached' });
    await preview.locator(shape('pot')).click({ force: true });
    await tab('pot.mahl').waitFor();
    await eventually(selection).toBe('Ln 5, Col 12 (3 selected)');
    await studio.goTo('6');
    await eventually(studio.current).toEqual(['object:pot']);
  });

  it('goes with a file that is renamed, and still draws what is typed', async () => {
    const { page, goTo, type, shapeOf } = studio;
    const before = await shapeOf('pot');
    await goTo('6:23');
    await type('1');
    await eventually(() => shapeOf('pot')).not.toBe(before);
    await page.keyboard.press('Control+Z');
    await eventually(() => shapeOf('pot')).toBe(before);
    await page.keyboard.press('Control+S');

    const entry = page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'pot.mahl' });
    await entry.click();
    await page.keyboard.press('F2');
    const input = page.locator('.explorer-item-edited input');
    await input.fill('jar.mahl');
    await input.press('Enter');
    await previewTab('jar.mahl').waitFor();
    await eventually(() => shapeOf('pot')).toBe(before);
    await studio.workbench.openFile('jar.mahl');
    await goTo('6:23');
    await type('1');
    await eventually(() => shapeOf('pot')).not.toBe(before);
    await page.keyboard.press('Control+Z');
    await eventually(() => shapeOf('pot')).toBe(before);
    await page.keyboard.press('Control+S');
  });

  it('says that a plan is gone, also when the window is loaded again', async () => {
    const { workbench, preview, page } = studio;
    await workbench.runCommand('View: Close Editor');
    await eventually(() => tab('jar.mahl').count()).toBe(0);
    rmSync(path.join(workbench.folder, 'jar.mahl'));
    await putAway(page, /uri[\\"]*:[^,]*jar\.mahl/u);
    await page.reload();
    await preview.getByRole('alert').filter({ hasText: 'This plan is gone' }).waitFor();
    await workbench.screenshot(artefact('preview-gone'));
  });

  it('draws an unsaved plan, and goes on in the file that it is saved as', async () => {
    const { workbench, page, preview, shapeOf, goTo } = studio;
    await workbench.runCommand('View: Close All Editors');
    await workbench.runCommand('File: New Untitled Text File');
    await workbench.runCommand('Change Language Mode');
    await workbench.pick('Mahlstick Plan');
    await page.keyboard.insertText(
      'canvas 40 x 30 cm\nobject jug\n  shape rectangle (10, 8) to (18, 22)\n  value 2\n',
    );
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    await preview.locator(shape('jug')).waitFor();
    const before = await shapeOf('jug');

    await page.keyboard.press('Control+S');
    const dialog = page.locator('.quick-input-widget:visible input.input');
    await eventually(() => dialog.inputValue()).toContain('.mahl');
    await dialog.fill(path.join(workbench.folder, 'jug.mahl'));
    await page.keyboard.press('Enter');
    await tab('jug.mahl').waitFor();
    await previewTab('jug.mahl').waitFor();
    await eventually(() => shapeOf('jug')).toBe(before);
    await goTo('3:24');
    await page.keyboard.type('1');
    await eventually(() => shapeOf('jug')).not.toBe(before);
  });

  it('goes with a folder that is renamed', async () => {
    const { workbench, page, preview } = studio;
    await workbench.runCommand('File: Revert File');
    await workbench.runCommand('View: Close All Editors');
    mkdirSync(path.join(workbench.folder, 'studies'));
    writeFileSync(
      path.join(workbench.folder, 'studies', 'cup.mahl'),
      'canvas 40 x 30 cm\nobject cup\n  shape rectangle (10, 8) to (18, 22)\n  value 2\n',
    );
    const folder = page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'studies' });
    await folder.click();
    await workbench.openFile('cup.mahl');
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    await preview.locator(shape('cup')).waitFor();
    await folder.click();
    await page.keyboard.press('F2');
    const input = page.locator('.explorer-item-edited input');
    await input.fill('sketches');
    await input.press('Enter');
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'sketches' }).waitFor();
    await workbench.openFile('cup.mahl');
    await studio.goTo('3:24');
    const before = await studio.shapeOf('cup');
    await page.keyboard.type('1');
    await eventually(() => studio.shapeOf('cup')).not.toBe(before);
  });
});
