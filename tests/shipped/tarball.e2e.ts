import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import type { Hover } from 'vscode-languageserver-protocol';
import { beforeAll, describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { temporaryFolder } from '../hosts/workspace.mjs';
import { Client } from '../protocol/server.js';
import { root } from './built.js';

/** As `npm run package` makes it. */
const tarball = path.join(root, 'artefacts', `mahlstick-${version}.tgz`);
const examples = path.join(root, 'examples');

interface Manifest {
  readonly name: string;
  readonly description: string;
  readonly keywords: readonly string[];
}

interface Ending {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

describe('what npm installs, in a folder that has nothing else', () => {
  let folder: string;
  let installed: string;

  beforeAll(async () => {
    folder = temporaryFolder('tarball');
    installed = path.join(folder, 'node_modules/mahlstick');
    // What the package depends on comes from what this repository has of it, so that nothing is asked of a network.
    const libraries = path.join(root, 'node_modules/@resvg');
    const packed = path.join(folder, 'packed');
    mkdirSync(packed);
    for (const library of readdirSync(libraries))
      await npm('pack', '--pack-destination', packed, path.join(libraries, library));
    const files = readdirSync(packed).map((file) => path.join(packed, file));
    await npm('install', '--offline', '--no-audit', '--no-fund', tarball, ...files);
    for (const plan of ['ten.mahl', 'winter-barn.mahl', 'winter-barn-dusk.mahl', 'quinces.mahl'])
      copyFileSync(path.join(examples, plan), path.join(folder, plan));
    mkdirSync(path.join(folder, 'record'));
    for (const photograph of readdirSync(path.join(examples, 'record')))
      copyFileSync(path.join(examples, 'record', photograph), path.join(folder, 'record', photograph));
    writeFileSync(path.join(folder, 'loaded.cjs'), SAY_WHAT_IS_LOADED);
  });

  it('holds the command line, its pages and their drawings, and neither sources nor the extension', () => {
    const files = readdirSync(installed, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.relative(installed, path.join(entry.parentPath, entry.name)));
    expect(files.filter((file) => /\.(?:ts|mts|mjs|map|mahl|css)$|(?:^|\/)tests\//u.test(file))).toEqual([]);
    expect(files.filter((file) => /^dist\//u.test(file)).sort()).toEqual(
      [
        'core.js',
        'export.js',
        'features.js',
        'german.js',
        'licences.txt',
        'mahlstick.js',
        'photograph.js',
        'server.node.js',
      ].map((file) => `dist/${file}`),
    );
    expect(files).toEqual(
      expect.arrayContaining(['README.md', 'LICENSE', 'NOTICE', 'CHANGELOG.md', 'server/cli/README.md']),
    );
    expect(readdirSync(path.join(folder, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      '@resvg',
      'mahlstick',
    ]);
  });

  it.each([
    'grammar/README.md',
    'server/measure/README.md',
    'server/findings/README.md',
    'server/cli/README.md',
  ])('has what %s leads to', (page) => {
    const text = readFileSync(path.join(installed, page), 'utf8').replace(/^```[\s\S]*?^```$/gmu, '');
    const links = [...text.matchAll(/\]\(([^)\s#:]+)[^)]*\)/gu)].map(([, link = '']) => link);
    expect(links.length).toBeGreaterThan(5);
    expect(links.filter((link) => !existsSync(path.join(installed, path.dirname(page), link)))).toEqual([]);
  });

  it('says in words what it is, where npm shows it', () => {
    const manifest = JSON.parse(readFileSync(path.join(installed, 'package.json'), 'utf8')) as Manifest;
    expect(manifest.description).toMatch(/^Plan a picture in plain text/u);
    expect([manifest.name, ...manifest.keywords].filter((word) => word.includes('%'))).toEqual([]);
  });

  it('is found by npx', async () => {
    const { code, stdout } = await start('npx', ['--offline', '--no', '--', 'mahlstick', '--version']);
    expect([code, stdout]).toEqual([0, `${version}\n`]);
  });

  it('explains itself, and the licences of what is in it are there', async () => {
    expect((await mahlstick('help')).stdout).toContain('mahlstick check barn.mahl');
    expect((await mahlstick('help', 'draw')).stdout).toContain('--view <view>');
    expect(readFileSync(path.join(installed, 'dist/licences.txt'), 'utf8')).toContain('\nchevrotain 1');
  });

  it('checks, and says where', async () => {
    writeFileSync(path.join(folder, 'slip.mahl'), 'plan "One"\ncanvas 40 x 30 cm\nobjekt jug\n');
    const { code, stdout } = await mahlstick('check', 'slip.mahl');
    expect(code).toBe(1);
    expect(stdout).toContain('slip.mahl:3:1  error');
  });

  it.each([
    ['ten.svg', '<?xml version="1.0"'],
    ['ten.png', '\x89PNG\r\n'],
    ['ten.pdf', '%PDF-1.'],
  ])('draws %s', async (file, begins) => {
    expect(await mahlstick('draw', 'ten.mahl', '-o', file)).toMatchObject({ code: 0, stderr: '' });
    const drawn = readFileSync(path.join(folder, file), 'latin1');
    expect(drawn.slice(0, begins.length)).toBe(begins);
    expect(drawn.length).toBeGreaterThan(2_000);
  });

  it('measures', async () => {
    const { code, stdout } = await mahlstick('measure', 'ten.mahl', '--json');
    expect(code).toBe(0);
    const measured = JSON.parse(stdout) as { readonly schema: string };
    expect(existsSync(path.join(installed, 'server/cli/schema', path.basename(measured.schema)))).toBe(true);
    expect(stdout).toContain('"pear"');
  });

  it('measures photographs in a thread of its own', async () => {
    const { code, stdout } = await mahlstick('record', 'quinces.mahl');
    expect(code).toBe(0);
    expect(stdout).toContain('Block in');
  });

  it('compares', async () => {
    const { code, stdout } = await mahlstick('compare', 'winter-barn.mahl', 'winter-barn-dusk.mahl');
    expect(code).toBe(0);
    expect(stdout.split('\n').length).toBeGreaterThan(5);
  });

  it('is a language server that finds, explains and knows where its reference lies', async () => {
    const child = spawn(program(), ['server', '--stdio'], {
      cwd: folder,
      env: bare(),
      stdio: ['pipe', 'pipe', 'inherit'],
      timeout: 60_000,
    });
    const ended = new Promise((resolve) => child.on('exit', resolve));
    const client = new Client(
      createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin)),
    );
    await client.initialize({ textDocument: { hover: { contentFormat: ['markdown'] } } });
    const uri = 'file:///plans/one.mahl';
    await client.open(uri, 'plan "One"\ncanvas 40 x 30 cm\nobjekt jug\n');
    expect((await client.diagnostics(uri, 1)).map(({ range }) => range.start.line)).toContain(2);
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument: { uri },
      position: { line: 1, character: 2 },
    });
    const [, page = ''] = /\((file:[^)#]+)/u.exec(JSON.stringify(hover)) ?? [];
    expect(path.relative(installed, fileURLToPath(page))).toBe('grammar/README.md');
    await client.request('shutdown', null);
    await client.notify('exit', null);
    expect(await ended).toBe(0);
  });

  /** In the folder, with a cache and a home of its own. */
  async function npm(...words: readonly string[]): Promise<void> {
    expect(await start('npm', words)).toMatchObject({ code: 0 });
  }

  function program(): string {
    return path.join(folder, 'node_modules/.bin/mahlstick');
  }

  /** Runs the installed program, and fails where it loads anything that was not installed. */
  async function mahlstick(...words: readonly string[]): Promise<Ending> {
    const list = path.join(folder, 'loaded.txt');
    const ending = await start(program(), words, {
      NODE_OPTIONS: `--require ${path.join(folder, 'loaded.cjs')}`,
      LOADED: list,
    });
    const loaded = readFileSync(list, 'utf8').split('\n').filter(Boolean);
    expect(loaded).toContain(path.join(installed, 'dist/mahlstick.js'));
    expect(loaded.filter((file) => !file.startsWith(`${folder}${path.sep}`))).toEqual([]);
    return ending;
  }

  function start(
    command: string,
    words: readonly string[],
    more: Readonly<Record<string, string>> = {},
  ): Promise<Ending> {
    const child = spawn(command, words, { cwd: folder, env: bare(more), timeout: 60_000 });
    let [stdout, stderr] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (part: string) => (stdout += part));
    child.stderr.setEncoding('utf8').on('data', (part: string) => (stderr += part));
    child.stdin.end();
    return new Promise((resolve, reject) => {
      child.on('error', reject);
      child.on('close', (code) => resolve({ code, stdout, stderr }));
    });
  }

  /** An environment in which nothing leads to this repository. */
  function bare(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
    const programs = (process.env['PATH'] ?? '')
      .split(path.delimiter)
      .filter((place) => !place.startsWith(root) && !place.includes('node_modules'));
    return { PATH: programs.join(path.delimiter), HOME: folder, ...more };
  }
});

/** Writes the paths of all modules to a file when a process ends. */
const SAY_WHAT_IS_LOADED = `
process.on('exit', () => require('node:fs').writeFileSync(process.env.LOADED, Object.keys(require.cache).join('\\n')));
`;
