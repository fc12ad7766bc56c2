import { expect, it } from 'vitest';
import { evaluatedBundle } from '../../../tests/support/evaluated-bundle.js';
import { quietEditor } from '../../../tests/support/quiet-editor.js';
import { type ToPage, receiveInPage } from '../messages.js';
import type { PlanNews, PlanNewsParts } from './plan-news.js';

it('tells a page of a text that is no plan no more errors than the page takes', async () => {
  const place = { line: 1, character: 0 };
  const wrong = { source: 'mahlstick', code: 'text', message: 'This is no statement.', severity: 0 };
  const bundle = await evaluatedBundle('client/preview/host/plan-news', 'client/extension.node');
  const { vscode } = quietEditor({
    getDiagnostics: () =>
      Array.from({ length: 12_000 }, () => ({ ...wrong, range: { start: place, end: place } })),
    DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 },
    visibleTextEditors: [],
  });
  const { PlanNews: Made } = bundle.evaluate(vscode) as { PlanNews: new (parts: PlanNewsParts) => PlanNews };
  const posted: ToPage[] = [];
  const news = new Made({
    server: { versionOf: () => 3, onPlanDiagnosed: () => ({ dispose: () => undefined }) },
    uri: () => ({ scheme: 'untitled' }),
    post: (message: ToPage) => posted.push(message),
  } as unknown as PlanNewsParts);
  await news.tellAll();
  expect(posted[0]).toMatchObject({ type: 'findings', version: 3 });
  expect(receiveInPage(JSON.parse(JSON.stringify(posted[0]))).ok).toBe(true);
});
