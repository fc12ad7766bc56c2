import { beforeAll, describe, expect, it, vi } from 'vitest';
import { evaluatedBundle } from '../../../tests/support/evaluated-bundle.js';
import { quietEditor } from '../../../tests/support/quiet-editor.js';
import { sceneChange } from '../../../server/drawing/scene-change.js';
import type { SceneResult, TriedChange } from '../../../server/language/protocol.js';
import type { ToPage } from '../messages.js';
import type { Delivered } from '../scene-feed.js';
import { stillLife } from '../still-life.js';
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

let Made: new (parts: HandEditsParts) => HandEdits;
const run = vi.fn(() => Promise.resolve());
beforeAll(async () => {
  const bundle = await evaluatedBundle('client/preview/host/hand-edits', 'client/extension.node');
  const { vscode } = quietEditor({ executeCommand: run });
  ({ HandEdits: Made } = bundle.evaluate(vscode) as { readonly HandEdits: typeof Made });
});

describe('a step that is to be taken back', () => {
  const stepped = async (isShown: boolean) => {
    run.mockClear();
    const comeBack = vi.fn();
    const parts = { document: () => planOf(7), show: () => Promise.resolve(isShown) };
    await new Made(parts as unknown as HandEditsParts).step('undo', comeBack);
    return { comeBack };
  };

  it('is one of the text, which comes forward for that, and the drawing has the focus again', async () => {
    const { comeBack } = await stepped(true);
    expect(run.mock.calls).toEqual([['undo']]);
    expect(comeBack).toHaveBeenCalledTimes(1);
  });

  it('is none of another text, which is in front where this one can’t be shown', async () => {
    const { comeBack } = await stepped(false);
    expect(run).not.toHaveBeenCalled();
    expect(comeBack).not.toHaveBeenCalled();
  });
});

describe('a change by hand that is only tried', () => {
  const before: Delivered = { epoch: 5, version: 7, id: 2, scene: stillLife };
  const other = { ...stillLife, title: 'Another' };
  const difference = sceneChange(stillLife, other);

  /** What the page is told, which has one drawing when it asks and another perhaps when the server answers. */
  async function tried(answer: SceneResult | TriedChange, after = before): Promise<readonly ToPage[]> {
    const posted: ToPage[] = [];
    const drawn = vi.fn(() => after).mockReturnValueOnce(before);
    const tryChange = vi.fn(() => Promise.resolve(answer));
    const hand = new Made({
      server: { tryChange },
      log: { debug: () => undefined },
      document: () => planOf(7),
      look: () => ({ view: 'drawing' }),
      drawn,
      post: (message: ToPage) => posted.push(message),
    } as unknown as HandEditsParts);
    await hand.try({ id: 4, version: 7, change });
    expect(tryChange.mock.lastCall).toEqual([{ scheme: 'untitled' }, { view: 'drawing' }, 7, change, 2]);
    return posted;
  }

  it('is shown whole, or by what is another than in the drawing of the page', async () => {
    expect(await tried({ version: 7, scene: other })).toEqual([
      { type: 'tried', id: 4, version: 7, scene: other },
    ]);
    expect(await tried({ version: 7, change: difference })).toEqual([
      { type: 'tried change', id: 4, version: 7, epoch: 5, change: difference },
    ]);
  });

  it('is not shown where it is told by a drawing that the page has no more', async () => {
    const [told] = await tried({ version: 7, change: difference }, { ...before, epoch: 6 });
    expect(told).toMatchObject({ type: 'refused', id: 4, isStale: true });
  });
});

describe('a change by hand that is to be written', () => {
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
