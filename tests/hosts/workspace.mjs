// @ts-check
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { examples, root } from './paths.mjs';
import { onEnd } from './processes.mjs';

/**
 * @param {string} purpose a word in its name
 * @returns {string} a new folder, which is removed when this process ends
 */
export function temporaryFolder(purpose) {
  const folder = mkdtempSync(path.join(tmpdir(), `mahlstick-${purpose}-`));
  onEnd(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/**
 * Copies a folder of plans to a temporary one, so that tests change nothing in the repository.
 * @param {string} [plans] the examples if left out
 * @returns {string} the copy
 */
export function copyOfPlans(plans = examples) {
  const copy = path.join(temporaryFolder('plans'), path.basename(plans));
  cpSync(plans, copy, { recursive: true });
  return copy;
}

/**
 * Copies what an editor needs of the built extension to a temporary folder, so that a test can take parts away.
 * @param {string} [extension] this repository if left out
 * @returns {string} the copy
 */
export function copyOfExtension(extension = root) {
  const copy = temporaryFolder('extension');
  const manifests = readdirSync(extension).filter((name) => /^package(?:\.nls.*)?\.json$/.test(name));
  for (const part of [...manifests, 'dist', 'grammar', 'client/l10n', 'client/media']) {
    const isWanted = (/** @type {string} */ file) => !/\.map$|\.ts$|dist\/(tests|mahlstick)/.test(file);
    cpSync(path.join(extension, part), path.join(copy, part), { recursive: true, filter: isWanted });
  }
  return copy;
}

/**
 * @param {string} folder
 * @returns {[string, ...string[]]} the names of its plans in the order of the alphabet
 * @throws {Error} if it has none
 */
export function plansIn(folder) {
  const [first, ...others] = readdirSync(folder)
    .filter((name) => name.endsWith('.mahl'))
    .sort();
  if (first === undefined) throw new Error(`There is no plan in ${folder}.`);
  return [first, ...others];
}
