import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Workbench } from '../hosts/workbench.mjs';
import { eventually, plans } from './studio.js';
import { borrowWorkbench } from './windows.js';

describe('a page of Markdown with plans in it', () => {
  let workbench: Workbench;
  let page: FrameLocator;
  const figures = () => page.locator('.mahlstick-plan');
  const jar = () => page.locator('[data-subject="object:jar"]').first();

  beforeAll(async () => {
    workbench = await borrowWorkbench({ host: 'node', plans });
    await workbench.openFile('notes.md');
    await workbench.runCommand('Markdown: Open Preview to the Side');
    page = await workbench.preview();
    await figures().first().waitFor();
  });
  afterAll(() => workbench?.close());

  it('shows each plan drawn, and other code as it is', async () => {
    await eventually(() => figures().count()).toBe(3);
    await eventually(() => page.locator('pre > code.language-mahl:visible').count()).toBe(0);
    expect(await page.locator('pre > code.language-js').innerText()).toBe('const jar = 1;\n');
    expect(await figures().nth(0).locator('figcaption').allInnerTexts()).toEqual(['Two jars']);
  });

  it('says what could not be read, and keeps the words', async () => {
    expect(await figures().nth(1).locator('figcaption').innerText()).toBe(
      '1 error: what can’t be read is not drawn.',
    );
    await figures().nth(1).getByText('The plan in words').click();
    expect(await figures().nth(1).locator('code').innerText()).toContain('shape circel 4');
  });

  it('reads no file and runs nothing for a stranger’s plan', async () => {
    expect(await page.locator('img').count()).toBe(0);
    await figures().nth(2).locator('[data-subject="object:cup"]').first().waitFor({ state: 'attached' });
  });

  it('follows the text', async () => {
    const before = await jar().getAttribute('d');
    await workbench.page.locator('.monaco-editor .view-lines').first().click();
    await workbench.page.keyboard.press('Control+Home');
    await workbench.page.keyboard.press('Control+F');
    await workbench.page.keyboard.type('(12, 14)');
    await workbench.page.keyboard.press('Escape');
    await workbench.page.keyboard.type('(20, 14)');
    await eventually(() => jar().getAttribute('d')).not.toBe(before);
    await eventually(() => figures().count()).toBe(3);
  });
});
