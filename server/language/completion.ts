import {
  CompletionItemKind,
  InsertTextFormat,
  type CompletionItem,
  type Position,
  type Range,
} from 'vscode-languageserver-types';
import { statementsIn, type StatementEntry } from '../../grammar/index.js';
import type { Abilities } from './abilities.js';
import { caretAt, type Caret } from './caret.js';
import { candidatesFor, type Candidate } from './candidates.js';
import { statementMeaning } from './hover.js';
import { likeliestFirst } from './likeliest.js';
import { sentenceSlots, slotsFor, type Slot } from './slots.js';
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
  const style = styleFor(abilities.completionMarkdown, abilities.reference, abilities.drawings);
  const opened = openedStatements(caret);
  const openings = caret.inSentence ? [] : statementItems(snapshot, caret, style, abilities);
  const followers = opened.flatMap(({ entry, rest }) => followerItems(snapshot, caret, style, entry, rest));
  return inOrder(unique([...openings, ...followers]));
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
  { block, tokens, typed, column, line }: Caret,
  style: Style,
  { completionSnippets }: Abilities,
): readonly CompletionItem[] {
  const entries = likeliestFirst(tree, block, line).filter(
    ({ words }) => words.length > tokens.length && tokens.every(({ word }, index) => word === words[index]),
  );
  const start = tokens[0]?.start ?? typed.start;
  const range = { start: { line, character: start }, end: { line, character: column } };
  return entries.map((entry): CompletionItem => {
    const label = entry.words.join(' ');
    const snippet = completionSnippets ? snippets[entry.kind] : undefined;
    return {
      label,
      kind: CompletionItemKind.Keyword,
      detail: entry.form,
      documentation: contentOf(style, statementMeaning(entry, style)),
      textEdit: { range, newText: snippet ?? label },
      ...(snippet === undefined ? {} : { insertTextFormat: InsertTextFormat.Snippet }),
    };
  });
}

function followerItems(
  snapshot: Snapshot,
  caret: Caret,
  style: Style,
  entry: StatementEntry,
  rest: readonly string[],
): readonly CompletionItem[] {
  const slots = caret.inSentence ? sentenceSlots(entry.kind, rest) : slotsFor(entry.kind, rest);
  return slots.flatMap((slot) => {
    const range = rangeFor(slot, caret, entry);
    return candidatesFor(slot, snapshot, style, entry.kind)
      .filter(({ label }) => couldBecome(label, caret.typed.text))
      .map((candidate) => item(candidate, range));
  });
}

/** Editors match loosely, and would offer `figure 40` for the 40 of a width. */
function couldBecome(label: string, typed: string): boolean {
  return !/^\d/u.test(typed) || label.startsWith(typed);
}

/** What the item takes the place of: the word that is being typed, or all words of a name of several. */
function rangeFor(slot: Slot, { tokens, typed, line, column }: Caret, { words }: StatementEntry): Range {
  const first = slot.kind === 'rules' ? (tokens[words.length] ?? typed) : typed;
  return { start: { line, character: first.start }, end: { line, character: column } };
}

function item({ label, kind, detail, documentation, filterText }: Candidate, range: Range): CompletionItem {
  return {
    label,
    kind,
    ...(detail === undefined ? {} : { detail }),
    ...(documentation === undefined ? {} : { documentation }),
    ...(filterText === undefined ? {} : { filterText }),
    textEdit: { range, newText: label },
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
