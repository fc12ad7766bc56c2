import path from 'node:path';
import * as esbuild from 'esbuild';
import { bundlesOfRelease } from '../support/bundle-options.js';

export const root = path.resolve(import.meta.dirname, '../..');

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
  const given = await bundlesOfRelease();
  const results = await Promise.all(
    given.map(async ({ bundle, options }) => {
      const { outputFiles = [], metafile } = await esbuild.build({
        ...options,
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
