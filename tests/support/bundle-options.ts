import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type * as esbuild from 'esbuild';

/** How a release bundles an entry. */
export async function bundleOptions(entry: string): Promise<esbuild.BuildOptions> {
  const script = pathToFileURL(path.resolve(import.meta.dirname, '../../client/build.mjs')).href;
  const { bundles } = (await import(script)) as {
    bundles: readonly { readonly entry: string; readonly options: esbuild.BuildOptions }[];
  };
  const bundle = bundles.find((each) => each.entry === entry);
  if (bundle === undefined) throw new Error(`client/build.mjs bundles no ${entry}`);
  return bundle.options;
}
