import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type * as esbuild from 'esbuild';

interface Bundle {
  readonly name: string;
  readonly entry: string;
  readonly options: esbuild.BuildOptions;
  readonly shipped: boolean;
  readonly onCommandLine?: true;
}

/** How a release bundles an entry. */
export async function bundleOptions(entry: string): Promise<esbuild.BuildOptions> {
  const bundle = (await bundles()).find((each) => each.entry === entry);
  if (bundle === undefined) throw new Error(`client/build.mjs bundles no ${entry}`);
  return bundle.options;
}

/** All that is bundled. */
export async function bundles(): Promise<readonly Bundle[]> {
  const script = pathToFileURL(path.resolve(import.meta.dirname, '../../client/build.mjs')).href;
  return ((await import(script)) as { readonly bundles: readonly Bundle[] }).bundles;
}
