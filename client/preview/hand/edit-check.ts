import type { TextEdit } from 'vscode-languageserver-types';
import type { DocumentShape } from '../host/reveal.js';

/**
 * Whether edits that were worked out for `version` can be made in the document as it is now: `stale` when it has
 * another version, `outside` when it has no such place.
 */
export function checkEdits(
  document: DocumentShape,
  version: number,
  edits: readonly TextEdit[],
): 'here' | 'stale' | 'outside' {
  if (version !== document.version) return 'stale';
  const isInside = edits.every(({ range }) =>
    [range.start, range.end].every(
      ({ line, character }) => line < document.lineCount && character <= document.lineLength(line),
    ),
  );
  return isInside ? 'here' : 'outside';
}
