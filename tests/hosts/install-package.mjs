// @ts-check
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { installNodeHost, nodeHost } from './install-host.mjs';
import { run } from './processes.mjs';
import { temporaryFolder } from './workspace.mjs';

/**
 * Installs a package into a folder of extensions, with the program that VS Code's server has for it.
 * @param {string} file a `.vsix`
 * @param {string} extensions
 * @returns {Promise<string>} the folder of the installed extension
 * @throws {Error} if it was not installed
 */
export async function installPackage(file, extensions) {
  await installNodeHost();
  const before = new Set(existsSync(extensions) ? readdirSync(extensions) : []);
  const data = temporaryFolder('install');
  const args = [
    '--install-extension',
    path.resolve(file),
    '--extensions-dir',
    extensions,
    '--user-data-dir',
    data,
  ];
  const code = await run(nodeHost.node, [nodeHost.entry, ...args], { stdio: 'ignore', limit: 60_000 });
  const folder = readdirSync(extensions, { withFileTypes: true }).find(
    (entry) => entry.isDirectory() && !entry.name.startsWith('.') && !before.has(entry.name),
  );
  if (code !== 0 || folder === undefined) throw new Error(`${file} could not be installed.`);
  return path.join(extensions, folder.name);
}
