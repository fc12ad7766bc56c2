import {
  DocumentHighlightKind,
  type DocumentHighlight,
  type LocationLink,
  type Position,
} from 'vscode-languageserver-types';
import { definitionOf, nameAt, usesOf } from './names.js';
import type { Snapshot } from './snapshot.js';
import { rangeOf } from './text.js';

/** Where the name under the caret is defined: one place, or none. */
export function definition(
  { names, uri }: Snapshot,
  { line, character }: Position,
): LocationLink | undefined {
  const name = nameAt(names, line, character);
  const found = name && definitionOf(names, name.kind, name.key);
  if (name === undefined || found === undefined) return undefined;
  const { node, location } = found;
  return {
    originSelectionRange: rangeOf(name.location),
    targetUri: uri,
    targetRange: {
      start: { line: node.line, character: node.statement.start },
      end: rangeOf({ ...location, end: node.statement.end }).end,
    },
    targetSelectionRange: rangeOf(location),
  };
}

/** The definition (as a written place) and all uses (as read ones) of the name under the caret. */
export function highlights({ names }: Snapshot, { line, character }: Position): readonly DocumentHighlight[] {
  const name = nameAt(names, line, character);
  if (name === undefined) return [];
  const written = names.definitions.filter(({ kind, key }) => kind === name.kind && key === name.key);
  return [
    ...written.map(({ location }) => ({ range: rangeOf(location), kind: DocumentHighlightKind.Write })),
    ...usesOf(names, name.kind, name.key).map(({ location }) => ({
      range: rangeOf(location),
      kind: DocumentHighlightKind.Read,
    })),
  ].sort(
    (a, b) => a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character,
  );
}
