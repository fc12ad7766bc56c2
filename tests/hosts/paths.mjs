// @ts-check
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

/** Where `npm start` and the tests find the example plans. */
export const examples = path.join(root, 'examples');

/** Git-ignored: what is downloaded on demand, and the editor data of `npm start`. */
export const downloads = path.join(root, '.hosts');

/** Git-ignored: what a test run leaves behind (reports, the package). */
export const artefacts = path.join(root, 'artefacts');

/** Bundled mocha suites, as the build writes them. */
export const suites = {
  node: path.join(root, 'dist/tests/suite.node.js'),
  web: path.join(root, 'dist/tests/suite.web.js'),
};
