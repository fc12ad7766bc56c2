// @ts-check
import { readdirSync } from 'node:fs';
import path from 'node:path';

/**
 * The way from the text of a plan to its scene is a bundle of its own, `dist/core.js`, which those that run in node, in a
 * worker and in a page share: so the package holds it once, and not four times. It is loaded before them and puts its
 * modules into `globalThis.mahlstickCore`, by their files.
 */
const GLOBAL = 'mahlstickCore';

const folders = ['grammar', 'server/plan', 'server/measure', 'server/findings', 'server/drawing'];
/** What writes marks as SVG or PDF needs libraries that not everybody does. */
const notShared = /^server\/drawing\/(?:pdf\/|(?:attributes|blur|headless|plate|png|render|serialise)\.ts$)/;

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
 * For bundles that run after the core: its modules are taken from there.
 * @param {string} root
 * @returns {import('esbuild').Plugin}
 */
export function fromCore(root) {
  return {
    name: 'from the core',
    setup: ({ onResolve, onLoad }) => {
      const files = new Set(coreFiles(root));
      onResolve({ filter: /^\.\.?\// }, ({ path: asked, namespace, resolveDir }) => {
        if (namespace !== 'file') return undefined;
        const file = path
          .relative(root, path.resolve(resolveDir, asked))
          .replaceAll(path.sep, '/')
          .replace(/\.js$/, '.ts');
        return files.has(file) ? { path: file, namespace: 'core' } : undefined;
      });
      onLoad({ filter: /.*/, namespace: 'core' }, ({ path: file }) => ({
        contents: `module.exports = ${GLOBAL}[${JSON.stringify(file)}];`,
        loader: 'js',
      }));
    },
  };
}
