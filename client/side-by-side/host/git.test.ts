import { beforeAll, describe, expect, it } from 'vitest';
import { URI } from 'vscode-uri';
import { evaluatedBundle } from '../../../tests/support/evaluated-bundle.js';
import { quietEditor } from '../../../tests/support/quiet-editor.js';
import type { PlanHistory } from './git.js';

interface Api {
  readonly getRepository: () => unknown;
}

describe('what git knows of a plan', () => {
  let historyOf: (api: Api, plan: URI, debug?: (told: string) => void) => Promise<PlanHistory | string>;
  beforeAll(async () => {
    const bundle = await evaluatedBundle('client/side-by-side/host/git', 'client/extension.node');
    historyOf = (api, plan, debug = () => undefined) => {
      const getExtension = () => ({ activate: () => Promise.resolve({ getAPI: () => api }) });
      const t = (sentence: string) => sentence;
      const made = bundle.evaluate(quietEditor({ getExtension, t }).vscode) as {
        readonly PlanHistory: typeof PlanHistory;
      };
      return made.PlanHistory.of(plan, { debug } as never);
    };
  });

  const plan = URI.from({ scheme: 'file', path: '/c:/studio/jar.mahl' });
  const repository = (top: string) => ({
    rootUri: URI.from({ scheme: 'file', path: top }),
    show: () => Promise.resolve('plan "A jar"'),
    log: () => Promise.reject(new Error('Nothing is committed.')),
  });

  it.each(['/C:/studio', '/c:/studio', '/c:/', '/C:/studio/'])(
    'is its text where the repository lies at %s',
    async (top) => {
      const history = await historyOf({ getRepository: () => repository(top) }, plan);
      expect(typeof history === 'string' ? history : await history.text('HEAD')).toBe('plan "A jar"');
    },
  );

  it('is nothing of a file outside the repository', async () => {
    const history = await historyOf({ getRepository: () => repository('/c:/stud') }, plan);
    expect(typeof history === 'string' ? history : await history.text('HEAD')).toBeUndefined();
  });

  it('is no version, and told of in the log, where git does not say', async () => {
    const told: string[] = [];
    const api = { getRepository: () => repository('/c:/studio') };
    const history = await historyOf(api, plan, (line) => told.push(line));
    expect(typeof history === 'string' ? history : await history.versions()).toEqual([]);
    expect(told).toEqual(['No versions: Error: Nothing is committed.']);
  });

  it('is a sentence where there is no repository', async () => {
    expect(await historyOf({ getRepository: () => null }, plan)).toContain('lies in no git repository');
  });
});
