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

/** From when on the page looks whether it has the focus, milliseconds. */
const looks = [0, 50, 150, 300, 600, 1_000] as const;

/**
 * Takes the focus for the page, where the editor has given it to what the page lies in alone: it does so when it is asked for
 * the page while it is still on its way to the text.
 */
export function takeFocus(): void {
  for (const after of looks) {
    setTimeout(() => {
      if (!document.hasFocus()) window.focus();
    }, after);
  }
}
