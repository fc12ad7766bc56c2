import { beforeAll, describe, expect, it } from 'vitest';
import { evaluatedBundle } from '../../../tests/support/evaluated-bundle.js';
import { quietEditor } from '../../../tests/support/quiet-editor.js';
import type { ToPage } from '../messages.js';
import type { HandEdits, HandEditsParts } from './hand-edits.js';

const change = { kind: 'value', subject: 'object:jar', to: 3 } as unknown as Parameters<
  HandEdits['write']
>[0]['change'];
const line = '  value 2';
const planOf = (version: number) => ({
  uri: { scheme: 'untitled' },
  version,
  isClosed: false,
  lineCount: 1,
  lineAt: () => ({ text: line }),
});
const written = {
  version: 7,
  edits: [
    {
      range: { start: { line: 0, character: 8 }, end: { line: 0, character: line.length } },
      newText: '3',
    },
  ],
};

describe('a change by hand that is to be written', () => {
  let Made: new (parts: HandEditsParts) => HandEdits;
  beforeAll(async () => {
    const bundle = await evaluatedBundle('client/preview/host/hand-edits', 'client/extension.node');
    ({ HandEdits: Made } = bundle.evaluate(quietEditor().vscode) as { readonly HandEdits: typeof Made });
  });

  /** What the page is told of a change that an editor takes in this way. */
  async function told(
    edit: (plan: { version: number }) => Promise<boolean>,
  ): Promise<readonly ToPage['type'][]> {
    const posted: ToPage[] = [];
    const plan = planOf(7);
    const hand = new Made({
      server: { writeChange: () => Promise.resolve(written) },
      log: { debug: () => undefined },
      document: () => plan,
      editor: () => ({ edit: () => edit(plan) }),
      post: (message: ToPage) => posted.push(message),
    } as unknown as HandEditsParts);
    await hand.write({ id: 4, version: 7, change });
    expect(posted.map((message) => 'id' in message && message.id)).toEqual([4]);
    return posted.map(({ type }) => type);
  }

  it('is written by an editor that takes it', async () => {
    const taking = (plan: { version: number }) => {
      plan.version += 1;
      return Promise.resolve(true);
    };
    expect(await told(taking)).toEqual(['written']);
  });

  it('is refused by an editor that may only be read, or does not take it', async () => {
    expect(await told(() => Promise.resolve(true))).toEqual(['refused']);
    expect(await told(() => Promise.resolve(false))).toEqual(['refused']);
  });

  it('is answered too where the editor is closed meanwhile, so that the next one is written', async () => {
    expect(await told(() => Promise.reject(new Error('It is closed.')))).toEqual(['refused']);
  });
});
