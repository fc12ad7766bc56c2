import type { Node } from '../../grammar/index.js';
import type { OwnEdit, OwnFix } from './finding.js';

/** Zero-based; columns in UTF-16 code units. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** What is to stand in a stretch of the text; the end is exclusive. */
export interface TextChange {
  readonly from: TextPlace;
  readonly to: TextPlace;
  readonly text: string;
}

/**
 * The edits of a fix as changes of a text given as lines without their ends. Lines that are added are indented as the
 * block is that they come to, and end as `lineEnd` says.
 */
export function textChanges(
  { edits }: Pick<OwnFix, 'edits'>,
  lines: readonly string[],
  lineEnd: string,
): readonly TextChange[] {
  return edits.map((edit) => textChange(edit, lines, lineEnd));
}

/** A text after some changes, and where its places come to lie. */
export interface ChangedText {
  readonly text: string;
  /** A place that is itself replaced comes to lie at the start of what replaces it. */
  readonly onward: (place: TextPlace) => TextPlace;
}

/**
 * A text, given as lines without their ends, after changes that do not touch each other; of two at one place the
 * later stands later.
 */
export function changedText(lines: readonly string[], changes: readonly TextChange[]): ChangedText {
  const before = lines.join('\n');
  const starts = startsOf(lines);
  const offsetOf = ({ line, column }: TextPlace): number => (starts[line] ?? before.length) + column;
  const placed = changes
    .map(({ from, to, text }) => ({ from: offsetOf(from), to: offsetOf(to), text }))
    .sort((one, other) => one.from - other.from);
  let text = '';
  let read = 0;
  for (const change of placed) {
    text += before.slice(read, change.from) + change.text;
    read = change.to;
  }
  text += before.slice(read);
  const startsAfter = startsOf(text.split('\n'));
  const onward = (place: TextPlace): TextPlace => {
    const at = offsetOf(place);
    const after = placed.reduce((now, change) => {
      if (at >= change.to) return now + change.text.length - (change.to - change.from);
      return at > change.from ? now - (at - change.from) : now;
    }, at);
    const line = startsAfter.findLastIndex((start) => start <= after);
    return { line, column: after - (startsAfter[line] ?? 0) };
  };
  return { text, onward };
}

function startsOf(lines: readonly string[]): readonly number[] {
  let start = 0;
  return lines.map(({ length }) => {
    const here = start;
    start += length + 1;
    return here;
  });
}

function textChange(edit: OwnEdit, lines: readonly string[], lineEnd: string): TextChange {
  switch (edit.kind) {
    case 'replace': {
      const { line, start, end } = edit.location;
      return {
        from: { line, column: start },
        to: { line, column: end },
        text: edit.text.replace(/\n/gu, lineEnd),
      };
    }
    case 'add line': {
      const indent = blockIndent(edit.under, lines);
      const { at, before, after } = lineBelow(lines, edit.under.lastLine, indent, lineEnd);
      const text = indented(edit.text, indent, lineEnd);
      return { from: at, to: at, text: `${before}${text}${after}` };
    }
    case 'add statement':
      return atTheEnd(edit.text.split('\n'), lines, lineEnd);
    case 'take out line':
      return edit.line + 1 < lines.length
        ? { from: { line: edit.line, column: 0 }, to: { line: edit.line + 1, column: 0 }, text: '' }
        : {
            from: { line: edit.line, column: 0 },
            to: { line: edit.line, column: lines[edit.line]?.length ?? 0 },
            text: '',
          };
  }
}

/** Lines that follow the first one, set in as far as that. */
function indented(text: string, indent: string, lineEnd: string): string {
  return text.split('\n').join(`${lineEnd}${indent}`);
}

/** New lines below all others; a block of them has a blank line before it. */
function atTheEnd(added: readonly string[], lines: readonly string[], lineEnd: string): TextChange {
  const last = lines.findLastIndex((line) => line.trim() !== '');
  const line = Math.max(last, 0);
  const at = { line, column: lines[line]?.length ?? 0 };
  const before = last < 0 ? '' : lineEnd.repeat(added.length > 1 ? 2 : 1);
  const isEnded = last < lines.length - 1;
  return { from: at, to: at, text: `${before}${added.join(lineEnd)}${isEnded ? '' : lineEnd}` };
}

/** The white space that the lines of a statement's block start with. */
export function blockIndent({ line, file, children }: Node, lines: readonly string[]): string {
  const child = children.find((one) => one.file === file);
  return child === undefined ? `${indentOf(lines[line] ?? '')}  ` : indentOf(lines[child.line] ?? '');
}

/** Where a new line comes to stand, and what goes before and after its words to make it one. */
export interface NewLine {
  readonly at: TextPlace;
  readonly before: string;
  readonly after: string;
}

/** A new line below another; `before` goes before its words. */
export function lineBelow(lines: readonly string[], line: number, before: string, lineEnd: string): NewLine {
  const last = lines.length - 1;
  if (line < last) return { at: { line: line + 1, column: 0 }, before, after: lineEnd };
  return {
    at: { line: last, column: lines[last]?.length ?? 0 },
    before: lineEnd + before,
    after: '',
  };
}

/** The white space that a line starts with. */
export function indentOf(line: string): string {
  return /^[ \t]*/u.exec(line)?.[0] ?? '';
}
