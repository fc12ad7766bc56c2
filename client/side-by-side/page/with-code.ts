import { element } from '../../preview/elements.js';

/** A sentence with the names that stand between backticks set as words of a plan. */
export function withCode(sentence: string): readonly Node[] {
  return unbroken(sentence)
    .split(/`([^`]*)`/u)
    .map((piece, index) => (index % 2 === 0 ? document.createTextNode(piece) : element('code', {}, piece)));
}

/** Figures stay on one line with their unit. */
export function unbroken(text: string): string {
  return text.replaceAll(/(\d) (?=%|[×a-z]{1,2}\b)/gu, '$1\u00a0');
}
