import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { format } from '../../grammar/index.js';
import { examplesFolder } from './examples-folder.js';
import { buildMahlstick, type Mahlstick } from './mahlstick.js';

const plans = examplesFolder();
const { write } = plans;
let mahlstick: Mahlstick;

beforeAll(async () => {
  mahlstick = await buildMahlstick();
});
afterAll(() => mahlstick.remove());

const UNTIDY = `plan   "One"\n\n\n${'object a // as it was\n'.repeat(2_000)}`;

/** Runs the command where a function of node's disk does something else, and gives what is there then. */
async function formatted(functionName: string, instead: string) {
  write('one.mahl', UNTIDY);
  const script = `const fs = require('node:fs');\nfs.${functionName} = (...words) => { ${instead} };\n`;
  writeFileSync(path.join(plans.top, 'disk.cjs'), script);
  const before = readdirSync(plans.folder);
  const { code, stderr } = await mahlstick.run(['format', 'one.mahl'], {
    folder: plans.folder,
    env: { NODE_OPTIONS: `--require ${path.join(plans.top, 'disk.cjs')}` },
  });
  return {
    code,
    stderr,
    text: readFileSync(path.join(plans.folder, 'one.mahl'), 'utf8'),
    left: readdirSync(plans.folder).filter((name) => !before.includes(name)),
  };
}

describe('a plan that is written anew', () => {
  it.each(['write', 'rename'])('is as it was when the process is killed at its %s', async (moment) => {
    const { code, text } = await formatted(moment, "process.kill(process.pid, 'SIGKILL');");
    expect(code).toBeNull();
    expect(text).toBe(UNTIDY);
  });

  it('is as it was, with nothing beside it, when the disk is full', async () => {
    const { code, stderr, text, left } = await formatted(
      'write',
      "words.at(-1)(Object.assign(new Error('no'), { code: 'ENOSPC' }));",
    );
    expect([code, stderr]).toEqual([2, 'mahlstick: one.mahl cannot be written: the disk is full.\n']);
    expect(text).toBe(UNTIDY);
    expect(left).toEqual([]);
  });

  it('is another when nothing fails', async () => {
    const { code, text } = await formatted('nothingAtAll', '');
    expect(code).toBe(0);
    expect(text).toBe(format(UNTIDY));
  });
});
