/** The language of plans: text to tree, tree to text, and the words they are made of. */
export * from './syntax.js';
export { parse, usualTree } from './parse.js';
export { splitLines } from './lines.js';
export { format, formatWords, type FormatOptions } from './printer.js';
export {
  opensBlock,
  statements,
  statementsIn,
  statementsOpenedBy,
  type Block,
  type StatementEntry,
} from './statements.js';
export { canonicalWord, choiceLists, inQuotes } from './words.js';
export { isWord } from './tokens.js';
export { nearestWord } from './nearest.js';
export { nameIn, placesIn } from './place-uses.js';
export { classify, type ClassifiedText, type TextClass } from './classify.js';
export { marked, reasonInWords, said, speaking, spokenNow, t, type Sentences } from './localised.js';
export { reasonOf, type Reason } from './reason.js';
