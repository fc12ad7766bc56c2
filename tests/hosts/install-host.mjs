// @ts-check
import { cp, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { downloads, root } from './paths.mjs';
import { run } from './processes.mjs';

const pinned = path.join(root, 'tests/hosts/code-server');
const target = path.join(downloads, 'code-server');
const packageFolder = path.join(target, 'node_modules/code-server');
const stamp = path.join(target, 'complete');

// The server's own lock file leaves out a peer dependency, which `npm ci` would refuse without --legacy-peer-deps.
const install = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--engine-strict=false'];
const nested = [...install, '--omit=dev', '--legacy-peer-deps'];

/** @type {readonly { name: string; folder: string; args: readonly string[] }[]} */
const steps = [
  { name: 'code-server and Node 24', folder: target, args: install },
  { name: "the workbench's modules", folder: path.join(packageFolder, 'lib/vscode'), args: nested },
  {
    name: "the built-in extensions' modules",
    folder: path.join(packageFolder, 'lib/vscode/extensions'),
    args: nested,
  },
];

/** The program that starts VS Code's server, once it is installed, and the Node that runs it. */
export const nodeHost = {
  node: path.join(target, `node_modules/node-linux-${process.arch}/bin/node`),
  entry: path.join(packageFolder, 'out/node/entry.js'),
};

/**
 * Installs VS Code with a node extension host (code-server, from npm, at the versions of the lock files) into
 * `.hosts/`, unless it is there already. An installation that was cut short is started anew: npm keeps what it
 * has downloaded.
 * @throws {Error} on another system than Linux, or when npm fails
 */
export async function installNodeHost() {
  const lock = await readFile(path.join(pinned, 'package-lock.json'), 'utf8');
  if (existsSync(stamp) && (await readFile(stamp, 'utf8')) === lock) return;
  if (process.platform !== 'linux') {
    throw new Error(
      'The stand-in for the desktop VS Code runs on Linux only. Install VS Code so that `code` is on the PATH.',
    );
  }
  console.log('Downloading VS Code for tests and demonstration (250 MB, 810 MB on disk) into .hosts/');
  await rm(stamp, { force: true });
  await mkdir(target, { recursive: true });
  await cp(pinned, target, { recursive: true });
  for (const { name, folder, args } of steps) {
    const begun = Date.now();
    const code = await run('npm', [...args, '--loglevel=error'], { cwd: folder });
    if (code !== 0)
      throw new Error(`npm could not install ${name} (exit code ${code}); running it again resumes.`);
    console.log(`  ${name}: ${((Date.now() - begun) / 1000).toFixed(0)} s`);
  }
  await stat(nodeHost.node);
  await writeFile(stamp, lock);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await installNodeHost();
  console.log(`VS Code's server is in ${path.relative(process.cwd(), target)}`);
}
