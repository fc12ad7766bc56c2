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
  return (await buildScript()).bundles;
}

/** All that strangers are given, minified, with how a release bundles it. */
export async function bundlesOfRelease(): Promise<
  readonly { readonly bundle: Bundle; readonly options: esbuild.BuildOptions }[]
> {
  const { bundles: all, optionsOf } = await buildScript();
  return all
    .filter(({ shipped, onCommandLine }) => shipped || onCommandLine === true)
    .map((bundle) => ({ bundle, options: optionsOf(bundle, true) }));
}

interface BuildScript {
  readonly bundles: readonly Bundle[];
  readonly optionsOf: (bundle: Bundle, production: boolean) => esbuild.BuildOptions;
}

function buildScript(): Promise<BuildScript> {
  const script = pathToFileURL(path.resolve(import.meta.dirname, '../../client/build.mjs')).href;
  return import(script) as Promise<BuildScript>;
}
