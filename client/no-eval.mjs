// @ts-check
import { readFileSync } from 'node:fs';

/**
 * Where libraries make code of text, and what stands there instead. Two ask in this way for the global object where a
 * system older than ours has no name for it; the third works out `:nth-child` of selectors, which we ask for nowhere.
 * @type {readonly { readonly file: RegExp; readonly makesCode: string; readonly instead: string }[]}
 */
const replacements = [
  {
    file: /[/\\]lodash-es[/\\]_root\.js$/,
    makesCode: `Function('return this')()`,
    instead: 'globalThis',
  },
  {
    file: /[/\\]@svgdotjs[/\\]svg\.js[/\\]dist[/\\]svg\.(?:esm\.js|node\.cjs)$/,
    makesCode: `Function("return this")()`,
    instead: 'globalThis',
  },
  {
    file: /[/\\]svgdom[/\\]src[/\\]other[/\\]CssQuery\.js$/,
    makesCode: 'i = eval(nth)',
    instead: `throw new Error('No selector of ours counts siblings.')`,
  },
];

/**
 * Keeps what makes code of text out of a bundle, so that none asks a page or a worker for that right.
 * @type {import('esbuild').Plugin}
 */
export const noEval = {
  name: 'no eval',
  setup: ({ onLoad }) => {
    for (const { file, makesCode, instead } of replacements)
      onLoad({ filter: file }, ({ path }) => {
        const source = readFileSync(path, 'utf8');
        return source.includes(makesCode)
          ? { contents: source.replaceAll(makesCode, () => instead), loader: 'js' }
          : {
              errors: [
                { text: `${path} has no ${makesCode} any more: client/no-eval.mjs is to be looked at.` },
              ],
            };
      });
  },
};
