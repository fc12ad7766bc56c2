import { beforeAll, describe, expect, it } from 'vitest';
import { URI } from 'vscode-uri';
import { evaluatedBundle } from '../../tests/support/evaluated-bundle.js';
import { quietEditor } from '../../tests/support/quiet-editor.js';
import type { readBeforehand } from './beforehand.js';

describe('what is said beforehand of an export', () => {
  let read: typeof readBeforehand;
  beforeAll(async () => {
    const bundle = await evaluatedBundle('client/export/beforehand', 'client/extension.node');
    ({ readBeforehand: read } = bundle.evaluate(quietEditor().vscode) as { readBeforehand: typeof read });
  });

  const plan = URI.parse('file:///studio/jar.mahl');
  it.each([
    [{ what: 'notan', format: 'svg' }],
    [{ what: 'sittings', format: 'ics' }],
    [{ what: 'colour', format: 'png', width: 1600 }],
    [{ what: 'sheet', format: 'pdf' }],
    [{ what: 'pages', format: 'pdf', paper: 'A4', plan, file: plan }],
  ])('is taken: %j', (said) => {
    expect(read(said)).toEqual(said);
  });

  it.each([
    [undefined],
    [{ what: 'notan' }],
    [{ what: 'everything', format: 'svg' }],
    [{ what: 'colour', format: 'png' }],
    [{ what: 'colour', format: 'png', width: 1e9 }],
    [{ what: 'sheet', format: 'pdf', paper: 'A0' }],
    // A keybinding can say where in words alone.
    [{ what: 'notan', format: 'svg', file: '/studio/jar.svg' }],
  ])('is asked all the same: %j', (said) => {
    expect(read(said)).toBeUndefined();
  });
});
