import { cpSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { type Workbench, type WorkbenchOptions, openWorkbench } from '../hosts/workbench.mjs';

/** Windows that are open and lie idle: loading one costs two cores some twenty seconds, tidying it up two. */
const idle = new Map<WorkbenchOptions['host'], Workbench>();
const usual = { width: 1280, height: 800 };

/** What a window that serves one test file after the other can be asked for. */
export type Borrowed = WorkbenchOptions & { readonly plans: string };

/**
 * Opens an editor on a copy of a folder of plans, or takes one that an earlier test file of this process has left. Its
 * `close` leaves it to the next: nothing open, nothing said, no plan in it. All that borrow of one kind of host ask for
 * the same extension and, as a window of the web host reads its folder once and for all, there for the same plans.
 */
export async function borrowWorkbench(options: Borrowed): Promise<Workbench> {
  const { host } = options;
  const waiting = idle.get(host);
  idle.delete(host);
  const workbench = (await furnished(waiting, options)) ?? (await openWorkbench(options));
  return { ...workbench, close: () => giveBack(host, workbench) };
}

async function furnished(
  workbench: Workbench | undefined,
  { host, plans, size = usual, theme = 'light' }: Borrowed,
): Promise<Workbench | undefined> {
  if (workbench === undefined) return undefined;
  try {
    await workbench.page.setViewportSize(size);
    if (host === 'web') return workbench;
    cpSync(plans, workbench.folder, { recursive: true });
    if (theme !== 'light') workbench.setTheme(theme);
    const first = readdirSync(plans).find((name) => name.endsWith('.mahl')) ?? '';
    await workbench.page
      .locator('.explorer-folders-view .monaco-list-row')
      .filter({ hasText: first })
      .waitFor();
    return workbench;
  } catch {
    await workbench.close();
    return undefined;
  }
}

async function giveBack(host: WorkbenchOptions['host'], workbench: Workbench): Promise<void> {
  try {
    await tidy(workbench);
    if (host === 'node') empty(workbench.folder);
    idle.set(host, workbench);
  } catch {
    // A test that failed may have left it in any state.
    await workbench.close();
  }
}

async function tidy(workbench: Workbench): Promise<void> {
  const { page } = workbench;
  page.setDefaultTimeout(20_000);
  await page.mouse.move(0, 0);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await workbench.runCommand('View: Close All Editors');
  const open = page.locator('.editor-group-container .tab');
  const dialog = page.getByRole('button', { name: "Don't Save" });
  for (let tries = 0; (await open.count()) > 0; tries += 1) {
    if (tries > 100) throw new Error('Its editors stay open.');
    if (await dialog.isVisible()) await dialog.click();
    await page.waitForTimeout(100);
  }
  await workbench.runCommand('Notifications: Clear All Notifications');
}

function empty(folder: string): void {
  for (const name of readdirSync(folder)) rmSync(path.join(folder, name), { recursive: true, force: true });
}
