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
