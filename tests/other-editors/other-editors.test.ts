import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../cli/examples-folder.js';
import { buildMahlstick, type Mahlstick } from '../cli/mahlstick.js';
import { checked } from '../support/plan.js';

// The settings of client/other-editors/README.md, word for word, in the editors themselves where they are installed.

const page = readFileSync(path.join(root, 'client/other-editors/README.md'), 'utf8');
const settings = (language: string): string =>
  new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'mu').exec(page)?.[1] ?? '';

/** A plan with a word that can't be read, two budgets that are missed, and what the settings of the page turn off. */
const plan = readFileSync(path.join(root, 'examples/tutorial/7-colours.mahl'), 'utf8')
  .replace('object  door', 'objekt  door')
  .replace('object  lettuces', 'object  lettuces, secondary');

interface Answer {
  readonly found: readonly string[];
  readonly mended: readonly string[];
  readonly hover: string;
  readonly offered: readonly string[];
  readonly text: string;
}

interface Editor {
  readonly name: string;
  /** A command that succeeds where the editor and all that it needs is installed. */
  readonly installed: readonly [string, ...string[]];
  /** From the home folder, with what each file holds. */
  readonly files: Readonly<Record<string, string>>;
  readonly command: readonly [string, ...string[]];
}

const probe = (file: string) => path.join(import.meta.dirname, file);
const editors: readonly Editor[] = [
  {
    name: 'Neovim',
    installed: ['nvim', '--version'],
    files: {
      '.config/nvim/init.lua': settings('lua'),
      '.config/nvim/syntax/mahl.vim': settings('vim syntax'),
    },
    command: ['nvim', '--headless', 'plan.mahl', '-c', `luafile ${probe('probe.lua')}`],
  },
  {
    name: 'Emacs',
    installed: ['emacs', '--batch', '--eval', "(require 'eglot)"],
    files: { '.emacs.d/init.el': settings('elisp') },
    command: ['emacs', '--batch', '--load', '.emacs.d/init.el', '--load', probe('probe.el')],
  },
  {
    name: 'Vim',
    installed: ['vim', '-u', 'NONE', '-es', '-c', 'set nocompatible', '-c', 'packadd ale', '-c', 'qall!'],
    files: { '.vimrc': settings('vim'), '.vim/syntax/mahl.vim': settings('vim syntax') },
    command: ['vim', '-i', 'NONE', '-n', '--not-a-term', 'plan.mahl', '-S', probe('probe.vim')],
  },
];

function isInstalled({ installed: [program, ...words] }: Editor): boolean {
  try {
    execFileSync(program, words, { stdio: 'ignore', timeout: 20_000 });
    return true;
  } catch {
    return false;
  }
}

let mahlstick: Mahlstick;
let programs = '';
beforeAll(async () => {
  mahlstick = await buildMahlstick();
  programs = mkdtempSync(path.join(tmpdir(), 'mahlstick-programs-'));
  const program = path.join(programs, 'mahlstick');
  writeFileSync(program, `#!/bin/sh\nexec '${process.execPath}' '${mahlstick.file}' "$@"\n`);
  chmodSync(program, 0o755);
});
afterAll(() => {
  mahlstick.remove();
  rmSync(programs, { recursive: true });
});

/** What the editor tells of the plan; it is ended when it takes longer than a minute. */
function tried({ files, command: [program, ...words] }: Editor): Answer {
  const home = mkdtempSync(path.join(tmpdir(), 'mahlstick-editor-'));
  const answer = path.join(home, 'answer.json');
  for (const [name, text] of Object.entries({ ...files, 'plan.mahl': plan })) {
    mkdirSync(path.dirname(path.join(home, name)), { recursive: true });
    writeFileSync(path.join(home, name), text);
  }
  const env = {
    ...process.env,
    HOME: home,
    XDG_CONFIG_HOME: path.join(home, '.config'),
    PATH: `${programs}${path.delimiter}${process.env['PATH'] ?? ''}`,
    ANSWER: answer,
  };
  try {
    execFileSync(program, words, { cwd: home, env, stdio: 'ignore', timeout: 60_000 });
    return JSON.parse(readFileSync(answer, 'utf8')) as Answer;
  } finally {
    rmSync(home, { recursive: true });
  }
}

describe('the settings for other editors', () => {
  const { findings } = checked(plan.replace('objekt', 'object'));
  const turnedOff = findings.find(({ rule }) => rule === 'even count')?.message ?? '';

  it('turn off what would be told of the plan without them', () => {
    expect(turnedOff).toContain('two principal objects');
  });

  describe.each(editors)('in $name', (editor) => {
    it.skipIf(!isInstalled(editor))(
      `show, mend, tell, rename, offer and set (skipped where ${editor.name} is not installed)`,
      () => {
        const { found, mended, hover, offered, text } = tried(editor);
        expect(found.join('\n')).toContain('Did you mean `object`?');
        expect(mended.join('\n')).not.toContain(turnedOff);
        expect(mended.join('\n')).toContain('The discord colours cover 4.2 % of the picture');
        expect(mended.join('\n')).not.toContain('Did you mean `object`?');
        expect(hover).toContain('Covers 2.7 % of the picture.');
        expect(offered).toContain('plane');
        expect(text).toContain('object  door');
        expect(text).toContain('object  satsumas, dominant');
        expect(text).toContain('left edge of sunlight to satsumas');
        expect(text).toContain('object  cat');
      },
    );
  });
});
