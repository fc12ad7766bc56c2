import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';
import { textMateGrammar } from '../../grammar/textmate.js';

/** For every column of a line, its innermost scope that is not punctuation or an escape. */
export type ScopesOf = (line: string) => readonly string[];

let loading: Promise<ScopesOf> | undefined;

/** The TextMate grammar as an editor reads it. */
export function textMateScopes(): Promise<ScopesOf> {
  loading ??= load();
  return loading;
}

async function load(): Promise<ScopesOf> {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await loadWASM(new Uint8Array(await readFile(wasm)).buffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: () => Promise.resolve(parseRawGrammar(JSON.stringify(textMateGrammar()), 'mahl.json')),
  });
  const grammar = await registry.loadGrammar('source.mahl');
  if (grammar === null) throw new Error('the grammar did not load');
  return (line) => {
    const columns: string[] = [];
    for (const { startIndex, endIndex, scopes } of grammar.tokenizeLine(line, INITIAL).tokens) {
      const scope = scopes.filter((name) => !/^source|escape/.test(name)).at(-1) ?? '';
      for (let column = startIndex; column < endIndex; column++) columns.push(scope);
    }
    return columns;
  };
}
