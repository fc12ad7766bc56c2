import { scrollShares } from './zoom-steps.js';

/** Of something large so many pixels are enough to be seen. */
const ENOUGH_PIXELS = 24;

/**
 * Scrolls to something in the drawing that is out of sight, and leaves the focus and all that is in sight where it is.
 * @param box the drawing, which scrolls when it is larger than its place
 * @param covered pixels at the top of the page that lie under the bar
 * @param alsoPage whether the page may be scrolled too, or only the box
 */
export function bringIntoSight(item: Element, box: HTMLElement, covered: number, alsoPage: boolean): void {
  const place = item.getBoundingClientRect();
  const around = box.getBoundingClientRect();
  // What is not drawn, or is in a page that is hidden, has no place.
  if ((place.width === 0 && place.height === 0) || around.width === 0) return;
  const top = Math.max(around.top, alsoPage ? covered : around.top);
  const bottom = Math.min(around.bottom, alsoPage ? window.innerHeight : around.bottom);
  const left = away(place.left, place.right, around.left, around.left + box.clientWidth);
  const down = away(place.top, place.bottom, top, bottom);
  if (left === 0 && down === 0) return;
  const shares = scrollShares(down, box.scrollTop, box.scrollHeight - box.clientHeight);
  const behavior = window.matchMedia('(prefers-reduced-motion: reduce)').matches ? 'instant' : 'smooth';
  box.scrollBy({ left, top: shares.box, behavior });
  if (alsoPage && shares.page !== 0) window.scrollBy({ top: shares.page, behavior });
}

/** How far the middle of a stretch lies from that of what is in sight; nothing where enough of it is seen. */
export function away(from: number, to: number, first: number, last: number): number {
  const seen = Math.min(to, last) - Math.max(from, first);
  // A line has no breadth: it is seen when it lies within.
  if (seen >= Math.min(ENOUGH_PIXELS, to - from) && seen >= 0) return 0;
  return (from + to) / 2 - (first + last) / 2;
}
