import type { Plugin } from 'esbuild';

/** The font within a WOFF file as TrueType or OpenType; throws for what is none, or broken. */
export function unpackedFont(woff: Buffer): Buffer;
export const fontsAsBytes: Plugin;
