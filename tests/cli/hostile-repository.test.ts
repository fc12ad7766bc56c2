import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { session } from '../support/command-line.js';
import { newRepository } from './repository.js';

const { top, git, write, commit, remove } = newRepository();
const sprung = path.join(top, '.git/sprung');

const plan = (x: number) => `plan "Bowl"
canvas 60 x 40 cm
object bowl, dominant
  shape circle 12 at (${x}, 20)
  value 2
`;

/** A program of the repository that leaves a trace, and hands on what it is given. */
function trap(name: string): string {
  const file = path.join(top, '.git/traps', name);
  write(
    `.git/traps/${name}`,
    `#!/bin/sh\ntouch "${path.join(sprung, name)}"\n[ "$1" = fails ] && exit 1\ncat\n`,
  );
  chmodSync(file, 0o755);
  return file;
}

/** All that a repository can name for git to run, as far as git of today knows it. */
const programs: Readonly<Record<string, string>> = {
  'core.fsmonitor': 'watcher',
  'core.pager': 'pager',
  'pager.diff': 'pager-of-diff',
  'core.sshCommand': 'ssh',
  'core.askPass': 'ask',
  'core.editor': 'editor',
  'core.gitProxy': 'proxy',
  'credential.helper': 'credentials',
  'gpg.program': 'signatures',
  'diff.external': 'differences',
  'diff.plan.command': 'differences-of-plans',
  'diff.plan.textconv': 'words',
  'filter.plan.clean': 'clean',
  'filter.plan.smudge': 'smudge',
  'merge.plan.driver': 'merge',
  'remote.origin.uploadpack': 'fetch',
  'uploadpack.packObjectsHook': 'pack',
  'interactive.diffFilter': 'filter',
};
const hooks = [
  'post-index-change',
  'fsmonitor-watchman',
  'post-checkout',
  'pre-commit',
  'reference-transaction',
];

beforeAll(() => {
  write('bowl.mahl', plan(20));
  write('old.mahl', plan(25));
  write('lost.mahl', plan(30));
  write('.gitattributes', '*.mahl diff=plan filter=plan merge=plan\n');
  commit('first');
  const lost = git('rev-parse', 'HEAD:lost.mahl').trim();
  write('bowl.mahl', plan(26));
  write('lost.mahl', plan(31));
  commit('second');
  git('mv', 'old.mahl', 'new.mahl');
  write('bowl.mahl', plan(32));
  write('staged.mahl', plan(33));
  git('add', 'staged.mahl');

  // What is missing is fetched from where the repository says.
  rmSync(path.join(top, '.git/objects', lost.slice(0, 2), lost.slice(2)));
  git('config', 'core.repositoryformatversion', '1');
  git('config', 'extensions.partialClone', 'origin');
  git('config', 'remote.origin.promisor', 'true');
  git('config', 'remote.origin.url', path.join(top, '.git'));
  git('config', 'protocol.allow', 'always');
  git('config', 'protocol.file.allow', 'always');
  for (const command of ['diff', 'cat-file', 'ls-files', 'rev-parse', 'ls-tree'])
    git('config', `alias.${command}`, `!${trap('alias')}`);
  for (const hook of hooks) {
    write(`.git/hooks/${hook}`, `#!/bin/sh\ntouch "${path.join(sprung, `hook-${hook}`)}"\n`);
    chmodSync(path.join(top, '.git/hooks', hook), 0o755);
  }
  for (const [name, program] of Object.entries(programs))
    git('config', name, `${trap(program)}${program === 'fetch' ? ' fails' : ''}`);
});
afterAll(remove);

/** The traces that were left by what is done. */
async function traces(does: () => unknown): Promise<readonly string[]> {
  rmSync(sprung, { recursive: true, force: true });
  mkdirSync(sprung);
  await does();
  return readdirSync(sprung).sort();
}

const mahlstick = (...words: readonly string[]) => session(words, '', top);

describe('a repository that sets up programs for git to run', () => {
  it.each([
    ['with what was last committed', ['compare', 'bowl.mahl']],
    ['with a revision', ['compare', 'HEAD~1:bowl.mahl', 'bowl.mahl']],
    ['with the index', ['compare', ':bowl.mahl', 'bowl.mahl']],
    ['under another name', ['compare', 'new.mahl']],
    ['with a name that is not there', ['compare', 'HEAD:bowls.mahl', 'bowl.mahl']],
    ['with what would have to be fetched', ['compare', 'HEAD~1:lost.mahl', 'lost.mahl']],
  ])('runs none of them when a plan is compared %s', async (_, words) => {
    expect(await traces(() => mahlstick(...words))).toEqual([]);
  });

  it('runs none of them when plans are checked that are staged', async () => {
    let told = '';
    expect(await traces(async () => (told = (await mahlstick('check', '--staged')).output))).toEqual([]);
    expect(told).toContain('staged.mahl');
  });

  it('is answered all the same', async () => {
    expect((await mahlstick('compare', 'HEAD~1:bowl.mahl', 'bowl.mahl')).output).toContain(
      '`bowl` is moved 12 cm to the right.',
    );
    expect((await mahlstick('compare', 'new.mahl')).output).toContain('HEAD:old.mahl -> new.mahl');
    const { code, complaints } = await mahlstick('compare', 'HEAD~1:lost.mahl', 'lost.mahl');
    expect([code, complaints.length]).toEqual([2, 1]);
  });

  it('would have run them for git as it is usually called', async () => {
    const attempt = (...words: readonly string[]) => {
      try {
        git(...words);
      } catch {
        // That is what a trap makes of it.
      }
    };
    expect(await traces(() => attempt('status'))).toEqual(expect.arrayContaining(['clean', 'watcher']));
    expect(await traces(() => attempt('diff'))).toContain('differences-of-plans');
    expect(await traces(() => attempt('diff', '--no-ext-diff'))).toContain('words');
    expect(await traces(() => attempt('cat-file', '--filters', 'HEAD:bowl.mahl'))).toContain('smudge');
    expect(await traces(() => attempt('cat-file', 'blob', 'HEAD~1:lost.mahl'))).toContain('fetch');
    expect(await traces(() => attempt('add', 'bowl.mahl'))).toContain('hook-post-index-change');
  });
});

describe('a folder with a program that is called git', () => {
  it('is not where git is looked for', async () => {
    const own = newRepository();
    try {
      for (const name of ['git', 'git.exe', 'git.cmd']) {
        own.write(name, `#!/bin/sh\ntouch "${path.join(own.top, 'sprung')}"\n`);
        chmodSync(path.join(own.top, name), 0o755);
      }
      own.write('bowl.mahl', plan(20));
      own.commit('first');
      own.write('bowl.mahl', plan(26));
      const { output } = await session(['compare', 'bowl.mahl'], '', own.top);
      expect(output).toContain('`bowl` is moved 6 cm to the right.');
      expect(existsSync(path.join(own.top, 'sprung'))).toBe(false);
    } finally {
      own.remove();
    }
  });
});
