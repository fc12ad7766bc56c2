import { t } from '../localised.js';
import type { IToken } from 'chevrotain';
import type { LineProblem } from '../phrases.js';
import type { StatementEntry } from '../statements.js';

/** Where a line could not be read further. */
export interface Stumble {
  readonly entry: StatementEntry;
  /** The line without its comment. */
  readonly text: string;
  readonly tokens: readonly IToken[];
  /** Offset of the first word or sign that was not understood; the end of the text when something is missing. */
  readonly at: number;
  /** The phrases of the grammar that were to begin there, outermost first. */
  readonly phrases: readonly string[];
}

/** Tells what was meant where the line shows a common slip, or nothing when it is another one. */
export type Slip = (stumble: Stumble) => LineProblem | undefined;

/** A number as it is written in a place or a size. */
export const number = String.raw`-?(?:\d+(?:\.\d+)?|\.\d+)(?:\/\d+)?`;

/** What is not understood and all after it. */
export function restOf({ text, at }: Stumble): string {
  return text.slice(at);
}

/** The problem that `text` from `start` to `end` should be `replacement`. */
export function meant(
  start: number,
  end: number,
  message: string,
  replacement: string,
  code: LineProblem['code'] = 'unexpected text',
): LineProblem {
  const shown = replacement.trim();
  const title =
    shown === '' ? t('Take it out') : t('Write `{0}`', shown.length > 60 ? `${shown.slice(0, 59)}…` : shown);
  return { start, end, code, message, fix: { title, replacement } };
}

/** Offset of the token that stands before `at`, or `at` where none does. */
export function startOfTokenBefore({ tokens, at }: Stumble): number {
  return tokens.findLast(({ startOffset }) => startOffset < at)?.startOffset ?? at;
}
