import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { sourcesIn } from '../support/sources.js';

const root = path.resolve(import.meta.dirname, '../..');

/** Titles of fixes that are written out in one language. */
function bareTitlesIn(file: string): readonly string[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(path.join(root, file), 'utf8'),
    ts.ScriptTarget.Latest,
  );
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    ts.forEachChild(node, visit);
    if (!ts.isPropertyAssignment(node) || node.name.getText(source) !== 'title') return;
    if (ts.isStringLiteralLike(node.initializer) || ts.isTemplateExpression(node.initializer))
      found.push(`${file}: ${node.getText(source)}`);
  };
  visit(source);
  return found;
}

it('what a fix of the text does is said in the language of the reader', () => {
  expect(sourcesIn(root, ['grammar', 'server/plan', 'server/findings']).flatMap(bareTitlesIn)).toEqual([]);
});
