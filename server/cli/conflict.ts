import type { Source } from './source.js';
import { spokenName } from './source.js';

/** What git writes into a text that it could not merge. */
const BEGINS = /^<{7}(?: |$)/u;
const ENDS = /^>{7}(?: |$)/u;

/** Says that a merge is not settled in a plan, and how its sides are compared; nothing where there is none. */
export function conflictSentence(
  { name, text }: Pick<Source, 'name' | 'text'>,
  /** The name is a path from the top of the repository, else from the current folder. */
  isFromTop = false,
): string | undefined {
  const lines = text.split(/\r\n|\r|\n/u);
  const first = lines.findIndex((line) => BEGINS.test(line));
  const last = lines.findIndex((line, index) => index > first && ENDS.test(line));
  if (first < 0 || last < 0) return undefined;
  const where = spokenName(name);
  const side = (number: number) => `":${number}:${isFromTop ? '' : './'}${name}"`;
  return (
    `${where} is in the middle of a merge: lines ${first + 1} to ${last + 1} hold both sides. ` +
    `Settle them first, or compare its sides with \`mahlstick compare ${side(2)} ${side(3)}\`.`
  );
}
