// @ts-check
// `npm run audit`: what is known against the libraries that are given away. It asks the registry, and so is no part of
// the tests.
import { execFile } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import * as esbuild from 'esbuild';
import { bundles, optionsOf } from './build.mjs';
import { librariesOf } from './licences.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** Loaded where it is installed; no bundle holds it. */
const loaded = 'node_modules/@resvg/resvg-js/package.json';

/** @type {typeof import('./audit.d.mts').shippedAdvisories} */
export function shippedAdvisories(report, folders) {
  if (report.vulnerabilities === undefined) throw new Error(report.message ?? 'The report is none.');
  const shipped = new Set(folders);
  return Object.values(report.vulnerabilities)
    .filter(({ nodes }) => nodes.some((folder) => shipped.has(folder)))
    .flatMap(({ name, via }) =>
      via.flatMap((reason) =>
        typeof reason === 'string'
          ? []
          : [`${name} ${reason.range}, ${reason.severity}: ${reason.title} (${reason.url})`],
      ),
    );
}

/** @returns {Promise<readonly import('./licences.mjs').Library[]>} */
async function shippedLibraries() {
  const given = bundles.filter(({ name }) => !name.startsWith('tests/'));
  const built = await Promise.all(
    given.map((bundle) =>
      esbuild.build({ ...optionsOf(bundle, true), absWorkingDir: root, write: false, logLevel: 'error' }),
    ),
  );
  const inputs = built.flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
  return librariesOf(root, [...inputs, loaded]);
}

/** @returns {Promise<import('./audit.d.mts').Report>} what npm knows of all that is installed, for tests too */
async function askRegistry() {
  // On Windows `npm` is a script, which is run by a shell alone: the npm that runs this is asked as what it is.
  const npm = process.env['npm_execpath'];
  const [program, words] = npm === undefined ? ['npm', []] : [process.execPath, [npm]];
  const answer = await new Promise((resolve, reject) => {
    execFile(
      program,
      [...words, 'audit', '--json'],
      { cwd: root, maxBuffer: 64 * 1024 * 1024, timeout: 120_000 },
      // It fails where anything at all is known, and prints the report all the same.
      (error, stdout) => (stdout === '' ? reject(error ?? new Error('npm says nothing.')) : resolve(stdout)),
    );
  });
  return JSON.parse(answer);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  try {
    const libraries = await shippedLibraries();
    const advisories = shippedAdvisories(
      await askRegistry(),
      libraries.map(({ folder }) => folder),
    );
    for (const advisory of advisories) console.error(advisory);
    console.log(
      `${libraries.length} libraries are given away; ${advisories.length} advisories are about them.`,
    );
    process.exitCode = advisories.length === 0 ? 0 : 1;
  } catch (error) {
    console.error(`Nothing is known: ${error instanceof Error ? error.message : error}`);
    process.exitCode = 2;
  }
}
