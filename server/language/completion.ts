import {
  CompletionItemKind,
  InsertTextFormat,
  type CompletionItem,
  type Position,
} from 'vscode-languageserver-types';
import { nameKey, speaking, statementsIn, type StatementEntry } from '../../grammar/index.js';
import type { Abilities } from './abilities.js';
import { caretAt, type Caret, type CaretToken } from './caret.js';
import { candidatesFor, type Candidate } from './candidates.js';
import { statementMeaning } from './hover.js';
import { likeliestFirst } from './likeliest.js';
import { offeredEdit } from './offered-edit.js';
import { listsEachOnce, sentenceSlots, slotsFor, type Slot } from './slots.js';
import { snippets } from './snippets.js';
import type { Snapshot } from './snapshot.js';
import { contentOf, styleFor, type Style } from './style.js';

/** What can be written at the caret: a statement, or the next word of one. */
export function completions(
  snapshot: Snapshot,
  position: Position,
  abilities: Abilities,
): readonly CompletionItem[] {
  const caret = caretAt(snapshot, position);
  if (caret === undefined) return [];
  return speaking(abilities.language, () => {
    const style = styleFor(abilities.completionMarkdown, abilities, abilities.drawings);
    const opened = openedStatements(caret);
    const openings = caret.inSentence ? [] : statementItems(snapshot, caret, style, abilities);
    const followers = opened.flatMap(({ entry, rest }) =>
      followerItems(snapshot, caret, style, abilities, entry, rest),
    );
    return inOrder(unique([...openings, ...followers]));
  });
}

interface Opened {
  readonly entry: StatementEntry;
  /** The words and signs behind the keyword. */
  readonly rest: readonly string[];
}

/** The statements that the words before the caret can open; a line of points has no keyword. */
function openedStatements({ block, tokens, inSentence }: Caret): readonly Opened[] {
  const all = tokens.map(({ word }) => word);
  return statementsIn(block)
    .filter(({ words }) => words.every((word, index) => word === all[index]))
    .filter(({ words }) => words.length > 0 || !inSentence)
    .map((entry) => ({ entry, rest: all.slice(entry.words.length) }));
}

/** The statements whose keyword can stand here, or be finished here. */
function statementItems(
  { tree }: Snapshot,
  caret: Caret,
  style: Style,
  abilities: Abilities,
): readonly CompletionItem[] {
  const { block, tokens, typed, line } = caret;
  const entries = likeliestFirst(tree, block, line).filter(
    ({ words }) => words.length > tokens.length && tokens.every(({ word }, index) => word === words[index]),
  );
  const first = tokens[0] ?? typed;
  return entries.map((entry): CompletionItem => {
    const label = entry.words.join(' ');
    const snippet = abilities.completionSnippets ? snippets[entry.kind] : undefined;
    return {
      label,
      kind: CompletionItemKind.Keyword,
      detail: entry.form,
      documentation: contentOf(style, statementMeaning(entry, style)),
      textEdit: offeredEdit({ label, newText: snippet ?? label, first }, caret, abilities),
      ...(snippet === undefined ? {} : { insertTextFormat: InsertTextFormat.Snippet }),
    };
  });
}

function followerItems(
  snapshot: Snapshot,
  caret: Caret,
  style: Style,
  abilities: Abilities,
  entry: StatementEntry,
  rest: readonly string[],
): readonly CompletionItem[] {
  const slots = caret.inSentence ? sentenceSlots(entry.kind, rest) : slotsFor(entry.kind, rest);
  const given = new Set(listsEachOnce.has(entry.kind) ? rest.map(nameKey) : []);
  return slots.flatMap((slot) => {
    const first = firstWord(slot, caret, entry);
    return candidatesFor(slot, snapshot, style, entry.kind)
      .filter(({ label }) => couldBecome(label, caret.typed.text) && !given.has(nameKey(label)))
      .map((candidate) => ({
        ...item(candidate),
        textEdit: offeredEdit({ label: candidate.label, newText: candidate.label, first }, caret, abilities),
      }));
  });
}

/** Editors match loosely, and would offer `figure 40` for the 40 of a width. */
function couldBecome(label: string, typed: string): boolean {
  return !/^\d/u.test(typed) || label.startsWith(typed);
}

/**
 * What the item takes the place of begins with the word that is being typed, or with the first of a name of several.
 */
function firstWord(slot: Slot, { tokens, typed }: Caret, { words }: StatementEntry): CaretToken {
  return slot.kind === 'rules' ? (tokens[words.length] ?? typed) : typed;
}

function item({ label, kind, detail, documentation, filterText }: Candidate): CompletionItem {
  return {
    label,
    kind,
    ...(detail === undefined ? {} : { detail }),
    ...(documentation === undefined ? {} : { documentation }),
    ...(filterText === undefined ? {} : { filterText }),
  };
}

/** Editors sort by name unless told otherwise, which would put step 10 before step 2. */
function inOrder(items: readonly CompletionItem[]): readonly CompletionItem[] {
  return items.map((one, index) => ({ ...one, sortText: String(index).padStart(5, '0') }));
}

function unique(items: readonly CompletionItem[]): readonly CompletionItem[] {
  const byLabel = new Map<string, CompletionItem>();
  for (const one of items) if (!byLabel.has(one.label)) byLabel.set(one.label, one);
  return [...byLabel.values()];
}
