// @ts-check
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

/**
 * @typedef {object} Library
 * @property {string} folder
 * @property {string} name
 * @property {string} version
 * @property {string} licence
 */

/**
 * The libraries that some files belong to.
 * @param {string} root the folder that the inputs are relative to
 * @param {readonly string[]} inputs the files that were bundled
 * @returns {readonly Library[]} in the order of their names, with their folders relative to `root`
 * @throws {Error} if a library says nothing of its licence
 */
export function librariesOf(root, inputs) {
  const folders = new Set(inputs.flatMap((input) => packageFolder(input) ?? []));
  return [...folders]
    .map((folder) => {
      /** @type {{ name: string; version: string; license?: string }} */
      const { name, version, license } = manifestIn(path.join(root, folder));
      if (license === undefined) throw new Error(`${name} does not say under which licence it is.`);
      return { folder, name, version, licence: license };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/**
 * The licences of the libraries in some bundles, in full, as most of them ask of whoever passes them on.
 * @param {string} root the folder that the inputs are relative to
 * @param {readonly string[]} inputs the files that were bundled
 * @returns {string} one text, in the order of the names
 * @throws {Error} if a library says nothing of its licence
 */
export function licenceTexts(root, inputs) {
  return librariesOf(root, inputs)
    .map(({ folder, name, version, licence }) => {
      const text = licenceIn(path.join(root, folder)) ?? `${licence}, ${authorOf(path.join(root, folder))}`;
      return `${name} ${version}\n\n${text}\n`;
    })
    .join(`\n${'-'.repeat(80)}\n\n`);
}

/** @param {string} input */
function packageFolder(input) {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

/** @param {string} folder */
function manifestIn(folder) {
  return JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
}

/** @param {string} folder */
function authorOf(folder) {
  /** @type {{ author?: string | { name: string } }} */
  const { author } = manifestIn(folder);
  return typeof author === 'object' ? author.name : (author ?? 'its authors');
}

/**
 * @param {string} folder
 * @returns {string | undefined} the text that a library has of its licence
 */
function licenceIn(folder) {
  const file = readdirSync(folder).find((entry) => /^licen[cs]e(\.|$)/i.test(entry));
  // What was compiled into a library for pictures has a licence of its own.
  const codec = path.join(folder, 'codec/LICENSE.codec.md');
  const files = [
    ...(file === undefined ? [] : [path.join(folder, file)]),
    ...(existsSync(codec) ? [codec] : []),
  ];
  return files.length === 0 ? undefined : files.map((each) => readFileSync(each, 'utf8').trim()).join('\n\n');
}
