import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { mozJpeg, quarters } from '../photographs/made.js';
import { examplesFolder } from './examples-folder.js';
import { buildMahlstick, type Mahlstick, type RunOptions } from './mahlstick.js';

// What only a process of its own shows; what commands say and write is told of in `commands.test.ts`.

const plans = examplesFolder();
const { top, write } = plans;
let mahlstick: Mahlstick;

beforeAll(async () => {
  mahlstick = await buildMahlstick();
});

afterAll(() => mahlstick.remove());

const run = (words: readonly string[], options: RunOptions = {}) =>
  mahlstick.run(words, { folder: plans.folder, ...options });

describe('mahlstick', () => {
  it('tells its version and explains itself', async () => {
    expect(await run(['--version'])).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
    expect((await run(['--help'])).stdout).toContain('Exit codes:');
  });

  it('explains every command in lines that a terminal of 80 columns holds', async () => {
    for (const command of ['', 'check', 'draw', 'measure', 'compare', 'wall', 'format', 'server', 'help']) {
      const { code, stdout } = await run(['help', ...(command === '' ? [] : [command])], {
        env: { COLUMNS: '80' },
      });
      expect(code).toBe(0);
      expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    }
  });

  it('loads what reads plans, what draws and what paints pixels only when they are called', async () => {
    const without = (part: string) => {
      write(
        'refuse.cjs',
        `require('node:module').Module._load = ((load) => (name, ...rest) => {\n  if (name.includes('${part}')) throw new Error('loaded');\n  return load(name, ...rest);\n})(require('node:module').Module._load);\n`,
      );
      return { env: { NODE_OPTIONS: `--require ${path.join(plans.folder, 'refuse.cjs')}` } };
    };
    expect((await run(['help', 'check'], without('./core'))).code).toBe(0);
    expect((await run(['check', 'ten.mahl'], without('./core'))).code).toBe(3);
    expect((await run(['check', 'ten.mahl'], without('./export'))).code).toBe(0);
    expect((await run(['draw', 'ten.mahl'], without('./export'))).code).toBe(3);
    expect((await run(['draw', 'ten.mahl'], without('resvg'))).code).toBe(0);
    expect((await run(['draw', 'ten.mahl', '-o', 'ten.png'], without('resvg'))).code).toBe(3);
  });

  it('measures a photograph in a thread of its own, and ends when it is done', async () => {
    write('01.jpg', await mozJpeg(quarters(64, 48)));
    write('recorded.mahl', 'canvas 40 x 30 cm\nsitting "Block in" on 2026-03-09\n  photo "01.jpg"\n');
    const { code, stdout } = await run(['record', 'recorded.mahl', '--json']);
    expect(code).toBe(0);
    expect(stdout).toContain('"is": "measured"');
    write('01.jpg', '');
    expect((await run(['record', 'recorded.mahl', '--json'])).stdout).toContain('This file is empty.');
  });

  it('takes a reader that leaves early for what it is', async () => {
    write('many.mahl', 'object a\n'.repeat(3000));
    const child = spawn(process.execPath, [mahlstick.file, 'check', 'many.mahl'], {
      cwd: plans.folder,
      timeout: 30_000,
    });
    child.stdout.destroy();
    let stderr = '';
    child.stderr.on('data', (part: Buffer) => (stderr += part.toString()));
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect([code, stderr]).toEqual([0, '']);
  });

  it('shows no stack of its own faults', async () => {
    write('refuse.cjs', "JSON.stringify = () => { throw new Error('a fault'); };\n");
    const env = { NODE_OPTIONS: `--require ${path.join(plans.folder, 'refuse.cjs')}` };
    const { stderr } = await run(['check', '--json', 'ten.mahl'], { env });
    expect(stderr).toBe('mahlstick: this is a fault of mahlstick, not of your plan: a fault\n');
  });

  it('reads its standard input, up to the size that a plan may have', async () => {
    const input = readFileSync(path.join(plans.folder, 'goldfinch.mahl'));
    expect(await run(['check', '-'], { input })).toMatchObject({ code: 0, stderr: '' });
    expect(await run(['measure', '-'], { input: `// ${'a'.repeat(5 * 1024 * 1024)}` })).toEqual({
      code: 2,
      stdout: '',
      stderr: 'mahlstick: the standard input is larger than 5 MB.\n',
    });
  });

  it('writes a drawing, and ends with what the plan is worth', async () => {
    for (const name of ['ten.svg', 'ten.png', 'ten.pdf'])
      expect(await run(['draw', 'ten.mahl', '-o', name])).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(readdirSync(plans.folder)).toEqual(expect.arrayContaining(['ten.pdf', 'ten.png', 'ten.svg']));
    write('broken.mahl', 'objekt a\n');
    expect((await run(['check', 'broken.mahl'])).code).toBe(1);
  });

  it('leaves everything as it was in a folder that cannot be written', async () => {
    const locked = path.join(plans.folder, 'locked');
    mkdirSync(locked);
    const untidy = 'plan "One"\n\n\n';
    writeFileSync(path.join(locked, 'one.mahl'), untidy);
    for (const reachable of [top, plans.folder]) chmodSync(reachable, 0o755);
    chmodSync(locked, 0o555);
    // The superuser may write anywhere, so somebody else has to try.
    const somebody = process.getuid?.() === 0 ? { uid: 65534 } : {};
    const { code, stderr } = await run(['format', 'locked/one.mahl'], somebody);
    chmodSync(locked, 0o755);
    expect([code, stderr]).toEqual([2, 'mahlstick: locked/one.mahl is out of reach: permission denied.\n']);
    expect(readdirSync(locked)).toEqual(['one.mahl']);
    expect(readFileSync(path.join(locked, 'one.mahl'), 'utf8')).toBe(untidy);
  });
});

describe('server', () => {
  it('answers an editor over the standard streams, and ends when told to', async () => {
    const messages = [
      {
        jsonrpc: '2.0',
        id: 1,
        method: 'initialize',
        params: { processId: null, rootUri: null, capabilities: {} },
      },
      { jsonrpc: '2.0', method: 'initialized', params: {} },
      { jsonrpc: '2.0', id: 2, method: 'shutdown' },
      { jsonrpc: '2.0', method: 'exit' },
    ];
    const input = messages
      .map((message) => JSON.stringify(message))
      .map((text) => `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`)
      .join('');
    const { code, stdout } = await run(['server', '--stdio'], { input, keepOpen: true });
    expect(code).toBe(0);
    expect(stdout).toContain('"capabilities":{');
  });
});
