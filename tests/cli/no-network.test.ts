import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from './examples-folder.js';
import { buildMahlstick, type Mahlstick } from './mahlstick.js';

let mahlstick: Mahlstick;
let folder: string;
let notes: string;
let env: Readonly<Record<string, string>>;

beforeAll(async () => {
  mahlstick = await buildMahlstick();
  folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-recorded-'));
  cpSync(path.join(root, 'examples'), folder, { recursive: true });
  notes = path.join(folder, 'notes.txt');
  const recorder = pathToFileURL(path.join(import.meta.dirname, 'recorder.mjs')).href;
  env = { NODE_OPTIONS: `--import ${JSON.stringify(recorder)}`, MAHLSTICK_RECORD: notes };
});
afterAll(() => {
  mahlstick.remove();
  rmSync(folder, { recursive: true });
});

/** What was written down of a run. */
async function noted(words: readonly string[], input = ''): Promise<readonly string[]> {
  writeFileSync(notes, '');
  const { code, stderr } = await mahlstick.run(words, { folder, input, env });
  expect([0, 1], stderr).toContain(code);
  return readFileSync(notes, 'utf8').trimEnd().split('\n');
}

/** Messages as the language server protocol frames them. */
function framed(...messages: readonly object[]): string {
  return messages
    .map((message) => JSON.stringify({ jsonrpc: '2.0', ...message }))
    .map((text) => `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`)
    .join('');
}

describe('what asks a network, or runs another program', () => {
  it.each([
    ['check', ['check', 'quinces.mahl']],
    ['draw', ['draw', 'quinces.mahl', '--view', 'sheet', '-o', 'sheet.pdf']],
    ['record', ['record', 'quinces.mahl']],
  ])('is not %s, which has photographs decoded in a thread', async (_, words) => {
    expect(new Set(await noted(words))).toEqual(new Set(['begins a program', 'begins a thread']));
  });

  it('is not the language server', async () => {
    const textDocument = {
      uri: 'file:///studio/a.mahl',
      languageId: 'mahl',
      version: 1,
      text: 'canvas 4 x 3 cm\nobject jar\n  shape from "https://example.org/a.svg" part "jar"\n',
    };
    const input = framed(
      { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } },
      { method: 'initialized', params: {} },
      { method: 'textDocument/didOpen', params: { textDocument } },
      { id: 2, method: 'mahlstick/scene', params: { textDocument, view: 'drawing' } },
      { id: 3, method: 'mahlstick/export', params: { textDocument, what: 'drawing', format: 'svg' } },
      { id: 4, method: 'shutdown' },
      { method: 'exit' },
    );
    expect(await noted(['server', '--stdio'], input)).toEqual(['begins a program']);
  });

  it('would be written down', () => {
    writeFileSync(notes, '');
    const script = `
      require('node:http').get('http://127.0.0.1:9/').on('error', () => 0);
      fetch('http://127.0.0.1:65123/').catch(() => 0);
      require('node:child_process').execFileSync(process.execPath, ['--version']);
      const thread = 'import dns from "node:dns"; dns.lookup("localhost", () => 0);';
      const { Worker } = require('node:worker_threads');
      new Worker(new URL('data:text/javascript,' + encodeURIComponent(thread)));`;
    execFileSync(process.execPath, ['-e', script], { env: { ...process.env, ...env }, timeout: 30_000 });
    const told = readFileSync(notes, 'utf8');
    for (const act of ['connects', 'looks up lookup ["localhost"]', 'runs execFileSync', 'begins a thread'])
      expect(told).toContain(act);
    expect(told.match(/^connects .*127\.0\.0\.1/gmu)?.length).toBeGreaterThan(1);
  });
});
