import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Workbench, openWorkbench } from '../hosts/workbench.mjs';

describe.each(['node', 'web'] as const)('the preview beside a plan, %s extension host', (host) => {
  let workbench: Workbench;
  beforeAll(async () => {
    workbench = await openWorkbench({ host });
    await workbench.openFile(workbench.plans[0]);
  });
  afterAll(() => workbench?.close());

  it('names the language in the status bar', async () => {
    const mode = workbench.page.locator('[id="status.editor.mode"]');
    await expect.poll(() => mode.textContent(), { timeout: 60_000 }).toBe('Mahlstick Plan');
  });

  it('draws the plan', async () => {
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    const preview = await workbench.preview();
    await preview.locator('svg').first().waitFor();
  });
});
