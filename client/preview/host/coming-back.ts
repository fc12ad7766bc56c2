/** From when on after a step the page is asked to take the focus, milliseconds. */
const asks = [0, 50, 150, 300, 600, 1_000] as const;

export interface ComingBackParts {
  /** Whether the editor takes the preview for what is worked in. */
  readonly isHere: () => boolean;
  /** Asks the page to take the focus if it has none, for the first time after a step or again. */
  readonly ask: (isFirst: boolean) => void;
}

/**
 * Brings the focus from the text back into the page. An editor that is asked for the preview while it is still on its
 * way to the text gives the focus, sooner or later, to what the page lies in alone, and keys are lost there. Only the
 * page sees that, and only the editor knows whether the focus has gone to the text again meanwhile, which is not to be
 * disturbed.
 */
export class ComingBack {
  readonly #parts: ComingBackParts;
  #timers: readonly ReturnType<typeof setTimeout>[] = [];

  constructor(parts: ComingBackParts) {
    this.#parts = parts;
  }

  begin(): void {
    this.end();
    const { isHere, ask } = this.#parts;
    let isFirst = true;
    this.#timers = asks.map((after) =>
      setTimeout(() => {
        if (!isHere()) return;
        ask(isFirst);
        isFirst = false;
      }, after),
    );
  }

  /** Asks no more: the focus is to go elsewhere. */
  end(): void {
    for (const timer of this.#timers) clearTimeout(timer);
    this.#timers = [];
  }
}
