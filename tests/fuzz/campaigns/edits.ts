import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import fc from 'fast-check';
import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver-protocol';
import type { Scene } from '../../../server/drawing/scene.js';
import { toldScene } from '../../../server/drawing/scene-change.js';
import * as features from '../../../server/language/features.js';
import type { ChangedScene, WholeScene } from '../../../server/language/protocol.js';
import { SETTLE_MILLISECONDS } from '../../../server/language/photographs.js';
import { spoiltPlan } from '../../support/spoilt-plans.js';
import { anEdit, type Edit, placeOf, rangeIn, replaced } from '../../support/typed-edits.js';
import type { Client } from '../../protocol/server.js';
import { everythingAsked, tokensAfter } from '../asked.js';
import { campaign } from '../campaign.js';
import { speak } from '../../protocol/in-process.js';

const folder = path.resolve(import.meta.dirname, '../../../examples');
const plans = readdirSync(folder).filter((name) => name.endsWith('.mahl'));
const variant = 'winter-barn-dusk.mahl';
const base = 'winter-barn.mahl';
const uriOf = (name: string): string => `file:///studio/${name}`;

/** What somebody does in an editor; `isBase` with the plan that the other one builds on. */
type Step =
  | { readonly kind: 'edit'; readonly isBase: boolean; readonly edits: readonly Edit[] }
  | { readonly kind: 'paste'; readonly text: string }
  | { readonly kind: 'undo' | 'look' | 'reopen' }
  | { readonly kind: 'file'; readonly drawing: string };

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      kind: fc.constant('edit' as const),
      isBase: fc.nat(4).map((one) => one === 0),
      edits: fc.array(anEdit, { minLength: 1, maxLength: 3 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('paste' as const), text: spoiltPlan }) },
  {
    weight: 4,
    arbitrary: fc.constantFrom<Step>(
      { kind: 'undo' },
      { kind: 'look' },
      { kind: 'look' },
      { kind: 'reopen' },
    ),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('file' as const),
      drawing: fc.constantFrom(
        '',
        'no drawing',
        '<svg xmlns="http://www.w3.org/2000/svg"><rect id="a" width="4" height="3"/></svg>',
      ),
    }),
  },
);

interface Document {
  readonly uri: string;
  text: string;
  before: string;
  version: number;
  /** The tokens that the editor has. */
  tokens: { readonly id: string | undefined; readonly data: readonly number[] };
  /** The drawing that the preview has. */
  drawing: { readonly id: number; readonly scene: Scene } | undefined;
}

const files = new Map<string, string>();

/** Files beside the plans; a drawing may have been written anew. */
function fileAt(uri: string, drawing: string | undefined) {
  const name = decodeURIComponent(uri.replace('file:///studio/', ''));
  if (drawing !== undefined && name.endsWith('.svg')) return { ok: true as const, text: drawing };
  try {
    const text = files.get(name) ?? readFileSync(path.join(folder, path.join('/', name)), 'utf8');
    files.set(name, text);
    return { ok: true as const, text };
  } catch {
    return { ok: false as const, reason: 'There is no such file.' };
  }
}

/**
 * Scripts of edits in an editor: at their end everything is answered as by a server that has seen nothing but the last
 * text.
 */
export const edits = campaign({
  runs: 1,
  cases: fc.record({
    plan: fc.oneof(fc.constantFrom(...plans), fc.constant(variant)),
    steps: fc.array(step, { minLength: 1, maxLength: 9 }),
  }),
  hold: async ({ plan, steps }) => {
    let drawing: string | undefined;
    const host = {
      version: '0',
      features: () => features,
      readFile: (uri: string) => Promise.resolve(fileAt(uri, drawing)),
      findPlans: () => Promise.resolve([base, variant].map(uriOf)),
    };
    const { client, end } = await speak(host);
    const documents = [plan, ...(plan === variant ? [base] : [])].map(opened);
    for (const { uri, text } of documents) await client.open(uri, text);
    for (const one of steps) {
      if (one.kind === 'file') {
        drawing = one.drawing;
        const changes = [...files.keys()]
          .filter((name) => name.endsWith('.svg'))
          .map((name) => ({ uri: uriOf(name), type: 2 }));
        await client.notify('workspace/didChangeWatchedFiles', { changes });
      } else await take(client, documents, one);
    }
    const fresh = await speak(host);
    for (const { uri, text, version } of documents) await fresh.client.open(uri, text, version);
    const [mine, other] = [
      await answersOf(client, documents, steps),
      await answersOf(fresh.client, documents, steps),
    ];
    for (const [question, answer] of Object.entries(other))
      assert.deepEqual(mine[question], answer, question);
    for (const document of documents) {
      await updateTokens(client, document);
      const whole = await fresh.client.request<SemanticTokens>('textDocument/semanticTokens/full', {
        textDocument: { uri: document.uri },
      });
      assert.deepEqual(document.tokens.data, whole.data, 'tokens by what changes of them');
      await updateDrawing(client, document);
      const textDocument = { uri: document.uri };
      const drawn = await fresh.client.request<WholeScene | null>('mahlstick/scene', {
        textDocument,
        ...look,
      });
      assert.deepEqual(document.drawing?.scene, drawn?.scene, 'drawing by what changes of it');
    }
    assert.deepEqual([client.logged, fresh.client.logged], [[], []], 'faults of ours');
    end();
    fresh.end();
  },
});

function opened(name: string): Document {
  const answer = fileAt(uriOf(name), undefined);
  const text = answer.ok ? answer.text : '';
  return {
    uri: uriOf(name),
    text,
    before: text,
    version: 1,
    tokens: { id: undefined, data: [] },
    drawing: undefined,
  };
}

async function take(
  client: Client,
  documents: readonly Document[],
  one: Exclude<Step, { readonly kind: 'file' }>,
): Promise<void> {
  const [first] = documents;
  const document = one.kind === 'edit' && one.isBase ? documents.at(-1) : first;
  if (document === undefined) return;
  const textDocument = { uri: document.uri };
  switch (one.kind) {
    case 'edit': {
      const contentChanges = one.edits.map((edit) => {
        const range = rangeIn(document.text, edit);
        write(document, replaced(document.text, range, edit.written));
        return { range, text: edit.written };
      });
      await change(client, document, contentChanges);
      return;
    }
    case 'paste':
      write(document, one.text);
      await change(client, document, [{ text: one.text }]);
      return;
    case 'undo':
      write(document, document.before);
      await change(client, document, [{ text: document.text }]);
      return;
    case 'look':
      await updateTokens(client, document);
      await updateDrawing(client, document);
      await pulled(client, document.uri);
      return;
    case 'reopen':
      await client.notify('textDocument/didClose', { textDocument });
      await client.open(document.uri, document.text, ++document.version);
  }
}

function write(document: Document, text: string): void {
  document.before = document.text;
  document.text = text;
}

async function change(client: Client, document: Document, contentChanges: readonly object[]): Promise<void> {
  document.version += 1;
  const { uri, version } = document;
  await client.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges });
}

const look = { view: 'colour', handling: true };

async function updateDrawing(client: Client, document: Document): Promise<void> {
  const { uri, drawing: before } = document;
  const asked = { textDocument: { uri }, ...look, known: before?.id ?? 0 };
  const answer = await client.request<WholeScene | ChangedScene | null>('mahlstick/scene', asked);
  if (answer === null) return;
  const scene = toldScene(answer, before?.scene);
  assert(scene !== undefined, 'a change of the drawing that there is');
  document.drawing = { id: answer.id ?? 0, scene };
}

async function updateTokens(client: Client, document: Document): Promise<void> {
  const textDocument = { uri: document.uri };
  const { id, data } = document.tokens;
  const answer =
    id === undefined
      ? await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument })
      : await client.request<SemanticTokens | SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
          textDocument,
          previousResultId: id,
        });
  document.tokens = { id: answer.resultId, data: tokensAfter(data, answer) };
}

/** The diagnostics, asked for again as long as the plan changes meanwhile, as an editor does. */
async function pulled(client: Client, uri: string): Promise<unknown> {
  for (;;) {
    try {
      const report = await client.request<{ readonly items: unknown }>('textDocument/diagnostic', {
        textDocument: { uri },
      });
      return report.items;
    } catch (error) {
      if (!(error instanceof Error) || !/has changed/u.test(error.message)) throw error;
    }
  }
}

/** All answers once nothing is on its way any more: files have been read, and mixtures found. */
async function answersOf(
  client: Client,
  documents: readonly Document[],
  steps: readonly Step[],
): Promise<Readonly<Record<string, unknown>>> {
  let changes = -1;
  let seen = 0;
  client.connection.onNotification('mahlstick/planChanged', () => {
    seen++;
  });
  while (changes !== seen) {
    changes = seen;
    for (const { uri } of documents) {
      await pulled(client, uri);
      // It waits for all mixtures, and makes nothing here.
      await client.request('mahlstick/export', { textDocument: { uri }, what: 'drawing', format: 'svg' });
      await client.request('workspace/symbol', { query: '' });
    }
    // Files of photographs are fetched a while after they are asked for, and the plan is told to be another when they
    // are known.
    if (documents.some(({ text }) => text.includes('photo'))) await delay(2 * SETTLE_MILLISECONDS);
  }
  const answers: Record<string, unknown> = {};
  for (const { uri, text, version } of documents) {
    const edited = steps.flatMap((one) => (one.kind === 'edit' ? one.edits : [])).slice(-4);
    const places = [...edited.map((edit) => placeOf(text, edit)), { line: 5, character: 9 }];
    const asked = await everythingAsked(client, uri, version, places);
    for (const [question, answer] of Object.entries(asked)) answers[`${uri} ${question}`] = answer;
    answers[`${uri} diagnostics`] = await pulled(client, uri);
  }
  return answers;
}
