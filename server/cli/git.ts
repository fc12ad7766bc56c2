import { execFile, spawnSync } from 'node:child_process';
import { largestBytes } from './files-beside.js';
import { CommandFailure } from './terminal.js';

/** What git answered, or that it refused; the reason is git's own first line. */
export type GitAnswer =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly reason: string; readonly isTooLarge: boolean };

/** So long a plan's history is looked into before it is given up. */
const MOST_MILLISECONDS = 30_000;

/** Goes before the words of each call, so that nothing is run which a repository sets up. */
const QUIET = ['-c', 'core.fsmonitor=false', '-c', 'core.quotepath=false', '--no-optional-locks'] as const;
const bounds = {
  encoding: 'buffer',
  maxBuffer: largestBytes,
  timeout: MOST_MILLISECONDS,
  windowsHide: true,
} as const;

/**
 * Runs git, without a shell and with bounded output. What a repository sets up to be run by git (filters of differences, watchers)
 * is left out, as a repository may come from a stranger.
 * @throws CommandFailure when there is no git
 */
export async function git(words: readonly string[], folder: string): Promise<GitAnswer> {
  return new Promise((resolve, reject) => {
    execFile('git', [...QUIET, ...words], { ...bounds, cwd: folder }, (error, stdout, stderr) => {
      if (error === null) {
        resolve({ ok: true, bytes: stdout });
        return;
      }
      if (error.code === 'ENOENT') {
        reject(new CommandFailure('git is needed to read earlier versions, and there is none to be found.'));
        return;
      }
      const [line = ''] = stderr.toString('utf8').split('\n');
      resolve({
        ok: false,
        reason: line.replace(/^(?:fatal|error): /u, '').trim(),
        isTooLarge: error.code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER',
      });
    });
  });
}

/** A file at a revision, by its path from the top of the repository, read at once; for where git has answered before. */
export function blobAtOnce(
  revision: string,
  path: string,
  folder: string,
): { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly isTooLarge: boolean } {
  const words = [...QUIET, 'cat-file', 'blob', `${revision}:${path}`];
  const { status, stdout, error } = spawnSync('git', words, { ...bounds, cwd: folder });
  if (error === undefined && status === 0) return { ok: true, bytes: stdout };
  return { ok: false, isTooLarge: error !== undefined && 'code' in error && error.code === 'ENOBUFS' };
}

/** The fields of an answer that are ended by NUL, as `-z` gives them. */
function fields(bytes: Uint8Array): readonly string[] {
  return Buffer.from(bytes).toString('utf8').split('\0').slice(0, -1);
}

/** Where a repository lies, and the current folder in it: `''` or `studio/plans/`. */
export interface Repository {
  readonly top: string;
  readonly prefix: string;
}

/** @throws CommandFailure when the folder is in no repository */
export async function repositoryAt(folder: string): Promise<Repository> {
  const answer = await git(['rev-parse', '--show-toplevel', '--show-prefix'], folder);
  if (answer.ok) {
    const [top = '', prefix = ''] = Buffer.from(answer.bytes).toString('utf8').split('\n');
    return { top, prefix };
  }
  const isElsewhere = /not a git repository/iu.test(answer.reason);
  throw new CommandFailure(
    isElsewhere
      ? `${folder} is in no git repository, so there are no earlier versions.`
      : `git does not read the repository of ${folder}: ${answer.reason}.`,
  );
}

/** Whether a revision names a commit or a folder of one; the index, an empty name, always does. */
export async function isRevision(revision: string, folder: string): Promise<boolean> {
  if (isIndex(revision)) return true;
  return (await git(['rev-parse', '--verify', '--quiet', `${revision}^{tree}`], folder)).ok;
}

/** `''` is the index, `:1`, `:2` and `:3` are the sides of a merge in it. */
export function isIndex(revision: string): boolean {
  return /^(?::[0-3])?$/u.test(revision);
}

/** The path, from the top of the repository, that a file of the working tree had at a revision, when it was renamed since. */
export async function nameThen(revision: string, path: string, folder: string): Promise<string | undefined> {
  if (isIndex(revision)) return undefined;
  const answer = await git(
    [
      'diff',
      '--no-ext-diff',
      '--no-textconv',
      '--find-renames',
      '--diff-filter=R',
      '--name-status',
      '-z',
      revision,
      '--',
    ],
    folder,
  );
  if (!answer.ok) return undefined;
  const told = fields(answer.bytes);
  for (let at = 0; at + 2 < told.length; at += 3) if (told[at + 2] === path) return told[at + 1];
  return undefined;
}

/** The plans at a revision, by their paths from the top of the repository. */
export async function plansAt(revision: string, folder: string): Promise<readonly string[]> {
  const words = isIndex(revision)
    ? ['ls-files', '-z', '--full-name', '--', ':/*.mahl']
    : ['ls-tree', '-r', '-z', '--name-only', '--full-tree', revision];
  const answer = await git(words, folder);
  return answer.ok ? fields(answer.bytes).filter((path) => path.endsWith('.mahl')) : [];
}

/** The plans that are about to be committed, by their paths from the top of the repository; those that go are left out. */
export async function stagedPlans(folder: string): Promise<readonly string[]> {
  const answer = await git(
    ['diff', '--no-ext-diff', '--cached', '--name-only', '--diff-filter=d', '-z', '--', ':/*.mahl'],
    folder,
  );
  if (!answer.ok) throw new CommandFailure(`git does not say what is staged: ${answer.reason}.`);
  return fields(answer.bytes);
}
