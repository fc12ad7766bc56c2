// @ts-check
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { unzipSync } from 'fflate';
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

/**
 * Unpacks a package as an editor does that installs it, for hosts that take a folder.
 * @param {string} file a `.vsix`
 * @returns {string} a new folder with what is in it, which is removed when this process ends
 * @throws {Error} if it is none
 */
export function unpackPackage(file) {
  const folder = temporaryFolder('package');
  for (const [name, content] of Object.entries(unzipSync(readFileSync(file)))) {
    const [, within] = /^extension\/(.+[^/])$/.exec(name) ?? [];
    if (within === undefined) continue;
    const place = path.join(folder, within);
    mkdirSync(path.dirname(place), { recursive: true });
    writeFileSync(place, content);
  }
  if (!existsSync(path.join(folder, 'package.json'))) throw new Error(`${file} is no package.`);
  return folder;
}
