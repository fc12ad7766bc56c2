import { createRequire } from 'node:module';
import path from 'node:path';

/** Of this folder in the repository; what is measured is a bundle that lies elsewhere. */
export const benchFolder = path.resolve(process.env['BENCH_FOLDER'] ?? import.meta.dirname);

const load = createRequire(path.join(benchFolder, 'package.json'));

/** A module of the packages that the benchmark alone installs. */
export function peer<T>(module: string): T {
  return load(module) as T;
}

/** Where a file of one of those packages lies. */
export function peerFile(...parts: readonly string[]): string {
  return path.join(benchFolder, 'node_modules', ...parts);
}

export function peerVersion(name: string): string {
  return peer<{ readonly version: string }>(`${name}/package.json`).version;
}
