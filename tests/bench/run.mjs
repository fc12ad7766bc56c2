// @ts-check
// `npm run bench`: measures this server side by side with others. `-- --only parse,start --rounds 5`, `-- --quick`,
// `-- --alone` without the others, `-- --to FOLDER` for the report.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import { bundles, optionsOf } from '../../client/build.mjs';
import { onEnd, run } from '../hosts/processes.mjs';

const folder = path.dirname(fileURLToPath(import.meta.url));
const root = path.resolve(folder, '../..');

/** Other servers are no part of what `npm ci` installs: they come with the first benchmark. */
function installPeers() {
  if (existsSync(path.join(folder, 'node_modules'))) return;
  const { status } = spawnSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {
    cwd: folder,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error('The other servers could not be installed.');
}

/** What is shipped, as for a release. @param {string} outdir */
async function buildShipped(outdir) {
  const shipped = bundles.filter((bundle) => bundle.shipped);
  for (const bundle of shipped)
    await esbuild.build({ ...optionsOf(bundle, true), absWorkingDir: root, outdir, logLevel: 'error' });
  return shipped.map(({ name }) => name);
}

/** The benchmark, with what it measures within its own process. @param {string} outfile */
async function buildBenchmark(outfile) {
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['tests/bench/main.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: {
      js: `import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);`,
    },
  });
}

const made = mkdtempSync(path.join(os.tmpdir(), 'mahlstick-bench-'));
const remove = onEnd(() => rmSync(made, { recursive: true, force: true }));
try {
  if (!process.argv.includes('--alone')) installPeers();
  const dist = path.join(made, 'dist');
  const benchmark = path.join(made, 'bench.mjs');
  const names = await buildShipped(dist);
  await buildBenchmark(benchmark);
  process.exitCode = await run(process.execPath, ['--expose-gc', benchmark, ...process.argv.slice(2)], {
    env: {
      ...process.env,
      BENCH_FOLDER: folder,
      BENCH_DIST: dist,
      BENCH_BUNDLES: names.join(','),
      BENCH_SERVER: path.join(dist, 'server.node.js'),
    },
  });
} finally {
  await remove();
}
