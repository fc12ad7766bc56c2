// @ts-check
import { accessSync, constants } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { onEnd, run } from './processes.mjs';

/** @param {string} file */
function executable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * @param {readonly string[]} names
 * @returns {string | undefined} the first program of these names on the PATH
 */
export function onPath(...names) {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => path.join(folder, name))).find(executable);
}

/**
 * @returns {string | undefined} the browser that CHROMIUM names, or the one on the PATH
 * @throws {Error} if CHROMIUM names something that cannot be run
 */
export function findChromium() {
  const named = process.env['CHROMIUM'];
  if (named === undefined || named === '') {
    return [onPath('chromium', 'chromium-browser', 'google-chrome'), '/usr/bin/chromium'].find(
      (file) => file !== undefined && executable(file),
    );
  }
  if (!executable(named)) throw new Error(`CHROMIUM is ${named}, which cannot be run.`);
  return named;
}

const advice = `The editor tests need Chromium. Install it (Debian: apt-get install chromium) or set CHROMIUM to its path.`;

/**
 * Finds Chromium, or installs it with apt where this process may.
 * @returns {Promise<string>} its path
 * @throws {Error} that says how to get it
 */
export async function ensureChromium() {
  const found = findChromium();
  if (found !== undefined) return found;
  if (onPath('apt-get') === undefined) throw new Error(advice);
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  if (sudo.length > 0 && (onPath('sudo') === undefined || (await run('sudo', ['-n', 'true'])) !== 0))
    throw new Error(advice);
  console.log('Chromium is missing; installing it with apt (about 130 MB with what it needs).');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [['update'], ['install', '-y', '--no-install-recommends', 'chromium']]) {
    const [command = '', ...rest] = [...sudo, 'apt-get', '-q', ...args];
    if ((await run(command, rest, { env })) !== 0)
      throw new Error(`apt-get ${args.join(' ')} failed. ${advice}`);
  }
  const installed = findChromium();
  if (installed === undefined) throw new Error(advice);
  return installed;
}

/**
 * Starts Chromium without a window; it ends with this process.
 * @returns {Promise<import('playwright-core').Browser>}
 */
export async function launchChromium() {
  const browser = await chromium.launch({
    executablePath: await ensureChromium(),
    headless: true,
    timeout: 60_000,
    args: [
      // Chromium's own sandbox needs rights that containers rarely give; the pages come from this machine.
      '--no-sandbox',
      // Without a graphics card it is far less work to paint than to stand in for one.
      '--disable-gpu',
      '--disable-software-rasterizer',
      '--disable-gpu-compositing',
      '--disable-gpu-rasterization',
      '--disable-dev-shm-usage',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  const stop = onEnd(() => browser.close());
  browser.on('disconnected', () => void stop());
  return browser;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  try {
    console.log(`Chromium: ${await ensureChromium()}`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}
