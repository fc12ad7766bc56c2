import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import path from 'node:path';
import * as esbuild from 'esbuild';
import { bundles } from '../support/bundle-options.js';
import { root } from './examples-folder.js';

export interface Ending {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Mahlstick {
  /** Runs the command in a folder; `input` is its whole standard input. Killed after 30 seconds. */
  run(words: readonly string[], options?: RunOptions): Promise<Ending>;
  /** The bundle, for tests that start it themselves. */
  readonly file: string;
  remove(): void;
}

export interface RunOptions {
  readonly folder?: string;
  readonly input?: string | Uint8Array;
  /** The standard input does not end behind `input`, as that of an editor. */
  readonly keepOpen?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  /** Runs it as another user, which only the superuser can ask for. */
  readonly uid?: number;
}

/** Bundles the command line as it is now; what is in `dist` may be older. Within the repository, for its libraries. */
export async function buildMahlstick(): Promise<Mahlstick> {
  mkdirSync(path.join(root, 'artefacts'), { recursive: true });
  const folder = mkdtempSync(path.join(root, 'artefacts', 'mahlstick-'));
  chmodSync(folder, 0o755);
  const needed = (await bundles()).filter(({ onCommandLine }) => onCommandLine);
  await Promise.all(
    needed.map(({ name, entry, options }) =>
      esbuild.build({
        ...options,
        absWorkingDir: root,
        entryPoints: [entry],
        outfile: path.join(folder, `${name}.js`),
        bundle: true,
        external: ['@resvg/resvg-js'],
        logLevel: 'error',
      }),
    ),
  );
  const file = path.join(folder, 'mahlstick.js');
  return {
    file,
    run: (words, options = {}) => start(file, words, options),
    remove: () => rmSync(folder, { recursive: true }),
  };
}

function start(
  file: string,
  words: readonly string[],
  { folder, input, keepOpen, env, uid }: RunOptions,
): Promise<Ending> {
  const child = spawn(process.execPath, [file, ...words], {
    cwd: folder ?? root,
    env: { ...process.env, ...env },
    ...(uid === undefined ? {} : { uid }),
    timeout: 30_000,
  });
  const stdout: Buffer[] = [];
  const stderr: Buffer[] = [];
  child.stdout.on('data', (part: Buffer) => stdout.push(part));
  child.stderr.on('data', (part: Buffer) => stderr.push(part));
  child.stdin.on('error', () => undefined);
  child.stdin.write(input ?? '');
  if (!keepOpen) child.stdin.end();
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) =>
      resolve({
        code,
        stdout: Buffer.concat(stdout).toString(),
        stderr: Buffer.concat(stderr).toString(),
      }),
    );
  });
}
