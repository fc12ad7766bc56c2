import path from 'node:path';
import { pathToFileURL } from 'node:url';
import * as esbuild from 'esbuild';

export const root = path.resolve(import.meta.dirname, '../..');

interface Bundle {
  readonly name: string;
  readonly shipped: boolean;
}

/** What a release is made of, built in memory. */
export interface Built {
  /** The scripts by their names, such as `server.node`, and what they hold. */
  readonly scripts: ReadonlyMap<string, string>;
  /** The names of those that are in the extension; the others are on the command line only. */
  readonly inExtension: ReadonlySet<string>;
  /** Every file that was bundled, from the top of the repository. */
  readonly inputs: readonly string[];
}

let built: Promise<Built> | undefined;

/** All bundles that strangers are given, as a release builds them; once for all that ask. */
export function builtForRelease(): Promise<Built> {
  built ??= build();
  return built;
}

async function build(): Promise<Built> {
  const script = pathToFileURL(path.join(root, 'client/build.mjs')).href;
  const { bundles, optionsOf } = (await import(script)) as {
    readonly bundles: readonly Bundle[];
    readonly optionsOf: (bundle: Bundle, production: boolean) => esbuild.BuildOptions;
  };
  const given = bundles.filter(({ name }) => !name.startsWith('tests/'));
  const results = await Promise.all(
    given.map(async (bundle) => {
      const { outputFiles = [], metafile } = await esbuild.build({
        ...optionsOf(bundle, true),
        absWorkingDir: root,
        logLevel: 'error',
        write: false,
      });
      const text = outputFiles.find((file) => file.path.endsWith('.js'))?.text;
      if (text === undefined) throw new Error(`${bundle.name} came to nothing.`);
      return { ...bundle, text, inputs: Object.keys(metafile?.inputs ?? {}) };
    }),
  );
  return {
    scripts: new Map(results.map(({ name, text }) => [name, text])),
    inExtension: new Set(results.filter(({ shipped }) => shipped).map(({ name }) => name)),
    inputs: [...new Set(results.flatMap(({ inputs }) => inputs))],
  };
}
