import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

const root = path.resolve(import.meta.dirname, '../..');
const saying = new Set(['t', 'marked', 'vscode.l10n.t']);

/** A sentence that the sources say in the language that is spoken. */
export interface SaidSentence {
  readonly english: string;
  /** `client/status.ts:28` */
  readonly place: string;
  /** How many values are given for its places; `undefined` where that is told elsewhere, as for one that is `marked`. */
  readonly values: number | undefined;
}

/**
 * The sentences that the sources below some folders say, tests left out.
 * @throws where one is not written out there, so that it can't be gathered
 */
export function saidSentences(folders: readonly string[]): readonly SaidSentence[] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
      .map((file) => path.join(folder, file).replaceAll(path.sep, '/'))
      // What says them is no sentence itself.
      .filter((file) => file !== 'grammar/localised.ts')
      .flatMap(saidIn),
  );
}

function saidIn(file: string): readonly SaidSentence[] {
  const text = readFileSync(path.join(root, file), 'utf8');
  if (![...saying].some((name) => text.includes(`${name}(`))) return [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const said: SaidSentence[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && saying.has(node.expression.getText(source))) {
      const [sentence, ...values] = node.arguments;
      const place = `${file}:${source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1}`;
      if (sentence === undefined || !ts.isStringLiteralLike(sentence))
        throw new Error(`${place}: a sentence is to be written out where it is said.`);
      const isMarked = node.expression.getText(source) === 'marked';
      said.push({ english: sentence.text, place, values: isMarked ? undefined : values.length });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return said;
}
