// @ts-check
import { readFileSync } from 'node:fs';
import { packedBytes } from './packed-bytes.mjs';

/** Modules of WebAssembly are imported as their bytes, by `file.wasm?bytes`. @type {import('esbuild').Plugin} */
export const wasmAsBytes = {
  name: 'wasm as bytes',
  setup: ({ onResolve, onLoad, resolve }) => {
    onResolve({ filter: /\.wasm\?bytes$/ }, ({ path, importer, resolveDir, kind }) =>
      resolve(path.replace(/\?bytes$/, ''), { importer, resolveDir, kind }),
    );
    onLoad({ filter: /\.wasm$/ }, ({ path }) => packedBytes(readFileSync(path)));
  },
};
