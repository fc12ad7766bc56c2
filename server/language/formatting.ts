import type { Range, TextEdit } from 'vscode-languageserver-types';
import { format } from '../../grammar/index.js';
import { editsWithin, minimalEdits } from './edits.js';
import type { Snapshot } from './snapshot.js';

/** The edits that bring the plan, or the lines that the range touches, into its usual form. */
export function formattingEdits({ text }: Snapshot, range?: Range): readonly TextEdit[] {
  const edits = minimalEdits(text, format(text));
  return range === undefined ? edits : editsWithin(edits, range);
}
