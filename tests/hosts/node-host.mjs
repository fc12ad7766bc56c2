// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { installNodeHost, nodeHost } from './install-host.mjs';
import { installPackage } from './install-package.mjs';
import { freePort, killTree, onEnd, within } from './processes.mjs';
import { writeSettings } from './settings.mjs';

/** Nothing is asked of who opens a folder, which is not trusted then. */
const restricted = {
  'git.enabled': true,
  'security.workspace.trust.enabled': true,
  'security.workspace.trust.startupPrompt': 'never',
  'security.workspace.trust.banner': 'never',
  'security.workspace.trust.emptyWindow': false,
};

/**
 * @typedef {object} NodeHostOptions
 * @property {readonly string[]} [installed] extensions: `.vsix` packages are installed as a painter would, folders
 *   appear as installed, by symbolic link
 * @property {number} [port] taken if it is free
 * @property {import('./settings.mjs').Theme} [theme]
 * @property {string} [language] that the editor tells extensions it has, such as `de`; its own words stay English
 * @property {boolean} [restricted] folders are not trusted until they are said to be, and git is on
 * @property {boolean} [automation] lets the page report the output and the result of extension tests
 */

/**
 * Starts VS Code with a node extension host, served on the loopback interface; installs it first if needed.
 * @param {NodeHostOptions} [options]
 */
export async function startNodeHost(options = {}) {
  await installNodeHost();
  const temporary = mkdtempSync(path.join(tmpdir(), 'mahlstick-host-'));
  const userData = path.join(temporary, 'data');
  const extensions = path.join(temporary, 'extensions');
  writeSettings(path.join(userData, 'User'), options.theme, options.restricted === true ? restricted : {});
  mkdirSync(extensions, { recursive: true });
  if (options.language !== undefined) addLanguage(options.language, userData);
  for (const extension of options.installed ?? []) {
    if (extension.endsWith('.vsix')) await installPackage(extension, extensions);
    else link(extension, extensions);
  }

  const port = await freePort(options.port);
  const child = spawn(
    nodeHost.node,
    [
      nodeHost.entry,
      ...['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`],
      ...['--user-data-dir', userData, '--extensions-dir', extensions],
      ...['--config', path.join(temporary, 'config.yaml')],
      ...['--disable-telemetry', '--disable-update-check'],
      ...(options.restricted === true ? [] : ['--disable-workspace-trust']),
      '--disable-getting-started-override',
      ...(options.language === undefined ? [] : ['--locale', options.language]),
      ...(options.automation === true ? ['--vscode-option', 'enable-smoke-test-driver'] : []),
    ],
    // The server would prefer PORT to the address that it is given, and leaves its sockets behind.
    { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, PORT: undefined, TMPDIR: temporary } },
  );
  const ended = once(child, 'exit').catch(() => undefined);
  const close = onEnd(() => {
    killTree(child.pid);
    rmSync(temporary, { recursive: true, force: true });
  });
  let log = '';
  const listening = new Promise((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream?.setEncoding('utf8').on('data', (/** @type {string} */ text) => {
        if (log.length < 20_000) log += text;
        if (log.includes('server listening on http')) resolve(undefined);
      });
    }
    child.on('error', reject);
    child.on('exit', (code) => reject(new Error(`VS Code's server ended with ${code}:\n${log}`)));
  });
  try {
    await within(listening, 60_000, "The start of VS Code's server");
  } catch (error) {
    await close();
    throw error;
  }
  const authority = `localhost:${port}`;
  return {
    /**
     * @param {string} file
     * @returns {string} how the workbench names a file of this machine
     */
    uri: (file) => `vscode-remote://${authority}${path.resolve(file)}`,
    /**
     * @param {string | undefined} folder opened as the workspace: a folder or a `.code-workspace` file
     * @param {readonly (readonly [string, string])[]} [payload] what the workbench is asked to do on opening
     */
    url: (folder, payload = []) => {
      const opened = folder?.endsWith('.code-workspace') === true ? 'workspace' : 'folder';
      const query = new URLSearchParams(
        folder === undefined ? { ew: 'true' } : { [opened]: path.resolve(folder) },
      );
      if (payload.length > 0) query.set('payload', JSON.stringify(payload));
      return `http://${authority}/?${query}`;
    },
    /** Settles when the server has ended, for whatever reason. */
    ended,
    close,
  };
}

/**
 * A language is known to the editor by a pack of words for it. An empty one leaves its own words as they are, which is
 * what the tests go by, and has extensions told of the language all the same.
 * @param {string} language
 * @param {string} userData
 */
function addLanguage(language, userData) {
  const words = path.join(userData, 'no-words.json');
  writeFileSync(words, JSON.stringify({ contents: {} }));
  const extensions = [{ extensionIdentifier: { id: 'mahlstick.no-words' }, version: '1.0.0' }];
  const pack = { hash: 'none', extensions, translations: { vscode: words }, label: language };
  writeFileSync(path.join(userData, 'languagepacks.json'), JSON.stringify({ [language]: pack }));
}

/**
 * @param {string} extension
 * @param {string} installed
 */
function link(extension, installed) {
  /** @type {{ publisher: string; name: string; version: string }} */
  const { publisher, name, version } = createRequire(import.meta.url)(path.join(extension, 'package.json'));
  const place = path.join(installed, `${publisher}.${name}-${version}`);
  rmSync(place, { force: true });
  symlinkSync(extension, place);
}
