import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

export interface SourceSentences {
  /** The English sentences, each with the files that say it, as they lie in the repository. */
  readonly files: ReadonlyMap<string, ReadonlySet<string>>;
  /** Calls whose sentence is not written out where it is said, so that nobody can translate it. */
  readonly unwritten: readonly string[];
  /** Calls that give more or fewer values than their sentence has places. */
  readonly miscounted: readonly string[];
}

/**
 * What sources say in the language of the reader: the first arguments of calls of `t` and `marked`, and of VS Code's
 * `l10n.t`.
 */
export function sentencesIn(root: string, sources: readonly string[]): SourceSentences {
  const files = new Map<string, Set<string>>();
  const unwritten: string[] = [];
  const miscounted: string[] = [];
  for (const file of sources) {
    const source = ts.createSourceFile(
      file,
      readFileSync(path.join(root, file), 'utf8'),
      ts.ScriptTarget.Latest,
    );
    const visit = (node: ts.Node): void => {
      ts.forEachChild(node, visit);
      if (!ts.isCallExpression(node) || !isSaying(node.expression, source)) return;
      const [sentence, ...values] = node.arguments;
      const call = `${file}: ${node.getText(source)}`;
      if (sentence === undefined || !ts.isStringLiteralLike(sentence)) {
        unwritten.push(call);
        return;
      }
      files.set(sentence.text, (files.get(sentence.text) ?? new Set()).add(file));
      // What is kept is given its values later.
      const isKept = node.expression.getText(source) === 'marked';
      const isSpread = values.some((value) => ts.isSpreadElement(value));
      if (!isKept && !isSpread && values.length !== placesOf(sentence.text).length) miscounted.push(call);
    };
    visit(source);
  }
  return { files, unwritten, miscounted };
}

function isSaying(called: ts.Expression, source: ts.SourceFile): boolean {
  if (ts.isIdentifier(called)) return called.text === 't' || called.text === 'marked';
  return ts.isPropertyAccessExpression(called) && /(?:^|\.)l10n\.t$/u.test(called.getText(source));
}

/** `{0}` and its like in a sentence, each once, in order. */
export function placesOf(sentence: string): readonly string[] {
  return [...new Set([...sentence.matchAll(/\{\d+\}/gu)].map(([place]) => place))].sort();
}
