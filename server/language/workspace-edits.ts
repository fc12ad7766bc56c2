import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import type { Abilities } from './abilities.js';
import { usualSpelling } from './paths.js';

/** Edits of one text. */
export interface TextEdits {
  readonly uri: string;
  /** Of the document, when it is open. */
  readonly version?: number;
  readonly edits: readonly TextEdit[];
}

/**
 * Edits of several texts, naming the versions that they are for where the client can take that. Texts without edits are
 * left out, and the others are in the order of their names, whichever was opened first.
 */
export function workspaceEdit(texts: readonly TextEdits[], { versionedEdits }: Abilities): WorkspaceEdit {
  const edited = texts.filter(({ edits }) => edits.length > 0).sort(byUri);
  if (!versionedEdits)
    return { changes: Object.fromEntries(edited.map(({ uri, edits }) => [uri, [...edits]])) };
  return {
    documentChanges: edited.map(({ uri, version, edits }) => ({
      textDocument: { uri, version: version ?? null },
      edits: [...edits],
    })),
  };
}

function byUri({ uri: one }: TextEdits, { uri: other }: TextEdits): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

/** The edits of each text together, in the order in which the texts first come. */
export function byText<T>(
  places: readonly T[],
  textOf: (place: T) => Pick<TextEdits, 'uri' | 'version'>,
  editOf: (place: T) => TextEdit,
): readonly TextEdits[] {
  const texts = new Map<string, { text: Pick<TextEdits, 'uri' | 'version'>; edits: TextEdit[] }>();
  for (const place of places) {
    const text = textOf(place);
    const key = usualSpelling(text.uri);
    const known = texts.get(key);
    if (known === undefined) texts.set(key, { text, edits: [editOf(place)] });
    else known.edits.push(editOf(place));
  }
  return [...texts.values()].map(({ text: { uri, version }, edits }) => ({
    uri,
    ...(version === undefined ? {} : { version }),
    edits,
  }));
}
