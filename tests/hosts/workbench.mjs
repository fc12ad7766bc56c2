// @ts-check
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { launchChromium } from './chromium.mjs';
import { startNodeHost } from './node-host.mjs';
import { root } from './paths.mjs';
import { writeSettings } from './settings.mjs';
import { startWebHost } from './web-host.mjs';
import { copyOfPlans, plansIn } from './workspace.mjs';

/** Milliseconds for each step; a busy machine with two cores needs a good part of it for the first. */
const limit = 120_000;

/** @type {typeof import('./workbench.d.mts').openWorkbench} */
export async function openWorkbench({
  host,
  plans: source,
  extension = process.env['MAHLSTICK_EXTENSION'] ?? root,
  theme = 'light',
  language,
  restricted = false,
  size = { width: 1280, height: 800 },
}) {
  const folder = copyOfPlans(source);
  const server =
    host === 'node'
      ? await startNodeHost({
          installed: [extension],
          theme,
          restricted,
          ...(language === undefined ? {} : { language }),
        })
      : await startWebHost({ extension, workspace: folder, theme });
  /** @type {import('playwright-core').Browser | undefined} */
  let browser;
  const close = async () => {
    await browser?.close();
    await server.close();
  };
  try {
    browser = await launchChromium();
    const page = await browser.newPage({ viewport: size, reducedMotion: 'reduce' });
    page.setDefaultTimeout(limit);
    /** @type {{ address: string; method: string }[]} */
    const requests = [];
    page
      .context()
      .on('request', (request) => requests.push({ address: request.url(), method: request.method() }));
    if (host === 'web' && language !== undefined) await page.addInitScript(speaksInBrowser, language);
    await page.goto(typeof server.url === 'string' ? server.url : server.url(folder));
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
    const setTheme = (/** @type {import('./settings.mjs').Theme} */ next) =>
      writeSettings(path.join(folder, '.vscode'), next);
    return { ...controls(page), page, requests, folder, plans: plansIn(folder), setTheme, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/**
 * The loader of VS Code for the web takes its language from what stands in its place before it is there.
 * @param {string} language
 */
function speaksInBrowser(language) {
  Object.assign(globalThis, { require: { 'vs/nls': { availableLanguages: { '*': language } } } });
}

/** @param {import('playwright-core').Page} page */
function controls(page) {
  /**
   * Takes a command in the palette, once.
   * @param {string} title
   * @returns {Promise<boolean>} false if the palette does not have it: the extension may be loading still
   */
  const choose = async (title) => {
    const palette = page.locator('.quick-input-widget:visible');
    const input = palette.locator('.quick-input-box input.input');
    await page.keyboard.press('F1');
    await input.fill(`>${title}`);
    const entry = palette
      .locator('.quick-input-list .monaco-list-row')
      .filter({ has: page.getByText(title, { exact: true }) });
    const outcome = entry.or(palette.getByText('No matching commands')).first();
    const listed = await outcome.waitFor({ timeout: 5_000 }).then(
      () => entry.first().isVisible(),
      () => false,
    );
    if (listed) await entry.first().click();
    else await page.keyboard.press('Escape');
    // A command may ask something in the same place.
    await page
      .locator('.quick-input-widget:visible input.input[placeholder*="command" i]')
      .waitFor({ state: 'hidden' });
    return listed;
  };
  return {
    /** @param {string} name */
    openFile: async (name) => {
      await page
        .locator('.explorer-folders-view .monaco-list-row')
        .filter({ has: page.getByText(name, { exact: true }) })
        .dblclick();
      await page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor();
      const editor = page.locator('.editor-group-container.active .monaco-editor');
      await editor.locator('.view-line').first().waitFor();
      // Where the keyboard goes: the one in VS Code 1.91, the other in later versions.
      await editor.locator('textarea.inputarea, .native-edit-context').first().focus();
      await editor.and(page.locator('.focused')).first().waitFor();
    },
    /** @param {string} entry */
    pick: async (entry) => {
      const list = page.locator('.quick-input-widget:visible');
      await list.locator('.quick-input-box input.input').fill(entry);
      await list
        .locator('.quick-input-list .monaco-list-row')
        .filter({ has: page.getByText(entry, { exact: true }) })
        .first()
        .click();
    },
    /** @param {string} title */
    runCommand: async (title) => {
      const end = Date.now() + limit;
      while (!(await choose(title)))
        if (Date.now() > end) throw new Error(`The palette has no command '${title}'.`);
    },
    preview: async () => {
      const frame = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
      await frame.locator('body > *').first().waitFor({ state: 'attached' });
      return frame;
    },
    /** @param {string} file */
    screenshot: async (file) => {
      mkdirSync(path.dirname(path.resolve(file)), { recursive: true });
      await page.screenshot({ path: file, animations: 'disabled', caret: 'hide' });
    },
  };
}
