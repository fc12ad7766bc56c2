import { chmodSync, existsSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newRepository, type TestRepository } from '../cli/repository.js';
import { openWorkbench, type Workbench } from '../hosts/workbench.mjs';
import { webviewTitled } from './attempts.js';
import { eventually, shape } from './studio.js';

const plan = `plan "A jar"
canvas 40 x 30 cm
budget value dark 50%, light 50% within 5%
object jar, dominant
  shape circle 8 at (20, 15)
  value 2
`;

describe('a folder that is not trusted, with a repository that sets up programs', () => {
  let repository: TestRepository;
  let workbench: Workbench;
  const isSprung = () => existsSync(path.join(repository.top, '.git/sprung'));

  beforeAll(async () => {
    repository = newRepository();
    const { git, top, write, commit } = repository;
    write('jar.mahl', plan);
    commit('first');
    write('.git/trap', `#!/bin/sh\ntouch "${path.join(top, '.git/sprung')}"\n`);
    chmodSync(path.join(top, '.git/trap'), 0o755);
    git('config', 'core.fsmonitor', path.join(top, '.git/trap'));
    workbench = await openWorkbench({ host: 'node', plans: top, restricted: true });
  });
  afterAll(async () => {
    await workbench?.close();
    repository.remove();
  });

  /** What the palette offers to compare with. */
  const offered = async (): Promise<string> => {
    const { page } = workbench;
    await page.keyboard.press('F1');
    const palette = page.locator('.quick-input-widget:visible');
    await palette.locator('.quick-input-box input.input').fill('>Mahlstick: Compare with');
    const entries = palette.locator('.quick-input-list .monaco-list-row');
    await entries.filter({ hasText: 'Compare with Another Plan' }).waitFor();
    const words = await entries.allInnerTexts();
    await page.keyboard.press('Escape');
    await palette.waitFor({ state: 'hidden' });
    return words.join('\n');
  };

  it('has its plans drawn, and told what is to be told', async () => {
    const { page } = workbench;
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
    await workbench.openFile('jar.mahl');
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    const preview = await workbench.preview();
    await preview.locator(shape('jar')).waitFor();
    await eventually(() => preview.locator('.findings li').count()).toBeGreaterThan(0);
  });

  it('has git run by nobody, and earlier versions not offered', async () => {
    expect(await offered()).not.toContain('Compare with an Earlier Version');
    expect(isSprung()).toBe(false);
  });

  it('has git run by the editor once it is trusted, which shows that the trap was a live one', async () => {
    const { page } = workbench;
    await workbench.runCommand('Workspaces: Manage Workspace Trust');
    await page.locator('.workspace-trust-editor').getByRole('button', { name: 'Trust', exact: true }).click();
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor({ state: 'hidden' });
    await eventually(isSprung).toBe(true);
  });

  it('is then offered its earlier versions, and shown one beside the plan', async () => {
    const { page } = workbench;
    // Later versions of VS Code show the page of trust over everything else.
    const over = page.locator('.monaco-modal-editor-block');
    if (await over.isVisible())
      await over
        .getByRole('button', { name: /^Close/u })
        .first()
        .click();
    await eventually(offered).toContain('Compare with an Earlier Version');
    await workbench.runCommand('Mahlstick: Compare with an Earlier Version');
    await workbench.pick('first');
    const compared = await webviewTitled(page, /^Compare /u);
    await compared.locator('svg').first().waitFor();
  });
});
