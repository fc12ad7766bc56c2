import { SymbolKind, type SymbolInformation } from 'vscode-languageserver-types';
import { URI, Utils } from 'vscode-uri';
import { nameKey } from '../../grammar/index.js';
import type { Surroundings } from './library.js';
import { flatSymbols } from './symbols.js';

/** So many are enough to see that more must be typed. */
const MOST = 500;

/**
 * What painters name: plans, objects, colours, paints, leads, groups and sittings. Other parts of a plan have no name
 * of their own.
 */
const named: ReadonlySet<SymbolKind> = new Set([
  SymbolKind.Module,
  SymbolKind.Object,
  SymbolKind.Constant,
  SymbolKind.Event,
  SymbolKind.EnumMember,
]);

/**
 * What is named in the known plans and holds the letters of the query in their order, each with the file that it is in.
 */
export function workspaceSymbols(query: string, { plans }: Surroundings): SymbolInformation[] {
  const letters = [...nameKey(query)].filter((letter) => letter.trim() !== '');
  const found = plans.flatMap((plan) => {
    const file = Utils.basename(URI.parse(plan.uri));
    return flatSymbols(plan)
      .filter(({ kind, name }) => named.has(kind) && holdsInOrder(nameKey(name), letters))
      .map((symbol) => ({ ...symbol, containerName: file }));
  });
  return found.slice(0, MOST);
}

function holdsInOrder(text: string, letters: readonly string[]): boolean {
  let from = 0;
  for (const letter of letters) {
    const at = text.indexOf(letter, from);
    if (at < 0) return false;
    from = at + letter.length;
  }
  return true;
}
