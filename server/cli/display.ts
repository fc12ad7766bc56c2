/**
 * Controls, and marks that turn the direction of what follows: from a stranger's plan they could forge what a terminal
 * shows.
 */
const UNSAFE = /[\p{Cc}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]|\p{Cs}/gu;

/** Text that is safe to show on one line of a terminal: tabs become spaces, other controls a replacement character. */
export function shown(text: string): string {
  return text.replaceAll('\t', ' ').replace(UNSAFE, '\ufffd');
}

/** Full width scripts and most emoji; ranges after Unicode Standard Annex 11, simplified. */
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const MARK = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** How many columns of a terminal a text takes. */
export function cells(text: string): number {
  let count = 0;
  for (const character of text) count += MARK.test(character) ? 0 : WIDE.test(character) ? 2 : 1;
  return count;
}

export type Alignment = 'left' | 'right';

/** Rows under one another, columns two spaces apart; nothing stands behind the last word of a row. */
export function table(
  rows: readonly (readonly string[])[],
  alignments: readonly Alignment[],
  indent = '',
): string {
  const widths = alignments.map((_, column) => Math.max(0, ...rows.map((row) => cells(row[column] ?? ''))));
  const lines = rows.map((row) => {
    const padded = alignments.map((alignment, column) => {
      const cell = row[column] ?? '';
      const space = ' '.repeat((widths[column] ?? 0) - cells(cell));
      return alignment === 'right' ? space + cell : cell + space;
    });
    return (indent + padded.join('  ')).trimEnd();
  });
  return lines.map((line) => `${line}\n`).join('');
}

/** Colours of a terminal by what they are used for. */
export interface Inks {
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly hint: (text: string) => string;
  readonly strong: (text: string) => string;
  readonly quiet: (text: string) => string;
}

const SELECT = (code: number, end: number) => (text: string) => `\u001b[${code}m${text}\u001b[${end}m`;
const PLAIN = (text: string) => text;

const coloured: Inks = {
  error: SELECT(31, 39),
  warning: SELECT(33, 39),
  hint: SELECT(36, 39),
  strong: SELECT(1, 22),
  quiet: SELECT(2, 22),
};
const plain: Inks = { error: PLAIN, warning: PLAIN, hint: PLAIN, strong: PLAIN, quiet: PLAIN };

/** ECMA-48 colours, or none at all. */
export function inks(inColour: boolean): Inks {
  return inColour ? coloured : plain;
}
