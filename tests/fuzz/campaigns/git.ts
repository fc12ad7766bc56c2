import assert from 'node:assert/strict';
import { existsSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import type { CheckDocument } from '../../../server/cli/schema/check.js';
import { newRepository, type TestRepository } from '../../cli/repository.js';
import { session } from '../../support/command-line.js';
import { campaign } from '../campaign.js';
import { holdEnding, holdSession } from '../sessions.js';

/** Names as somebody may give them, and as nobody should. */
const names = [
  'a.mahl',
  'b.mahl',
  'sub/c.mahl',
  'a b.mahl',
  'τραμ.mahl',
  'e\u0301.mahl',
  "it's.mahl",
  '"q".mahl',
  '-p.mahl',
  'HEAD',
  ':0.mahl',
  'x:y.mahl',
  'tab\there.mahl',
  'line\nend.mahl',
  '*.mahl',
  '[a].mahl',
  '.mahl',
  'A.MAHL',
  'back\\slash.mahl',
  '\u202efdp.mahl',
  '\u001b[31m.mahl',
  'sub/sub/d.mahl',
  '$(id).mahl',
  '%2e%2e.mahl',
  '~.mahl',
];
const contents = [
  'canvas 60 x 40 cm\nobject bowl, dominant\n  shape circle 12 at (20, 20)\n  value 2\n',
  'canvas 60 x 40 cm\nobject bowl, dominant\n  shape circle 12 at (26, 20)\n  value 3\n',
  'canvas 60 x 40 cm\nobject jar\n  shape from "parts/jar.svg" part "jar"\n  value 2\n',
  'based on "a.mahl"\nobject bowl\n  value 5\n',
  'based on "../a.mahl"\n',
  'objekt a\n',
  '',
  '\ufeffcanvas 60 x 40 cm\r\n',
  '<<<<<<< ours\nvalue 1\n=======\nvalue 2\n>>>>>>> theirs\n',
  'x'.repeat(3_000),
];

type Step =
  | { readonly kind: 'write'; readonly name: string; readonly content: number }
  | { readonly kind: 'bytes' | 'remove' | 'stage' | 'link' | 'module'; readonly name: string }
  | { readonly kind: 'rename'; readonly name: string; readonly to: string }
  | { readonly kind: 'commit' | 'stage all' | 'branch' | 'merge' | 'detach' | 'reset' | 'stash' | 'tag' };

const name = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...names.slice(0, 4)) },
  { weight: 2, arbitrary: fc.constantFrom(...names) },
);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({ kind: fc.constant('write' as const), name, content: fc.nat(contents.length - 1) }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        'bytes' as const,
        'remove' as const,
        'stage' as const,
        'link' as const,
        'module' as const,
      ),
      name,
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('rename' as const), name, to: name }) },
  {
    weight: 7,
    arbitrary: fc
      .constantFrom(
        'commit' as const,
        'commit' as const,
        'stage all' as const,
        'branch' as const,
        'merge' as const,
        'detach' as const,
        'reset' as const,
        'stash' as const,
        'tag' as const,
      )
      .map((kind) => ({ kind })),
  },
);

/** Does one thing; what git refuses stays undone. */
function take({ top, git, write }: TestRepository, one: Step, count: number): void {
  const at = (file: string): string => path.join(top, file);
  const quietly = (...words: readonly string[]): void => {
    try {
      git(...words);
    } catch {
      // It can't be done in this state.
    }
  };
  try {
    switch (one.kind) {
      case 'write':
        return write(one.name, contents[one.content] ?? '');
      case 'bytes':
        return writeFileSync(at(one.name), Uint8Array.of(0x63, 0xff, 0, 0x0a));
      case 'remove':
        return rmSync(at(one.name), { force: true });
      case 'stage':
        return quietly('add', '--', one.name);
      case 'link':
        return symlinkSync('/etc/hostname', at(one.name));
      case 'module':
        return quietly(
          'update-index',
          '--add',
          '--cacheinfo',
          `160000,${git('rev-parse', 'HEAD').trim()},${one.name}`,
        );
      case 'rename':
        return renameSync(at(one.name), at(one.to));
      case 'commit':
        quietly('add', '--all');
        return quietly('commit', '--quiet', '--allow-empty', '-m', `number ${count}`);
      case 'stage all':
        return quietly('add', '--all');
      case 'branch':
        return quietly('switch', '--quiet', '-c', `side${count}`, 'HEAD~1');
      case 'merge':
        return quietly('merge', '--quiet', 'main');
      case 'detach':
        return quietly('switch', '--quiet', '--detach', 'HEAD');
      case 'reset':
        return quietly('reset', '--quiet', 'HEAD~1');
      case 'stash':
        return quietly('stash', '--quiet');
      case 'tag':
        return quietly('tag', `tag${count}`);
    }
  } catch {
    // The disk refuses it, as when there is no such file.
  }
}

/**
 * Repositories in any state: what is told of versions is a comparison or a reason, and what is staged is checked as it
 * is staged.
 */
export const gitStates = campaign({
  runs: 2,
  cases: fc.record({
    steps: fc.array(step, { maxLength: 14 }),
    asked: fc.array(name, { minLength: 1, maxLength: 2 }),
  }),
  hold: async ({ steps, asked }) => {
    const repository = newRepository();
    try {
      write(repository);
      steps.forEach((one, count) => take(repository, one, count));
      await holdCompared(repository, asked);
      await holdStaged(repository);
    } finally {
      repository.remove();
    }
  },
});

function write({ write: put }: TestRepository): void {
  put('parts/jar.svg', '<svg xmlns="http://www.w3.org/2000/svg"><path id="jar" d="M0 0H10V20H0Z"/></svg>');
}

async function holdCompared({ top }: TestRepository, asked: readonly string[]): Promise<void> {
  const run = async (...words: readonly string[]): Promise<void> => {
    const ended = await session(['compare', ...words], '', top);
    holdSession(ended);
  };
  for (const file of asked) {
    const named = file.startsWith('-') ? `./${file}` : file;
    await run('--', file);
    await run('--', `HEAD:${file}`, named);
    await run('--', `:${file}`, `HEAD~1:./${file}`);
    await run('--', `:2:./${file}`, `:3:./${file}`);
    await run(
      '--git-diff',
      '--',
      file,
      existsSync(path.join(top, file)) ? named : '/dev/null',
      '0',
      '100644',
      '/dev/null',
      '.',
      '.',
    );
  }
}

/** Each plan that is staged is told of as it is when its bytes are handed over. */
async function holdStaged({ top, git }: TestRepository): Promise<void> {
  const told = await session(['check', '--staged', '--json'], '', top);
  if (told.code === 2 && told.output === '') return holdSession(told);
  holdEnding(told);
  const { files } = JSON.parse(told.output) as CheckDocument;
  // A repository in the repository is no plan, whatever it is called.
  const staged = git('diff', '--cached', '--ignore-submodules=all', '--name-only', '--diff-filter=d', '-z')
    .split('\0')
    .slice(0, -1);
  const plans = staged.filter((one) => one.endsWith('.mahl'));
  assert.deepEqual(
    files.map(({ file }) => file),
    plans,
  );
  for (const entry of files) {
    // What names files has others beside it when it is handed over.
    if (!entry.read || /\b(?:from|on) "/u.test(git('show', `:./${entry.file}`))) continue;
    const alone = await session(['check', '--json', '-'], git('show', `:./${entry.file}`), top);
    const [other] = (JSON.parse(alone.output) as CheckDocument).files;
    assert.deepEqual({ ...entry, file: '-' }, other);
  }
  holdSession(await session(['check', '--staged'], '', top));
}
