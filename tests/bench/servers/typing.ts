import type { TextDocumentContentChangeEvent } from 'vscode-languageserver-protocol';

/** Where something stands in a document that is typed over, and what it becomes. */
export interface Typing {
  /** Finds the line, and groups what is typed over. */
  readonly where: RegExp;
  /** What it is after so many edits, of which there is one at least; always another than one edit before. */
  readonly after: (was: string, edits: number) => string;
}

const larger = (was: string, edits: number): string => (Number(was) + edits / 100).toFixed(2);

/** What is typed in documents of other kinds: a number. */
export const typedIn = {
  css: { where: /^ {2}margin: \d+px (\d+)/, after: larger },
  json: { where: /^ {6}"at": \[([\d.]+)/, after: larger },
  yaml: { where: /^ {4}at: \[([\d.]+)/, after: larger },
} as const satisfies Record<string, Typing>;

/** What is typed in plans, by what it is to a painter. */
export const typedInPlans = {
  'an object moved': { where: /^ {2}shape .* at \((-?[\d.]+)/, after: larger },
  'a value': {
    where: /^ {2}value {3}(\d)$/,
    after: (was, edits) => String(1 + ((Number(was) - 1 + edits) % 5)),
  },
  'a colour’s definition': {
    where: /^colour .* #[0-9a-f]{4}([0-9a-f]{2}) /,
    after: (was, edits) => ((Number.parseInt(was, 16) + edits) % 256).toString(16).padStart(2, '0'),
  },
  'a sentence': { where: /^concept "(.*)"$/, after: (was, edits) => `${was} ${edits}` },
} as const satisfies Record<string, Typing>;

/** A line of a document that is typed in, otherwise each time. */
export class TypedLine {
  #edits = 0;

  constructor(
    readonly line: number,
    /** What it is after so many edits. */
    readonly after: (edits: number) => string,
  ) {}

  /** Types once more. @returns what changes in the document */
  type(): TextDocumentContentChangeEvent {
    const { line } = this;
    const before = this.after(this.#edits);
    this.#edits += 1;
    return {
      range: { start: { line, character: 0 }, end: { line, character: before.length } },
      text: this.after(this.#edits),
    };
  }
}

/**
 * The line nearest to the middle of a text that has what is typed over.
 *
 * @throws {Error} where there is none
 */
export function typedLineOf(text: string, { where, after }: Typing): TypedLine {
  const lines = text.split('\n');
  const middle = Math.floor(lines.length / 2);
  const found = lines
    .map((content, line) => ({ content, line, match: where.exec(content) }))
    .filter(({ match }) => match !== null)
    .sort((one, other) => Math.abs(one.line - middle) - Math.abs(other.line - middle))[0];
  const [before = '', was = ''] = found?.match ?? [];
  if (found === undefined) throw new Error('there is no line to type in');
  const at = (found.match?.index ?? 0) + before.lastIndexOf(was);
  return new TypedLine(
    found.line,
    (edits) =>
      found.content.slice(0, at) +
      (edits === 0 ? was : after(was, edits)) +
      found.content.slice(at + was.length),
  );
}
