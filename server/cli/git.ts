import { execFile, spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileSizeLimitBytes } from '../language/file-size.js';
import { CommandFailure } from './terminal.js';

/** What git answered, or that it refused; the reason is git's own first line, or why it was ended. */
export type GitAnswer =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly reason: string; readonly isTooLarge: boolean };

/** So long a plan's history is looked into before it is given up. */
const MOST_MILLISECONDS = 30_000;

/** Goes before the words of each call, so that nothing is run which a repository sets up. */
const quiet = (folder: string): readonly string[] => [
  '-C',
  folder,
  '--no-pager',
  '--no-optional-locks',
  ...['-c', 'core.fsmonitor=false'],
  ...['-c', 'core.hooksPath=/dev/null'],
  ...['-c', 'core.quotepath=false'],
];

/**
 * Where git is run: not in the folder that it is about, as Windows looks for a program where it is run before it looks
 * anywhere else. What a repository lacks is not fetched, as that runs what the repository names; the second goes for
 * every version of git.
 */
const bounds = () =>
  ({
    encoding: 'buffer',
    maxBuffer: fileSizeLimitBytes,
    timeout: MOST_MILLISECONDS,
    windowsHide: true,
    cwd: path.dirname(process.execPath),
    // What it says is read for what is wrong, so it is to say it in English.
    env: { ...process.env, GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: 'none', LC_ALL: 'C' },
  }) as const;

/**
 * Runs git, without a shell and with bounded output. What a repository sets up to be run by git (watchers, hooks,
 * filters, what shows differences, what fetches) is left out, as a repository may come from a stranger. So nothing is
 * asked that has to read files of the working tree, which would go through filters.
 * @throws CommandFailure when there is no git
 */
export async function git(words: readonly string[], folder: string): Promise<GitAnswer> {
  return new Promise((resolve, reject) => {
    execFile('git', [...quiet(folder), ...words], bounds(), (error, stdout, stderr) => {
      if (error === null) {
        resolve({ ok: true, bytes: stdout });
        return;
      }
      if (error.code === 'ENOENT') {
        reject(new CommandFailure('git is needed to read earlier versions, and there is none to be found.'));
        return;
      }
      const [line = ''] = stderr.toString('utf8').split('\n');
      const told = line.replace(/^(?:fatal|error): /u, '').trim();
      const isTooLarge = error.code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER';
      const ended = isTooLarge ? 'its answer is too long' : 'it did not answer in time';
      resolve({ ok: false, reason: error.killed === true ? ended : told, isTooLarge });
    });
  });
}

/**
 * A file at a revision, by its path from the top of the repository, read at once; for where git has answered before.
 */
export function blobAtOnce(
  revision: string,
  file: string,
  folder: string,
): { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly isTooLarge: boolean } {
  const words = [...quiet(folder), 'cat-file', 'blob', `${revision}:${file}`];
  const { status, stdout, error } = spawnSync('git', words, bounds());
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

/**
 * The path, from the top of the repository, that a file had at a revision, when it was renamed since. The index is
 * asked, and of the working tree only whether the file of the old name is gone.
 */
export async function nameThen(revision: string, now: string, folder: string): Promise<string | undefined> {
  if (isIndex(revision)) return undefined;
  const answer = await git(
    [
      ...['diff', '--cached', '--no-ext-diff', '--no-textconv', '--ignore-submodules=all'],
      ...['--find-copies-harder', '--diff-filter=CR', '--name-status', '-z', revision, '--'],
    ],
    folder,
  );
  if (!answer.ok) return undefined;
  const told = fields(answer.bytes);
  const at = told.findIndex((each, index) => index % 3 === 2 && each === now);
  const [kind, then] = [told[at - 2], told[at - 1]];
  if (kind === undefined || then === undefined) return undefined;
  return kind.startsWith('R') || (await isGone(then, folder)) ? then : undefined;
}

/** Whether a file that is in the index is no longer in the working tree. */
async function isGone(file: string, folder: string): Promise<boolean> {
  const answer = await git(['ls-files', '--deleted', '-z', '--', `:(top,literal)${file}`], folder);
  return answer.ok && answer.bytes.length > 0;
}

/** The plans at a revision, by their paths from the top of the repository. */
export async function plansAt(revision: string, folder: string): Promise<readonly string[]> {
  const words = isIndex(revision)
    ? ['ls-files', '-z', '--full-name', '--', ':/*.mahl']
    : ['ls-tree', '-r', '-z', '--name-only', '--full-tree', revision];
  const answer = await git(words, folder);
  return answer.ok ? fields(answer.bytes).filter((path) => path.endsWith('.mahl')) : [];
}

/**
 * The plans that are about to be committed, by their paths from the top of the repository; those that go are left out.
 */
export async function stagedPlans(folder: string): Promise<readonly string[]> {
  const answer = await git(
    [
      ...['diff', '--cached', '--no-ext-diff', '--no-textconv', '--ignore-submodules=all'],
      ...['--name-only', '--diff-filter=d', '-z', '--', ':/*.mahl'],
    ],
    folder,
  );
  if (!answer.ok) throw new CommandFailure(`git does not say what is staged: ${answer.reason}.`);
  return fields(answer.bytes);
}
