import { afterEach, describe, expect, it } from 'vitest';
import type { Diagnostic, DocumentSymbol, TextEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { format } from '../../grammar/index.js';
import * as features from '../../server/language/features.js';
import type { SceneResult } from '../../server/language/protocol.js';
import type { FileAnswer } from '../../server/plan/plan.js';
import { session } from '../support/command-line.js';
import { largePlan, OBJECTS } from '../support/large-plan.js';
import { scripts } from '../support/scripts.js';
import { speak, type Spoken } from './in-process.js';

// What the stages make of plans as large as they get is in `tests/limits.test.ts`: here an editor and a terminal have
// them.

const uri = 'file:///studio/plan.mahl';
const textDocument = { uri };
const patienceMilliseconds = 100_000;

let spoken: Spoken | undefined;
afterEach(() => spoken?.end());

async function opened(
  text: string,
  files: Readonly<Record<string, FileAnswer>> = {},
): Promise<Spoken['client']> {
  spoken = await speak({
    version: '0',
    features: () => features,
    readFile: (file) => Promise.resolve(files[file] ?? { ok: false, reason: 'There is no such file.' }),
  });
  await spoken.client.open(uri, text);
  return spoken.client;
}

/** Waits as long as a large plan takes on a busy machine. */
function ask<R>(client: Spoken['client'], method: string, params: object = {}): Promise<R> {
  return client.request<R>(method, { textDocument, ...params }, patienceMilliseconds);
}

const diagnosticsOf = async (client: Spoken['client']): Promise<readonly Diagnostic[]> =>
  (await ask<{ readonly items: readonly Diagnostic[] }>(client, 'textDocument/diagnostic')).items;

describe('a plan as large as plans get', () => {
  it('is answered for in an editor, also after an edit', async () => {
    const client = await opened(largePlan);
    const symbols = await ask<DocumentSymbol[]>(client, 'textDocument/documentSymbol');
    expect(symbols.filter(({ name }) => name.startsWith('leaf'))).toHaveLength(OBJECTS);
    const drawn = await ask<SceneResult>(client, 'mahlstick/scene', { view: 'drawing' });
    expect(Object.keys(drawn.scene.subjects).length).toBeGreaterThan(OBJECTS);
    const end = { line: 100_000, character: 0 };
    await client.notify('textDocument/didChange', {
      textDocument: { uri, version: 2 },
      contentChanges: [{ range: { start: end, end }, text: '\nobjekt extra\n' }],
    });
    expect((await diagnosticsOf(client)).map(({ code }) => code)).toContain('unknown-word');
    expect(client.logged).toEqual([]);
  });

  it('is read and written whole on the command line', async () => {
    const { code, output, complaints } = await session(['format', '-'], largePlan);
    expect([code, complaints]).toEqual([0, []]);
    expect(output).toBe(format(largePlan));
  });
});

describe('names of any script', () => {
  it.each(scripts)('%s are symbols, are renamed, and stand in drawings', async (_, name, other) => {
    const text = `canvas 40 x 30 cm\nobject ${name}\n  shape circle 9 at (20, 15)\n  value 2\npath ${name}\n`;
    const client = await opened(text);
    const symbols = await ask<DocumentSymbol[]>(client, 'textDocument/documentSymbol');
    expect(symbols.map((symbol) => symbol.name)).toContain(name);
    const position = { line: 1, character: 8 };
    const renamed = await ask<WorkspaceEdit>(client, 'textDocument/rename', { position, newName: other });
    const edits = (renamed.documentChanges ?? []).flatMap((change) =>
      'edits' in change ? (change.edits as TextEdit[]) : [],
    );
    expect(edits.map(({ newText }) => newText)).toEqual([other, other]);
    const { scene } = await ask<SceneResult>(client, 'mahlstick/scene', { view: 'drawing' });
    expect(JSON.stringify(scene)).toContain(name);
    expect((await session(['measure', '-'], text)).output).toContain(name);
  });
});

describe('a text as other programs write it', () => {
  const text = 'canvas 40 x 30 cm\nobjekt jar\n';

  it('has its places where they are, with a byte order mark and either end of a line', async () => {
    const client = await opened(`\ufeff${text.replaceAll('\n', '\r\n')}`);
    const [misspelt] = await diagnosticsOf(client);
    expect(misspelt?.range).toEqual({ start: { line: 1, character: 0 }, end: { line: 1, character: 6 } });
    const bytes = Buffer.from(`\ufeff${text.replaceAll('\n', '\r\n')}`);
    expect((await session(['check', '-'], bytes)).output).toContain(':2:1');
  });

  it('has one error where a plan builds on what is no UTF-8', async () => {
    const reason = 'This file is no text in UTF-8.';
    const client = await opened('based on "latin.mahl"\n', {
      'file:///studio/latin.mahl': { ok: false, reason },
    });
    const errors = async () =>
      (await diagnosticsOf(client)).filter(({ severity }) => severity === 1).map(({ message }) => message);
    // The base is read in a later turn.
    await expect.poll(errors, { timeout: patienceMilliseconds }).toEqual([expect.stringContaining(reason)]);
  });

  it('may nest as deep as it likes', async () => {
    const deep = Array.from({ length: 2_000 }, (_, depth) => `${' '.repeat(depth)}object o${depth}`).join(
      '\n',
    );
    const client = await opened(deep);
    expect((await diagnosticsOf(client)).length).toBeGreaterThan(0);
    expect((await session(['check', '-'], deep)).code).toBe(1);
    expect(await ask(client, 'textDocument/foldingRange')).not.toBeNull();
  });
});
