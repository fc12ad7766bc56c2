import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export interface TestRepository {
  /** Its topmost folder. */
  readonly top: string;
  /** In which git is run. */
  readonly environment: NodeJS.ProcessEnv;
  /** Runs git there; what it prints. @throws when it fails */
  readonly git: (...words: readonly string[]) => string;
  /** Writes a file, by its path from the top. */
  readonly write: (name: string, text: string) => void;
  /** Commits all that is there. */
  readonly commit: (message: string) => void;
  readonly remove: () => void;
}

/**
 * A real repository in a folder of its own, still empty; nothing of the machine's settings of git comes in.
 * @param programs a folder in it, in which programs are looked for first
 */
export function newRepository(programs?: string): TestRepository {
  const top = mkdtempSync(path.join(tmpdir(), 'mahlstick-git-'));
  const environment = {
    ...process.env,
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_AUTHOR_NAME: 'A. N. Painter',
    GIT_AUTHOR_EMAIL: 'painter@example.org',
    GIT_COMMITTER_NAME: 'A. N. Painter',
    GIT_COMMITTER_EMAIL: 'painter@example.org',
    GIT_AUTHOR_DATE: '2027-01-04T10:00:00Z',
    GIT_COMMITTER_DATE: '2027-01-04T10:00:00Z',
    GIT_PAGER: 'cat',
    ...(programs === undefined
      ? {}
      : { PATH: `${path.join(top, programs)}${path.delimiter}${process.env['PATH'] ?? ''}` }),
  };
  const git = (...words: readonly string[]): string =>
    execFileSync('git', words, { cwd: top, env: environment, encoding: 'utf8', stdio: 'pipe' });
  git('init', '--quiet', '--initial-branch=main');
  return {
    top,
    environment,
    git,
    write: (name, text) => {
      mkdirSync(path.dirname(path.join(top, name)), { recursive: true });
      writeFileSync(path.join(top, name), text);
    },
    commit: (message) => {
      git('add', '--all');
      git('commit', '--quiet', '-m', message);
    },
    remove: () => rmSync(top, { recursive: true }),
  };
}
