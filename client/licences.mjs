// @ts-check
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

/**
 * The licences of the libraries in some bundles, in full, as most of them ask of whoever passes them on.
 * @param {string} root the folder that the inputs are relative to
 * @param {readonly string[]} inputs the files that were bundled
 * @returns {string} one text, in the order of the names
 * @throws {Error} if a library says nothing of its licence
 */
export function licenceTexts(root, inputs) {
  const folders = new Set(inputs.flatMap((input) => packageFolder(input) ?? []));
  const texts = new Map([...folders].map((folder) => licenceOf(path.join(root, folder))));
  return [...texts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, text]) => `${name}\n\n${text}\n`)
    .join(`\n${'-'.repeat(80)}\n\n`);
}

/** @param {string} input */
function packageFolder(input) {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

/**
 * @param {string} folder
 * @returns {readonly [string, string]} name with version, and text
 */
function licenceOf(folder) {
  /** @type {{ name: string; version: string; license?: string; author?: string | { name: string } }} */
  const { name, version, license, author } = JSON.parse(
    readFileSync(path.join(folder, 'package.json'), 'utf8'),
  );
  const file = readdirSync(folder).find((entry) => /^licen[cs]e(\.|$)/i.test(entry));
  // What was compiled into a library for pictures has a licence of its own.
  const codec = path.join(folder, 'codec/LICENSE.codec.md');
  const files = [
    ...(file === undefined ? [] : [path.join(folder, file)]),
    ...(existsSync(codec) ? [codec] : []),
  ];
  if (files.length > 0)
    return [`${name} ${version}`, files.map((each) => readFileSync(each, 'utf8').trim()).join('\n\n')];
  if (license === undefined) throw new Error(`${name} does not say under which licence it is.`);
  return [
    `${name} ${version}`,
    `${license}, ${typeof author === 'object' ? author.name : (author ?? 'its authors')}`,
  ];
}
