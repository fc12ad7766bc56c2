import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { statements } from '../../grammar/index.js';
import { findingsReference } from '../findings/reference.js';
import { rules } from '../findings/rules.js';
import { findingPage, slugOf, statementPage } from './reference.js';

/** The anchors of a page: those written out, and those that Markdown gives headings. */
function anchorsOf(markdown: string): ReadonlySet<string> {
  const headings = [...markdown.matchAll(/^#+ (.+)$/gmu)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );
  const written = [...markdown.matchAll(/<a id="([^"]+)">/gu)].map(([, id = '']) => id);
  return new Set([...headings, ...written]);
}

test('every keyword has a place in the reference of the language', () => {
  const page = readFileSync(path.resolve(import.meta.dirname, '../../grammar/README.md'), 'utf8');
  const anchors = anchorsOf(page);
  const keywords = new Set(statements.map(({ words }) => words.join(' ')).filter((words) => words !== ''));
  expect([...keywords].filter((keyword) => !anchors.has(slugOf(keyword)))).toEqual([]);
});

test('every rule has a place in the reference of findings', () => {
  const anchors = anchorsOf(findingsReference());
  expect(rules.filter(({ id }) => !anchors.has(slugOf(id)))).toEqual([]);
});

test('addresses begin where the client or the installation says, and nowhere without either', () => {
  expect(statementPage('file:///ext/', 'win by')).toBe('file:///ext/grammar/README.md#win-by');
  expect(findingPage('file:///ext', 'value budget')).toBe(
    'file:///ext/server/findings/README.md#value-budget',
  );
  expect(findingPage(undefined, 'value budget')).toBeUndefined();
});
