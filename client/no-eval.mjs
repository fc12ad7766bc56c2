// @ts-check
import { readFileSync } from 'node:fs';

const noMarkup = `throw new Error('No drawing is made of markup.');`;

/**
 * Where libraries make code or markup of text, and what stands there instead. None of it is ever reached: two ask in
 * this way for the global object where a system older than ours has no name for it, one keeps a compiler from being
 * clever, one works out `:nth-child` of selectors, and one takes drawings as markup, which we give none.
 * @type {readonly { readonly file: RegExp; readonly instead: Readonly<Record<string, string>> }[]}
 */
const replacements = [
  {
    file: /[/\\]lodash-es[/\\]_root\.js$/,
    instead: { "Function('return this')()": 'globalThis' },
  },
  {
    file: /[/\\]@chevrotain[/\\]utils[/\\]lib[/\\]src[/\\]to-fast-properties\.js$/,
    instead: { '(0, eval)(toBecomeFast);': '' },
  },
  {
    file: /[/\\]@svgdotjs[/\\]svg\.js[/\\]dist[/\\]svg\.(?:esm\.js|node\.cjs)$/,
    instead: {
      'Function("return this")()': 'globalThis',
      'wrapper.innerHTML = element.trim();': noMarkup,
      'well.innerHTML = xmlOrFn;': noMarkup,
    },
  },
  {
    file: /[/\\]svgdom[/\\]src[/\\]other[/\\]CssQuery\.js$/,
    instead: { 'i = eval(nth)': `throw new Error('No selector of ours counts siblings.')` },
  },
];

/**
 * Keeps what makes code or markup of text out of a bundle, so that none asks a page or a worker for that right.
 * @type {import('esbuild').Plugin}
 */
export const noEval = {
  name: 'no eval',
  setup: ({ onLoad }) => {
    for (const { file, instead } of replacements)
      onLoad({ filter: file }, ({ path }) => {
        let contents = readFileSync(path, 'utf8');
        for (const [words, others] of Object.entries(instead)) {
          if (!contents.includes(words))
            return { errors: [{ text: `${path} has no ${words} any more: see client/no-eval.mjs.` }] };
          contents = contents.replaceAll(words, () => others);
        }
        return { contents, loader: 'js' };
      });
  },
};
