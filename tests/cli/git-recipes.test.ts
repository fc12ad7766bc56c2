import { spawnSync } from 'node:child_process';
import { chmodSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from './examples-folder.js';
import { buildMahlstick, type Mahlstick } from './mahlstick.js';
import { newRepository } from './repository.js';

// The recipes of server/cli/README.md, followed word for word in a real repository.

const page = readFileSync(path.join(root, 'server/cli/README.md'), 'utf8');
const [recipe = '', hook = '', listed = '', inLines = '', review = ''] = [
  ...page.matchAll(/^```sh\n([^]*?)^```$/gmu),
].map(([, text = '']) => text);
const PROGRAMS = '.programs';
const { top, environment, git, write, commit, remove } = newRepository(PROGRAMS);
const NAME = "γλάρος's bowl.mahl";
let mahlstick: Mahlstick;

function run(program: string, words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(program, words, {
    cwd: top,
    env: environment,
    encoding: 'utf8',
  });
  return { code: status, output: stdout, errors: stderr };
}

const plan = (x: number, value = 2) => `plan "Bowl"
canvas 60 x 40 cm
object bowl, dominant
  shape circle 12 at (${x}, 20)
  value ${value}
allow bare ground because "it is a trial"
`;

beforeAll(async () => {
  mahlstick = await buildMahlstick();
  const program = `${PROGRAMS}/mahlstick`;
  write(program, `#!/bin/sh\nexec '${process.execPath}' '${mahlstick.file}' "$@"\n`);
  chmodSync(path.join(top, program), 0o755);
  write('.gitignore', `${PROGRAMS}\n`);
  write(NAME, plan(20));
  commit('first');
});
afterAll(() => {
  mahlstick.remove();
  remove();
});

describe('the recipes for git', () => {
  it('let git diff tell in a painter’s terms what changed, came, went and was renamed', () => {
    expect(recipe).toContain('.gitattributes');
    expect(run('sh', ['-c', recipe])).toMatchObject({ code: 0 });
    write(NAME, plan(26));
    expect(git('diff')).toBe(
      `${NAME} before -> ${NAME}\n\nObjects\n  \`bowl\` is moved 6 cm to the right.\n\n`,
    );
    git('mv', NAME, 'renamed.mahl');
    write('new.mahl', 'canvas 50 x 70 cm\n');
    git('add', '--all');
    const staged = git('diff', '--cached', '-M');
    expect(staged).toContain('new.mahl is new: “Untitled plan”, 50 × 70 cm, no objects.\n');
    expect(staged).toContain(`${NAME} -> renamed.mahl`);
    expect(staged).toContain('`bowl` is moved 6 cm to the right.');
    git('commit', '--quiet', '-m', 'second');
    rmSync(path.join(top, 'new.mahl'));
    git('commit', '--quiet', '--all', '-m', 'third');
    expect(git('show', '--ext-diff', '--format=')).toContain('new.mahl is gone: “Untitled plan”');
    expect(git('diff', '--no-ext-diff', '-M', 'HEAD~2')).toContain('+  shape circle 12 at (26, 20)');
  });

  it('tell of a merge that is not settled', () => {
    git('switch', '--quiet', '-c', 'other');
    write('renamed.mahl', plan(40));
    git('commit', '--quiet', '--all', '-m', 'other');
    git('switch', '--quiet', 'main');
    write('renamed.mahl', plan(10));
    git('commit', '--quiet', '--all', '-m', 'main');
    expect(run('git', ['merge', '--quiet', 'other']).code).not.toBe(0);
    const { code, output } = run('git', ['diff', '--ours']);
    expect(code).toBe(0);
    expect(output).toContain('renamed.mahl is not merged yet: compare its sides with');
    expect(output).toContain('renamed.mahl is in the middle of a merge: lines 4 to 8 hold both sides.');
    git('reset', '--quiet', '--hard');
  });

  it('refuse a commit of a plan that breaks what it states, as it is staged', () => {
    expect(run('sh', ['-c', hook])).toMatchObject({ code: 0 });
    write('renamed.mahl', plan(30, 9));
    git('add', '--all');
    // What lies in the folder is mended, what is staged is not.
    write('renamed.mahl', plan(30, 3));
    const refused = run('git', ['commit', '-m', 'faulty']);
    expect(refused.code).toBe(1);
    expect(refused.output + refused.errors).toContain('renamed.mahl:5:');
    git('add', '--all');
    expect(run('git', ['commit', '-m', 'mended']).code).toBe(0);
  });

  it('check all plans of a clone', () => {
    write('renamed.mahl', plan(30, 9));
    expect(run('sh', ['-c', listed]).code).not.toBe(0);
    write('renamed.mahl', plan(30));
    expect(run('sh', ['-c', listed])).toMatchObject({ code: 0, errors: '' });
  });

  it('are what the recipes for servers run', () => {
    const programs = [...page.matchAll(/^```yaml\n([^]*?)^```$/gmu)].map(([, text = '']) => text);
    const checks = programs.map((text) => /git ls-files .*$/mu.exec(text)?.[0]);
    const fromClone = listed.trim().replace('mahlstick check', 'node .mahlstick/dist/mahlstick.js check');
    expect(checks).toEqual([fromClone, fromClone]);
  });

  it.skipIf(run('jq', ['--version']).code !== 0)(
    'tell findings in lines (skipped where jq is not installed)',
    () => {
      write('renamed.mahl', plan(30, 9));
      expect(run('sh', ['-c', inLines]).output).toContain('renamed.mahl:5:9: error: ');
      write('renamed.mahl', plan(30));
      // Bare ground is set aside.
      expect(run('sh', ['-c', inLines]).output).toBe(
        'renamed.mahl:1:6: hint: The plan names no centre of interest.\n',
      );
    },
  );

  it('tell a reviewer what a branch changes, and draw it', () => {
    git('mv', 'renamed.mahl', NAME);
    git('commit', '--quiet', '--all', '-m', 'named as before');
    git('update-ref', 'refs/remotes/origin/main', 'HEAD');
    git('switch', '--quiet', '-c', 'review');
    write(NAME, plan(44));
    git('commit', '--quiet', '--all', '-m', 'review');
    expect(run('sh', ['-c', review])).toMatchObject({ code: 0, errors: '' });
    expect(readFileSync(path.join(top, 'plans.txt'), 'utf8')).toContain(
      '`bowl` is moved 14 cm to the right.',
    );
    expect(readFileSync(path.join(top, `${NAME}.png`)).toString('latin1', 1, 4)).toBe('PNG');
  });
});
