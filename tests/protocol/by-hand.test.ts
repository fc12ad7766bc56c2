import { beforeAll, describe, expect, test } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-types';
import type { Refused, SceneResult, WrittenChange } from '../../server/language/protocol.js';
import { bundledServer } from './bundled.js';
import type { Client } from './server.js';

const uri = 'file:///studio/tram.mahl';
const text = `canvas 80 x 50 cm
focus upper right
object tram
  shape rectangle (40, 10) to (70, 30)  // number 5
`;

const start = bundledServer('file');
let client: Client;

beforeAll(async () => {
  ({ client } = start());
  await client.initialize({});
  await client.open(uri, text);
});

const move = { kind: 'move', grip: 'object:tram', to: { x: 56, y: 20 } };
const size = {
  kind: 'size',
  subject: 'object:tram',
  handle: 'lower right',
  to: { x: 72, y: 33 },
  keepsProportion: false,
};
const corner = { kind: 'sketch corner', corner: 'upper left', to: { x: 4, y: 2 }, width: 80, height: 60 };
const ask = (version: number, change: unknown, more: object = {}) => ({
  textDocument: { uri },
  version,
  change,
  ...more,
});
const write = (params: object): Promise<WrittenChange | Refused | null> =>
  client.request('mahlstick/writeChange', params);
const tryIt = (params: object): Promise<SceneResult | Refused | null> =>
  client.request('mahlstick/tryChange', params);

describe('a change by hand', () => {
  test('is offered with the drawing, tried, and written', async () => {
    const drawn = await client.request<SceneResult>('mahlstick/scene', {
      textDocument: { uri },
      view: 'drawing',
      handling: true,
    });
    expect(drawn.scene.handling?.grips.map(({ key, at }) => [key, at])).toEqual([
      ['object:tram', { x: 55, y: 20 }],
      ['focus', expect.anything()],
    ]);
    const tried = await tryIt(ask(1, move, { view: 'drawing' }));
    expect(tried).toMatchObject({ version: 1, scene: { view: 'drawing' } });
    const across = (character: number, newText: string): TextEdit => ({
      range: { start: { line: 3, character }, end: { line: 3, character: character + 2 } },
      newText,
    });
    expect(await write(ask(1, move))).toEqual({ version: 1, edits: [across(19, '41'), across(31, '71')] });
  });

  test('of a size is tried and written by a handle of the frame that the drawing offers', async () => {
    const drawn = await client.request<SceneResult>('mahlstick/scene', {
      textDocument: { uri },
      view: 'drawing',
      handling: true,
    });
    expect(drawn.scene.handling?.grips[0]?.frame).toEqual({
      middle: { x: 55, y: 20 },
      width: 30,
      height: 20,
      turn: 0,
    });
    const change = { ...size, to: { x: 72, y: 33 } };
    expect(await tryIt(ask(1, change, { view: 'values' }))).toMatchObject({
      version: 1,
      scene: { view: 'values', handling: { grips: [{ frame: { width: 32, height: 23 } }, {}] } },
    });
    const last = (character: number, newText: string): TextEdit => ({
      range: { start: { line: 3, character }, end: { line: 3, character: character + 2 } },
      newText,
    });
    expect(await write(ask(1, change))).toEqual({ version: 1, edits: [last(31, '72'), last(35, '33')] });
    const gone = { version: 1, refused: expect.stringMatching(/is not in the plan any more\.$/u) };
    expect(await write(ask(1, { ...change, subject: 'object:bus' }))).toEqual(gone);
  });

  test('of a sketch that the plan does not have is refused in words', async () => {
    const refused = { version: 1, refused: 'The plan has no sketch any more.' };
    expect(await write(ask(1, corner))).toEqual(refused);
  });

  test('is refused in words when the text is another, or what it is about is gone', async () => {
    const stale = { version: 7, refused: expect.stringMatching(/^The text has changed meanwhile/u) };
    expect(await write(ask(7, move))).toEqual(stale);
    expect(await tryIt(ask(7, move, { view: 'values' }))).toEqual(stale);
    const unknown = { version: 1, refused: expect.stringMatching(/is not in the plan any more\.$/u) };
    for (const grip of ['object:tarm', '', '__proto__', 'object:tram:point:1']) {
      expect(await write(ask(1, { ...move, grip }))).toEqual(unknown);
      expect(await tryIt(ask(1, { ...move, grip }, { view: 'drawing' }))).toEqual(unknown);
    }
  });

  test('of a document that is not open comes to nothing', async () => {
    const elsewhere = {
      ...ask(1, move, { view: 'drawing' }),
      textDocument: { uri: 'file:///studio/no.mahl' },
    };
    expect(await write(elsewhere)).toBeNull();
    expect(await tryIt(elsewhere)).toBeNull();
  });

  test.each([
    undefined,
    null,
    { kind: 'burn', grip: 'object:tram' },
    { ...move, to: { x: 'far', y: 2 } },
    { ...move, to: null },
    { ...move, grip: 7 },
    { ...move, grip: 'a'.repeat(2_000) },
    { kind: 'resize', subject: 'object:tram', factor: 0 },
    { ...size, handle: 'centre' },
    { ...size, keepsProportion: undefined },
    { ...corner, corner: 'middle left' },
    { ...corner, width: 0 },
    { kind: 'new line', form: 'lead', points: [{ x: 1, y: 2 }] },
    { kind: 'new line', form: 'outline', points: Array.from({ length: 501 }, () => ({ x: 1, y: 2 })) },
  ])('of the wrong form is refused: %j', async (change) => {
    await expect(write(ask(1, change))).rejects.toMatchObject({ code: -32602 });
    await expect(tryIt(ask(1, change, { view: 'drawing' }))).rejects.toMatchObject({ code: -32602 });
  });
});
