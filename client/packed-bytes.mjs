// @ts-check
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';

/**
 * A module whose default export is bytes, a `Uint8Array`. A bundle holds them packed, as what is written out in letters
 * can hardly be packed any more; they are unpacked when they are first read.
 * @param {Buffer} bytes
 * @returns {import('esbuild').OnLoadResult}
 */
export function packedBytes(bytes) {
  const packed = deflateRawSync(bytes, { level: 9 }).toString('base64');
  return {
    contents: `
const { unpacked } = require('./unpacked-bytes.mjs');
let bytes;
Object.defineProperty(exports, '__esModule', { value: true });
Object.defineProperty(exports, 'default', { get: () => (bytes ??= unpacked('${packed}', ${bytes.length})), enumerable: true });`,
    loader: 'js',
    resolveDir: path.dirname(fileURLToPath(import.meta.url)),
  };
}
