import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { URI } from 'vscode-uri';
import { bundledServer } from './bundled.js';
import { type Client, within } from './server.js';

const start = bundledServer();
let folder: string;
let client: Client;

const svgOf = (id: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg"><rect id="${id}" width="4" height="3"/></svg>`;

beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-plans-'));
  await mkdir(path.join(folder, 'studio'));
  await writeFile(path.join(folder, 'studio', 'door.svg'), svgOf('door'));
  await writeFile(path.join(folder, 'outside.svg'), svgOf('door'));
  await symlink(path.join(folder, 'outside.svg'), path.join(folder, 'studio', 'link.svg'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const planNaming = (svg: string): string => `canvas 40 x 30 cm\nobject door\n  shape from "${svg}"\n`;

async function problemsOf(
  svg: string,
  more: Readonly<Record<string, unknown>> = {},
): Promise<readonly string[]> {
  const uri = URI.file(path.join(folder, 'studio', 'plan.mahl')).toString();
  await client.initialize({}, more);
  await client.open(uri, planNaming(svg));
  const hasAnswer = () =>
    client.published.some(({ diagnostics }) => diagnostics.some(({ code }) => code === 'unreadable-file')) ||
    client.published.length > 1;
  await client.until(hasAnswer, 'the answer about the file');
  return (client.published.at(-1)?.diagnostics ?? [])
    .filter(({ code }) => code === 'unreadable-file')
    .map(({ message }) => (typeof message === 'string' ? message : message.value));
}

test('it reads a file beside the plan', async () => {
  ({ client } = start());
  expect(await problemsOf('door.svg')).toEqual([]);
});

test.each([
  ['link.svg', 'This file lies outside the folder that is open.'],
  ['../outside.svg', 'This file lies outside the folder that is open.'],
  ['none.svg', 'There is no such file.'],
])('%s is refused', async (svg, reason) => {
  ({ client } = start());
  expect(await problemsOf(svg)).toEqual([`\`${svg}\` cannot be read. ${reason}`]);
});

test('an open folder widens what may be read', async () => {
  ({ client } = start());
  expect(
    await problemsOf('../outside.svg', {
      workspaceFolders: [{ uri: URI.file(folder).toString(), name: 'all' }],
    }),
  ).toEqual([]);
});

test('a folder that is opened later counts from then on', async () => {
  ({ client } = start());
  const studio = { uri: URI.file(path.join(folder, 'studio')).toString(), name: 'studio' };
  const all = { uri: URI.file(folder).toString(), name: 'all' };
  const more = { capabilities: { workspace: { workspaceFolders: true } }, workspaceFolders: [studio] };
  expect(await problemsOf('../outside.svg', more)).toHaveLength(1);
  const before = client.published.length;
  await client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [all], removed: [studio] } });
  const isRead = () =>
    client.published
      .slice(before)
      .some(({ diagnostics }) => diagnostics.every(({ code }) => code !== 'unreadable-file'));
  await client.until(isRead, 'the file to be read');
});

test('a client that reads files itself is asked, and only for what a plan may read', async () => {
  ({ client } = start());
  const asked: string[] = [];
  client.connection.onRequest('mahlstick/readFile', ({ uri }: { readonly uri: string }) => {
    asked.push(uri);
    return { ok: false, reason: 'It is locked away.' };
  });
  const options = { initializationOptions: { readFiles: true } };
  expect(await problemsOf('door.svg', options)).toEqual(['`door.svg` cannot be read. It is locked away.']);
  expect(asked).toEqual([URI.file(path.join(folder, 'studio', 'door.svg')).toString()]);
});

// Editors differ in which characters of a path they escape, and in the case of the digits.
test.each([
  ['all but letters', (text: string) => encodeURIComponent(text).replace(/[()]/gu, escaped)],
  ['as little as can be', (text: string) => text.replaceAll('%', '%25').replaceAll(' ', '%20')],
  [
    'with small digits',
    (text: string) => encodeURIComponent(text).replace(/%../gu, (code) => code.toLowerCase()),
  ],
])('a drawing is the same however an editor spells its address: %s', async (_, spell) => {
  ({ client } = start());
  const studio = path.join(folder, 'Stüdio (old) 50%');
  await mkdir(studio);
  const drawing = path.join(studio, 'döor.svg');
  await writeFile(drawing, svgOf('door'));
  const uriOf = (name: string): string => `file://${path.join(studio, name).split('/').map(spell).join('/')}`;
  const uri = uriOf('plan.mahl');
  const drawn = { uri: uriOf('döor.svg') };
  const last = (): readonly unknown[] =>
    (client.published.findLast((one) => one.uri === uri)?.diagnostics ?? []).map(({ code }) => code);
  const said = (code: string): Promise<void> => client.until(() => last().includes(code), code);

  await client.initialize({});
  await client.open(uri, 'canvas 40 x 30 cm\nobject door\n  shape from "döor.svg" part "door"\n');
  await said('no-value-or-colour');
  await client.open(drawn.uri, svgOf('gate'));
  await said('unreadable-shape');
  await client.notify('textDocument/didClose', { textDocument: drawn });
  await said('no-value-or-colour');
  await rm(drawing);
  await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: drawn.uri, type: 3 }] });
  await said('unreadable-file');
  await writeFile(drawing, svgOf('door'));
  await client.notify('textDocument/didSave', { textDocument: { uri } });
  await said('no-value-or-colour');
  expect(client.logged).toEqual([]);
});

function escaped(character: string): string {
  return `%${character.charCodeAt(0).toString(16)}`;
}

test('a plan that is closed while its files are being fetched is not spoken of again', async () => {
  ({ client } = start());
  const asked = new Promise<(text: string) => void>((resolve) => {
    client.connection.onRequest(
      'mahlstick/readFile',
      () => new Promise((answer) => resolve((text) => answer({ ok: true, text }))),
    );
  });
  const uri = URI.file(path.join(folder, 'studio', 'plan.mahl')).toString();
  await client.initialize({}, { initializationOptions: { readFiles: true } });
  await client.open(uri, planNaming('door.svg'));
  const answer = await within(asked, 'the question for the file');
  await client.notify('textDocument/didClose', { textDocument: { uri } });
  answer(svgOf('door'));
  const other = 'file:///elsewhere/plan.mahl';
  await client.open(other, 'plan "x"');
  await client.diagnostics(other, 1);
  const versions = client.published.filter((one) => one.uri === uri).map(({ version }) => version);
  // It may be closed before anything is told of it.
  expect([[1, undefined], [undefined]]).toContainEqual(versions);
});

test('an edit of an open base changes what is told of the plan that builds on it', async () => {
  ({ client } = start());
  const uriOf = (name: string): string => URI.file(path.join(folder, 'studio', name)).toString();
  const base = 'canvas 40 x 30 cm\nobject door\n  shape circle 4\n';
  await writeFile(path.join(folder, 'studio', 'base.mahl'), `\ufeff${base.replaceAll('\n', '\r\n')}`);
  const heir = uriOf('heir.mahl');
  const isTold = (code: string) => () =>
    client.published.findLast(({ uri }) => uri === heir)?.diagnostics.some((one) => one.code === code) ??
    false;
  await client.initialize({ textDocument: { publishDiagnostics: { relatedInformation: true } } });
  await client.open(heir, 'based on "base.mahl"\nobject door\n  at (4, 5)\npath door\n');
  await client.until(isTold('no-focus'), 'what is found of both plans');
  expect(isTold('unknown-name')()).toBe(false);

  await client.open(uriOf('base.mahl'), base);
  await client.notify('textDocument/didChange', {
    textDocument: { uri: uriOf('base.mahl'), version: 2 },
    contentChanges: [{ text: `${base}objekt lamp\n` }],
  });
  await client.until(isTold('error-in-another-plan'), 'the error in the base');
  const { diagnostics = [] } = client.published.findLast(({ uri }) => uri === heir) ?? {};
  const told = diagnostics.find(({ code }) => code === 'error-in-another-plan');
  expect(told?.range.start).toEqual({ line: 0, character: 9 });
  expect(told?.relatedInformation?.map(({ location }) => [location.uri, location.range.start.line])).toEqual([
    [uriOf('base.mahl'), 3],
  ]);
});
