import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import * as esbuild from 'esbuild';
import { bundleOptions } from './bundle-options.js';

const root = path.resolve(import.meta.dirname, '../..');
const nodeRequire = createRequire(import.meta.url);

/** Sources of the extension as one script for the editor, which is given with each evaluation. */
export interface EvaluatedBundle {
  /** The files that are in it, from the top of the repository. */
  readonly inputs: readonly string[];
  /**
   * Evaluates it anew.
   * @param vscode what it knows as the editor
   * @param beside gives the scripts that it requires from beside it
   * @returns what it exports
   */
  readonly evaluate: (vscode: unknown, beside?: (file: string) => unknown) => unknown;
}

/**
 * Bundles an entry.
 * @param entry from the top of the repository, without its ending
 * @param like the entry that is bundled in this way for a release
 */
export async function evaluatedBundle(entry: string, like = entry): Promise<EvaluatedBundle> {
  const { outputFiles, metafile } = await esbuild.build({
    ...(await bundleOptions(`${like}.ts`)),
    absWorkingDir: root,
    entryPoints: [`${entry}.ts`],
    bundle: true,
    write: false,
    metafile: true,
    external: ['vscode'],
    logLevel: 'error',
  });
  const script = outputFiles[0]?.text ?? '';
  return {
    inputs: Object.keys(metafile.inputs),
    evaluate: (vscode, beside) => {
      const module: { exports: unknown } = { exports: {} };
      const requireOne = (name: string): unknown => {
        if (name === 'vscode') return vscode;
        return name.startsWith('.') ? beside?.(name) : nodeRequire(name);
      };
      const run = vm.compileFunction(script, ['module', 'exports', 'require']) as (
        ...given: readonly unknown[]
      ) => void;
      run(module, module.exports, requireOne);
      return module.exports;
    },
  };
}
