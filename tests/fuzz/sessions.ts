import assert from 'node:assert/strict';
import type { Session } from '../support/command-line.js';

/**
 * What no terminal is to be given: controls but the end of a line, signs that turn the line round, halves of
 * characters.
 */
const FORGING = /(?!\n)\p{Cc}|[\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]|\p{Cs}/u;

/** Holds a command that has ended to how commands end, whatever they are given: with a code, and in words. */
export function holdSession(ended: Session): void {
  holdEnding(ended);
  holdNothingForged(ended.output);
}

/** The same of a command that prints for a program. */
export function holdEnding({ code, output, complaints, errors }: Session): void {
  assert(code === 0 || code === 1 || code === 2, `ended with ${code}`);
  for (const complaint of complaints) assert.match(complaint, /[.?`]$|\n$/u, 'a complaint is a sentence');
  assert(code !== 2 || complaints.length > 0 || output !== '', 'refused without a reason');
  holdNothingForged(errors);
}

/** Holds what goes to a terminal to letters that can be seen. */
function holdNothingForged(words: string): void {
  const found = FORGING.exec(words);
  if (found === null) return;
  const around = words.slice(Math.max(0, found.index - 40), found.index + 40);
  assert.fail(`a terminal is given ${JSON.stringify(found[0])}: ${JSON.stringify(around)}`);
}
