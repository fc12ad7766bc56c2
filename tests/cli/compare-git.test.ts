import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { CompareDocument } from '../../server/cli/schema/compare.js';
import { session } from '../support/command-line.js';
import { root } from './examples-folder.js';
import { newRepository } from './repository.js';

const { top, git, write, commit, remove } = newRepository();
const dir = path.join(top, 'studio plans');
const NAME = 'κύδωνι & bowl.mahl';

function plan(x: number, value = 2): string {
  return `plan "Bowl"
canvas 60 x 40 cm
object wall
  plane background
  shape rectangle (0, 0) to (60, 40)
  value 4
object bowl, dominant
  shape circle 12 at (${x}, 20)
  value ${value}
`;
}

async function run(words: readonly string[], from = top) {
  const { code, output, complaints } = await session(words, '', from);
  return { code, output, errors: complaints.join('\n') };
}

/** What is told of objects. */
async function moved(words: readonly string[], from = top): Promise<string> {
  const { output, errors } = await run(words, from);
  return /Objects\n {2}(.*)\n/u.exec(output)?.[1] ?? (errors || output);
}

const first = `studio plans/${NAME}`;

beforeAll(() => {
  write(first, plan(20));
  commit('first');
  write(first, plan(26));
  write('parts/jar.svg', '<svg xmlns="http://www.w3.org/2000/svg"><path id="jar" d="M0 0H10V20H0Z"/></svg>');
  write(
    'jar.mahl',
    'canvas 60 x 40 cm\nobject jar\n  shape from "parts/jar.svg" part "jar"\n  at (30, 20)\n  value 2\n',
  );
  commit('second');
});
afterAll(remove);

describe('compare with versions in git', () => {
  it('reads a revision, the index, and a path from the top or from the current folder', async () => {
    const six = '`bowl` is moved 6 cm to the right.';
    expect(await moved(['compare', `HEAD~1:${first}`, first])).toBe(six);
    expect(await moved(['compare', `HEAD~1:./${NAME}`, NAME], dir)).toBe(six);
    expect(await moved(['compare', `HEAD~1:${first}`, `HEAD:${first}`], dir)).toBe(six);
    expect(await moved(['compare', `HEAD~1:${first}`, `:${first}`])).toBe(six);
  });

  it('compares one plan with what was last committed, also when it was renamed since', async () => {
    expect((await run(['compare', first])).output).toBe(
      `HEAD:${first} -> ${first}\nThe same plan, word for word.\n`,
    );
    write('moved.mahl', plan(26, 3));
    rmSync(path.join(top, first));
    git('add', '--all');
    const { output } = await run(['compare', 'moved.mahl']);
    expect(output).toContain(`HEAD:${first} -> moved.mahl`);
    expect(output).toContain('`bowl` is one step lighter: 3 instead of 2.');
    expect((await run(['compare', 'HEAD:moved.mahl', 'moved.mahl'])).errors).toContain(
      `There is no moved.mahl at HEAD; it was called ${first} then: HEAD:${first}`,
    );
    git('reset', '--quiet', '--hard');
    // The old name is gone from the folder, and git has not been told.
    write('moved.mahl', plan(26, 3));
    rmSync(path.join(top, first));
    git('add', 'moved.mahl');
    expect((await run(['compare', 'moved.mahl'])).output).toContain(`HEAD:${first} -> moved.mahl`);
    git('reset', '--quiet', '--hard');
  });

  it('says what is not there', async () => {
    const told = async (...words: readonly string[]) => {
      const { code, errors } = await run(['compare', ...words]);
      expect(code).toBe(2);
      return errors;
    };
    expect(await told('nonsense:jar.mahl', 'jar.mahl')).toBe(
      'There is no revision nonsense in this repository.',
    );
    expect(await told('HEAD~1:jar.mahl', 'jar.mahl')).toContain('There is no jar.mahl at HEAD~1.');
    expect(await told(`HEAD:studio/${NAME}`, 'jar.mahl')).toContain(`Did you mean HEAD:${first}?`);
    expect(await told('HEAD:studio plans', 'jar.mahl')).toBe('studio plans is a folder at HEAD, not a plan.');
    expect(await told('-p:jar.mahl', 'jar.mahl')).toMatch(/hyphen|unknown option/u);
    expect(await told('HEAD:../x.mahl', 'jar.mahl')).toContain('lies outside the repository');
    expect((await run(['compare', 'x.mahl'], tmpdir())).errors).toContain('in no git repository');
  });

  it('understands git where it would speak another language', async () => {
    vi.stubEnv('LC_ALL', 'C.utf8');
    vi.stubEnv('LANGUAGE', 'de');
    try {
      expect((await run(['compare', 'x.mahl'], tmpdir())).errors).toContain('in no git repository');
    } finally {
      vi.unstubAllEnvs();
    }
  });

  it('refuses a drawing of an unknown kind before it reads anything', async () => {
    const { code, errors } = await run(['compare', 'nothing.mahl', 'jar.mahl', '-o', 'jar.gif']);
    expect([code, errors]).toEqual([2, 'jar.gif ends in .gif; a drawing is written as .svg, .png or .pdf.']);
  });

  it('says of a path in a repository of its own that it is one', async () => {
    git('update-index', '--add', '--cacheinfo', `160000,${git('rev-parse', 'HEAD').trim()},other`);
    git('commit', '--quiet', '-m', 'a repository in the repository');
    expect((await run(['compare', 'HEAD:other', 'jar.mahl'])).errors).toContain(
      'other is a repository of its own at HEAD',
    );
    git('reset', '--quiet', '--hard', 'HEAD~1');
  });

  it('reads the files that a plan names from the same revision', async () => {
    write(
      'parts/jar.svg',
      '<svg xmlns="http://www.w3.org/2000/svg"><path id="jar" d="M0 0H20V20H0Z"/></svg>',
    );
    expect(await moved(['compare', 'jar.mahl'])).toContain('`jar` is 2 times as wide');
    git('checkout', '--quiet', '.');
  });

  it('compares what can be read of a plan with errors, and says so', async () => {
    write('jar.mahl', `${readFileSync(path.join(top, 'jar.mahl'), 'utf8')}  nonsense 3\n`);
    const { code, output, errors } = await run(['compare', 'jar.mahl']);
    expect([code, errors]).toEqual([1, "jar.mahl has 1 error; what can't be read is not compared."]);
    expect(output).toContain('only the text differs');
    git('checkout', '--quiet', '.');
  });

  it('ends with 1 for what differs only when that is asked for, and prints JSON as published', async () => {
    const words = ['compare', `HEAD~1:${first}`, first];
    expect((await run(words)).code).toBe(0);
    expect((await run([...words, '--exit-code'])).code).toBe(1);
    const { output } = await run([...words, '--json']);
    const document = JSON.parse(output) as CompareDocument;
    const schema = JSON.parse(
      readFileSync(path.join(root, 'server/cli/schema/compare-1.json'), 'utf8'),
    ) as object;
    const validate = new Ajv({ strict: true, allErrors: true }).compile(schema);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(document.changes[0]).toMatchObject({ kind: 'moved', object: 'bowl', move: { right: 6, down: 0 } });
  });

  it('says that a merge is not settled, and compares its sides', async () => {
    git('switch', '--quiet', '-c', 'other', 'HEAD~1');
    write(first, plan(40));
    commit('other');
    git('switch', '--quiet', 'main');
    expect(() => git('merge', 'other')).toThrow();
    const { code, errors } = await run(['compare', NAME], dir);
    expect(code).toBe(2);
    expect(errors).toContain(`${NAME} is in the middle of a merge: lines 8 to 12 hold both sides.`);
    expect(await moved(['compare', `:2:./${NAME}`, `:3:./${NAME}`], dir)).toBe(
      '`bowl` is moved 14 cm to the right.',
    );
    expect((await run(['check', '--staged'])).output).not.toContain('bowl');
    git('checkout', '--quiet', '--theirs', '--', first);
    commit('merged');
    expect(await moved(['compare', `HEAD^1:${first}`, `HEAD:${first}`])).toBe(
      '`bowl` is moved 14 cm to the right.',
    );
    expect(await moved(['compare', `HEAD^2:${first}`, `HEAD:${first}`])).toContain('The same plan');
  });
});

describe('check --staged', () => {
  it('checks what is staged, and not what lies in the folder', async () => {
    const faulty = plan(30).replace('value 2', 'value 9');
    write(first, faulty);
    git('add', '--all');
    write(first, plan(30));
    const staged = await run(['check', '--staged', '--strict']);
    expect(staged.code).toBe(1);
    expect(staged.output).toContain(`${first}:`);
    expect((await run(['check', '--staged', '--strict'], dir)).output).toContain(`${NAME}:`);
    git('add', '--all');
    expect((await run(['check', '--staged'])).code).toBe(0);
    git('reset', '--quiet', '--hard');
    expect(await run(['check', '--staged', '--strict'])).toMatchObject({ code: 0, errors: '' });
    expect((await run(['check', '--staged', first])).code).toBe(2);
    expect((await run(['check'])).code).toBe(2);
  });

  it('says of a staged file that it is too large, and not that it is not there', async () => {
    write('large.svg', `<svg xmlns="http://www.w3.org/2000/svg">${' '.repeat(5 * 1024 * 1024)}</svg>`);
    write('large.mahl', 'canvas 60 x 40 cm\nobject jar\n  shape from "large.svg" part "jar"\n  value 2\n');
    git('add', '--all');
    expect((await run(['check', '--staged'])).output).toContain('This file is larger than 5 MB.');
    git('reset', '--quiet', '--hard');
  });
});
