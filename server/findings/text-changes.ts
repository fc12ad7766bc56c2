import type { Node } from '../../grammar/index.js';
import type { Fix, FixEdit } from './finding.js';

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
  { edits }: Fix,
  lines: readonly string[],
  lineEnd: string,
): readonly TextChange[] {
  return edits.map((edit) => textChange(edit, lines, lineEnd));
}

function textChange(edit: FixEdit, lines: readonly string[], lineEnd: string): TextChange {
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
      const { at, before, after } = lineBelow(
        lines,
        edit.under.lastLine,
        blockIndent(edit.under, lines),
        lineEnd,
      );
      return { from: at, to: at, text: `${before}${edit.text}${after}` };
    }
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

/** The white space that the lines of a statement's block start with. */
export function blockIndent({ line, children }: Node, lines: readonly string[]): string {
  const [child] = children;
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
