import { planFigure } from './plan-figure.js';

/** Figures by the words that they draw: a page is patched at every key, and most of its plans stay as they were. */
const drawn = new Map<string, HTMLElement>();
let count = 0;

/**
 * Puts a drawing in place of each fenced plan of the page. One that can't be drawn, which is a fault of ours, stays as
 * words.
 */
export function drawPlans(): void {
  for (const code of document.querySelectorAll<HTMLElement>('pre > code.language-mahl')) {
    // The words below a drawing are left as they are.
    if (code.closest('.mahlstick-plan') !== null) continue;
    const block = code.parentElement;
    const text = code.textContent;
    if (block === null || text.trim() === '') continue;
    try {
      block.replaceWith(figureOf(text, block.cloneNode(true)));
    } catch (error) {
      console.error(error);
    }
  }
  drawn.clear();
  for (const figure of document.querySelectorAll<HTMLElement>('.mahlstick-plan')) {
    const text = figure.querySelector('code')?.textContent;
    if (text !== undefined && text !== null) drawn.set(text, figure);
  }
}

function figureOf(text: string, words: Node): HTMLElement {
  const kept = drawn.get(text);
  // The same plan twice on a page needs two figures.
  if (kept !== undefined && !kept.isConnected) return kept;
  count += 1;
  return planFigure(text, count, words);
}
