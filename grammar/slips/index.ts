import type { LineProblem } from '../phrases.js';
import { colourFunction, colourOfObject, munsellOrder, noHash } from './colours.js';
import {
  decimalComma,
  moveOrder,
  noBrackets,
  noHeight,
  oneCorner,
  otherUnit,
  splitIndex,
  stepRange,
  turnSense,
} from './numbers.js';
import { inchMarks, noQuotes, otherQuotes } from './quotes.js';
import type { Slip, Stumble } from './slip.js';
import { nameOfSeveralWords, needlessFrom, needlessSign, otherDate, twoFacts } from './words.js';

/** What newcomers write, in the order it is looked for: what is told by its signs before what is told by words. */
const slips: readonly Slip[] = [
  noHeight,
  inchMarks,
  otherQuotes,
  needlessSign,
  noQuotes,
  munsellOrder,
  colourFunction,
  noHash,
  colourOfObject,
  otherDate,
  splitIndex,
  stepRange,
  turnSense,
  moveOrder,
  needlessFrom,
  oneCorner,
  noBrackets,
  decimalComma,
  otherUnit,
  twoFacts,
  nameOfSeveralWords,
];

/** What was meant on a line that could not be read, where it shows a slip that is known. */
export function slipIn(stumble: Stumble): LineProblem | undefined {
  for (const slip of slips) {
    const problem = slip(stumble);
    if (problem !== undefined) return problem;
  }
  return undefined;
}
