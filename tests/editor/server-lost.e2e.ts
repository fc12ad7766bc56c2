import { existsSync, readFileSync, readdirSync, realpathSync, renameSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyOfExtension } from '../hosts/workspace.mjs';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

/** Ends the process that runs a script, which only this test has. @returns whether there was one */
function endProcess(script: string): boolean {
  const running = readdirSync('/proc').find((pid) =>
    readIfThere(`/proc/${pid}/cmdline`)
      .split('\0')
      // The extension is installed as a link.
      .some((argument) => argument.endsWith(path.basename(script)) && realIfThere(argument) === script),
  );
  if (running !== undefined) process.kill(Number(running), 'SIGKILL');
  return running !== undefined;
}

function readIfThere(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

function realIfThere(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return '';
  }
}

describe.each(['node', 'web'] as const)('a server that cannot be started, %s extension host', (host) => {
  const extension = copyOfExtension(process.env['MAHLSTICK_EXTENSION']);
  const script = path.join(extension, `dist/server.${host}.js`);
  const aside = `${script}.aside`;
  let studio: Studio;

  beforeAll(async () => {
    renameSync(script, aside);
    studio = await openStudio({ host, extension, plan: 'bowl.mahl' });
  });
  afterAll(() => studio?.workbench.close());

  const gone = () => studio.preview.getByRole('alert').filter({ hasText: 'Mahlstick has stopped' });

  it('is told of in words where its drawing would be', async () => {
    expect(existsSync(script)).toBe(false);
    await gone().waitFor({ timeout: 60_000 });
    await studio.workbench.screenshot(artefact(`server-lost-${host}`));
  });

  it('starts, and draws, when the button there is pressed and it can', async () => {
    renameSync(aside, script);
    await studio.preview.getByRole('button', { name: 'Start again' }).click();
    await studio.preview.locator(shape('bowl')).waitFor({ timeout: 60_000 });
    await eventually(() => gone().count()).toBe(0);
  });

  it('is told of in one message where no preview is in sight, which starts it as well', async () => {
    const { page, preview, workbench } = studio;
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Notifications: Clear All Notifications');
    renameSync(script, aside);
    await workbench.runCommand('Mahlstick: Restart Language Server');
    const message = page.locator('.notification-toast .notification-list-item-message');
    await message.waitFor();
    expect(await message.allInnerTexts()).toEqual([
      'Mahlstick has stopped: plans are neither checked nor drawn. Your text is not affected.',
    ]);
    await workbench.screenshot(artefact(`server-lost-message-${host}`));
    renameSync(aside, script);
    await page.getByRole('button', { name: 'Start Again' }).click();
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    await preview.locator(shape('bowl')).waitFor();
  });

  // In a browser nothing outside of the page can end a worker.
  it.runIf(host === 'node')(
    'is started again by itself when it ends, and given up when it keeps ending',
    async () => {
      const { preview, shapeOf, goTo, type } = studio;
      await studio.workbench.openFile('bowl.mahl');
      const before = await shapeOf('bowl');
      expect(endProcess(script)).toBe(true);
      await goTo('19:26');
      await type('1');
      await eventually(() => shapeOf('bowl')).not.toBe(before);

      for (let ends = 1; ends < 12 && (await gone().count()) === 0; ends++) {
        endProcess(script);
        await studio.page.waitForTimeout(500);
      }
      await gone().getByText('What you see is how the plan last was.').waitFor();
      expect(await preview.locator(shape('bowl')).count()).toBe(1);

      await studio.workbench.runCommand('Mahlstick: Restart Language Server');
      await gone().waitFor({ state: 'detached' });
      await goTo('19:26');
      const last = await shapeOf('bowl');
      await type('1');
      await eventually(() => shapeOf('bowl')).not.toBe(last);
    },
  );
});
