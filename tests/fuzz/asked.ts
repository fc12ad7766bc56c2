import type {
  ColorInformation,
  Position,
  SemanticTokens,
  SemanticTokensDelta,
} from 'vscode-languageserver-protocol';
import { frameHandles, type Scene, views } from '../../server/drawing/scene.js';
import type { HandChange } from '../../server/language/hand/change.js';
import type { Client } from '../protocol/server.js';

/** All that an editor can ask of one document, in no particular state. */
export async function everythingAsked(
  client: Client,
  uri: string,
  version: number,
  places: readonly Position[],
): Promise<Readonly<Record<string, unknown>>> {
  const textDocument = { uri };
  const range = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
  const options = { tabSize: 2, insertSpaces: true };
  const ask = (method: string, params: object = {}): Promise<unknown> =>
    refusedOr(client.request(method, { textDocument, ...params }));
  const answers: Record<string, unknown> = {};
  for (const method of ['documentSymbol', 'foldingRange', 'documentColor', 'documentLink'])
    answers[method] = await ask(`textDocument/${method}`);
  answers['formatting'] = await ask('textDocument/formatting', { options });
  answers['rangeFormatting'] = await ask('textDocument/rangeFormatting', { range, options });
  answers['inlayHint'] = await ask('textDocument/inlayHint', { range });
  answers['codeAction'] = await ask('textDocument/codeAction', { range, context: { diagnostics: [] } });
  answers['tokens in a range'] = await ask('textDocument/semanticTokens/range', { range });
  answers['selectionRange'] = await ask('textDocument/selectionRange', { positions: places });
  answers['symbol'] = inAnyOrder(await ask('workspace/symbol', { query: 'a' }));
  for (const position of places) {
    const at = JSON.stringify(position);
    for (const method of ['hover', 'completion', 'definition', 'documentHighlight', 'prepareRename'])
      answers[`${method} at ${at}`] = await ask(`textDocument/${method}`, { position });
    answers[`references at ${at}`] = inAnyOrder(
      await ask('textDocument/references', { position, context: { includeDeclaration: true } }),
    );
    answers[`rename at ${at}`] = await ask('textDocument/rename', { position, newName: 'quite_new' });
    answers[`typing at ${at}`] = await ask('textDocument/onTypeFormatting', { position, ch: '\n', options });
  }
  for (const { range: where, color } of (answers['documentColor'] as readonly ColorInformation[]).slice(0, 3))
    answers[`colour at ${where.start.line}`] = await ask('textDocument/colorPresentation', {
      range: where,
      color,
    });
  for (const view of views) answers[`scene ${view}`] = await ask('mahlstick/scene', { view, handling: true });
  const drawn = answers['scene drawing'] as { readonly scene: Scene } | null;
  for (const change of drawn === null ? [] : changesOf(drawn.scene)) {
    const name = JSON.stringify(change);
    answers[`try ${name}`] = await ask('mahlstick/tryChange', { view: 'drawing', version, change });
    answers[`write ${name}`] = await ask('mahlstick/writeChange', { version, change });
  }
  return answers;
}

/** What is found in several plans comes in the order in which they were opened. */
function inAnyOrder(found: unknown): unknown {
  return Array.isArray(found) ? found.map((one) => JSON.stringify(one)).sort() : found;
}

/** A refusal is an answer as well. */
async function refusedOr(answer: Promise<unknown>): Promise<unknown> {
  try {
    return await answer;
  } catch (error) {
    return { refused: error instanceof Error ? error.message : String(error) };
  }
}

/** Some of what a hand can do in a drawing. */
function changesOf({ handling }: Scene): readonly HandChange[] {
  if (handling === undefined) return [];
  const { grips } = handling;
  const some = [...new Set([grips[0], grips.at(-1), grips[Math.floor(grips.length / 2)]])];
  const crossing = handling.guides.crossings[0];
  return [
    ...some.flatMap((grip): HandChange[] => {
      if (grip === undefined) return [];
      const to = { x: grip.at.x + 1.5, y: grip.at.y - 0.5 };
      return [
        { kind: 'move', grip: grip.key, to },
        ...(grip.frame === undefined
          ? []
          : frameHandles.slice(0, 1).map((handle) => ({
              kind: 'size' as const,
              subject: grip.subject,
              handle,
              to,
              keepsProportion: false,
            }))),
      ];
    }),
    ...Object.keys(handling.painted)
      .slice(0, 1)
      .flatMap((subject): HandChange[] => [
        { kind: 'value', subject, step: 2 },
        { kind: 'colour', subject, colour: '#336699' },
        { kind: 'resize', subject, factor: 1.25 },
      ]),
    { kind: 'new box', form: 'ellipse', from: { x: 1, y: 1 }, to: { x: 4, y: 3 } },
    ...(crossing === undefined ? [] : [{ kind: 'crossing' as const, name: crossing.name }]),
  ];
}

/** The tokens that a client has after an answer, given those that it had before. */
export function tokensAfter(
  before: readonly number[],
  answer: SemanticTokens | SemanticTokensDelta,
): readonly number[] {
  if ('data' in answer) return answer.data;
  const data = [...before];
  // Their places are those in the array as it was, so the last goes first.
  for (const { start, deleteCount, data: put = [] } of [...answer.edits].sort((a, b) => b.start - a.start))
    data.splice(start, deleteCount, ...put);
  return data;
}
