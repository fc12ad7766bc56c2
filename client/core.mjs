// @ts-check
import { readdirSync } from 'node:fs';
import path from 'node:path';

/**
 * The way from the text of a plan to its scene is a bundle of its own, `dist/core.js`, which those that run in node, in
 * a worker and in a page share: so the package holds it once, and not four times. It is loaded before them and puts its
 * modules into `globalThis.mahlstickCore`, by their files.
 */
const GLOBAL = 'mahlstickCore';

const folders = ['grammar', 'server/plan', 'server/measure', 'server/findings', 'server/drawing'];
/**
 * What writes marks as SVG or PDF needs libraries that not everybody does; sentences are marked without all the rest.
 */
const notShared =
  /^grammar\/marked\.ts$|^server\/drawing\/(?:pdf\/|(?:attributes|blur|headless|plate|png|render|serialise)\.ts$)/;

/**
 * @param {string} root
 * @returns {readonly string[]} the sources of the core, relative to `root`, with `/` between folders
 */
function coreFiles(root) {
  return folders
    .flatMap((folder) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map(
        (file) => `${folder}/${file}`,
      ),
    )
    .map((file) => file.replaceAll(path.sep, '/'))
    .filter((file) => /^(?!.*(?:\.d|\.test)\.ts$).*\.ts$/.test(file) && !/(?:^|\/)test-[^/]*$/.test(file))
    .filter((file) => !notShared.test(file))
    .sort();
}

/**
 * How the core itself is bundled.
 * @param {string} root
 * @returns {import('esbuild').BuildOptions}
 */
export function coreOptions(root) {
  return {
    format: 'iife',
    globalName: GLOBAL,
    footer: { js: `globalThis.${GLOBAL} = ${GLOBAL};` },
    plugins: [
      {
        name: 'the core',
        setup: ({ onResolve, onLoad }) => {
          onResolve({ filter: /^core$/ }, () => ({ path: 'core', namespace: 'core entry' }));
          onLoad({ filter: /^core$/, namespace: 'core entry' }, () => ({
            contents: [
              `import './server/entry/core.ts';`,
              ...coreFiles(root).map(
                (file, index) => `import * as m${index} from './${file}'; export { m${index} as '${file}' };`,
              ),
            ].join('\n'),
            resolveDir: root,
          }));
        },
      },
    ],
  };
}

/**
 * For bundles that run on the core: its modules are taken from there.
 * @param {string} root
 * @param {object} [how]
 * @param {boolean} [how.loads] the bundle runs in node and requires the core, `core.js` beside it, with the first
 *   module that it takes from there; without this the core has to be loaded before the bundle
 * @param {readonly string[]} [how.before] sources, relative to `root`, that run before the core is loaded: they, and
 *   nothing else, have what they import of it in the bundle
 * @returns {import('esbuild').Plugin}
 */
export function fromCore(root, { loads = false, before = [] } = {}) {
  return {
    name: 'from the core',
    setup: ({ onResolve, onLoad }) => {
      const files = new Set(coreFiles(root));
      /** @param {string} file */
      const named = (file) => path.relative(root, file).replaceAll(path.sep, '/');
      const own = new Set(before);
      onResolve({ filter: /^\.\.?\// }, ({ path: asked, namespace, resolveDir, importer }) => {
        if (namespace !== 'file') return undefined;
        const from = named(importer);
        // A module of the core that is in the bundle was asked for from `before`, and so is all that it imports.
        if (own.has(from) || files.has(from)) return undefined;
        const file = named(path.resolve(resolveDir, asked)).replace(/\.js$/, '.ts');
        return files.has(file) ? { path: file, namespace: 'core' } : undefined;
      });
      onResolve({ filter: /^\.\/core\.js$/, namespace: 'core' }, () => ({
        path: './core.js',
        external: true,
      }));
      onLoad({ filter: /.*/, namespace: 'core' }, ({ path: file }) => ({
        contents: `${loads ? "require('./core.js'); " : ''}module.exports = ${GLOBAL}[${JSON.stringify(file)}];`,
        loader: 'js',
      }));
    },
  };
}

/**
 * For sources that are bundles of their own: a bundle in node requires these, which lie beside it.
 * @param {string} root
 * @param {Readonly<Record<string, string>>} bundles names of files, by their entries, relative to `root`
 * @returns {import('esbuild').Plugin}
 */
export function besides(root, bundles) {
  return {
    name: 'bundles beside',
    setup: ({ onResolve }) =>
      onResolve({ filter: /^\.\.?\// }, ({ path: asked, resolveDir }) => {
        const entry = path
          .relative(root, path.resolve(resolveDir, asked))
          .replaceAll(path.sep, '/')
          .replace(/\.js$/, '.ts');
        const name = bundles[entry];
        return name === undefined ? undefined : { path: `./${name}`, external: true };
      }),
  };
}
