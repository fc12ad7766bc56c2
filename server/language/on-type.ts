import type { Position, TextEdit } from 'vscode-languageserver-types';
import { formatWords, opensBlock, type Node } from '../../grammar/index.js';
import { indentOf } from '../findings/text-changes.js';
import { minimalEdits } from './edits.js';
import { nodeAt } from './places.js';
import type { Snapshot } from './snapshot.js';
import { emptyRangeAt } from './text.js';

/** How a client indents. */
export interface Indenting {
  readonly tabSize: number;
  readonly insertSpaces: boolean;
}

/**
 * After Enter: the line above is finished and takes its usual form where it stands, and below one that opens a block
 * the new line goes a step in, unless the editor has seen to that. Nothing else is touched.
 */
export function onTypeEdits(
  { tree, lines }: Snapshot,
  { line, character }: Position,
  indenting: Indenting,
): readonly TextEdit[] {
  const finished = line - 1;
  const written = lines[finished];
  if (written === undefined || written.trim() === '') return [];
  const indent = indentOf(written);
  const form = minimalEdits(written, indent + formatWords(tree, finished)).map(
    ({ range: { start, end }, newText }) => ({
      range: {
        start: { line: finished, character: start.character },
        end: { line: finished, character: end.character },
      },
      newText,
    }),
  );
  const node = nodeAt(tree, finished);
  const current = lines[line] ?? '';
  const isWanting = current.trim() === '' && current.length <= indent.length && character >= current.length;
  if (node === undefined || !wantsMore(node) || !isWanting) return form;
  // A line goes on as it begins, whatever the editor is set to: tabs and spaces in one are hard to tell apart.
  const isTabbed = indent.includes('\t') || (indent === '' && !indenting.insertSpaces);
  const step = isTabbed ? '\t' : ' '.repeat(Math.min(8, Math.max(1, indenting.tabSize)));
  const newText = (indent + step).slice(current.length);
  return [...form, { range: emptyRangeAt(line, current.length), newText }];
}

/** A shape goes on below only where its points do, and a division where its lines are one's own. */
function wantsMore({ statement }: Node): boolean {
  if (statement.kind === 'divide') return statement.systems.some(({ choice }) => choice === 'own');
  if (statement.kind === 'shape') return ['outline', 'smooth'].includes(statement.shape.form);
  return opensBlock(statement.kind);
}
