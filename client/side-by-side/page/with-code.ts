import { element } from '../../preview/elements.js';

/** A sentence with the names that stand between backticks set as words of a plan. */
export function withCode(sentence: string): readonly Node[] {
  return sentence
    .split(/`([^`]*)`/u)
    .map((piece, index) => (index % 2 === 0 ? document.createTextNode(piece) : element('code', {}, piece)));
}
