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

/**
 * Takes the focus back for the page when the editor, which took it, asks for that: where it has given it to what the
 * page lies in alone. What is asked again is done until the page has had the focus for a while or something is done in
 * it, for what the focus then goes to, a list of commands say, is to keep it.
 */
export class FocusTaken {
  /** How often in turn the page had the focus already when it was asked. */
  #had = 0;
  #isSettled = true;

  constructor() {
    for (const done of ['keydown', 'pointerdown']) {
      document.addEventListener(done, () => (this.#isSettled = true), true);
    }
  }

  ask(isFirst: boolean): void {
    if (isFirst) {
      this.#had = 0;
      this.#isSettled = false;
    }
    if (this.#isSettled) return;
    this.#had = document.hasFocus() ? this.#had + 1 : 0;
    this.#isSettled = this.#had > 2;
    if (this.#had === 0) window.focus();
  }
}
