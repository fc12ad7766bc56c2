// @ts-check
import { launchChromium } from './chromium.mjs';
import { within } from './processes.mjs';

// What the workbench itself reports: its connections, the online services and native modules it has to do without.
const noise = [
  /^\s*(ENOPRO|\[AgentHost|\[ChatModel|\[Account|getaddrinfo|Timed out waiting for auth|Unable to read file|Ignoring (fetching|the error))/,
  /^\s*(%c|INFO|WARN|Resolv(ing|ed) connection|Creating a socket|\[reconnection|\[Service Worker|Updating additional)/,
  /^\s*(Loading development extension|Found additional builtin|vscode-test-web-support)/,
  /package\.nls\.json' failed/,
  /@vscode\/(spdlog|native-watchdog)/,
];

const limit = Number(process.env['MAHLSTICK_TEST_LIMIT_MS'] ?? 300_000);

/**
 * Opens a workbench that runs extension tests, shows what they print and waits for their end.
 * @param {string} url
 * @returns {Promise<number>} the exit code of the tests
 * @throws {Error} when they take longer than MAHLSTICK_TEST_LIMIT_MS allows or the page is lost
 */
export async function runTestsInPage(url) {
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    /** @type {Promise<number>} */
    const code = new Promise((resolve, reject) => {
      page.on('crash', () => reject(new Error('The page of the editor crashed.')));
      void page.exposeFunction('codeAutomationExit', resolve);
    });
    await page.exposeFunction(
      'codeAutomationLog',
      (/** @type {string} */ _type, /** @type {unknown[]} */ args) => {
        if (!noise.some((known) => known.test(String(args[0])))) console.log(...args);
      },
    );
    await page.goto(url, { timeout: 60_000 });
    return await within(code, limit, 'The editor tests');
  } finally {
    await browser.close();
  }
}
