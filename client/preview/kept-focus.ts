/**
 * Gives the focus back, whenever the page gets it, to what had it last. An editor takes it away for a moment to undo a
 * step, say, and leaves it nowhere in the page.
 */
export function keepFocus(): void {
  let last: EventTarget | null = null;
  document.addEventListener('focusin', ({ target }) => (last = target));
  // A click beside everything is to leave it.
  document.addEventListener('pointerdown', () => (last = null), true);
  window.addEventListener('focus', () => {
    const isNowhere = document.activeElement === document.body;
    if (isNowhere && (last instanceof HTMLElement || last instanceof SVGElement)) {
      last.focus({ preventScroll: true });
    }
  });
}
