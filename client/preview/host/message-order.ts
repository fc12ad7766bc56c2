import type { FromPage } from '../messages.js';

/**
 * Whether messages of a page come in their turn: none before the page has said that it listens, no change made by hand
 * under a number that came before, no word of a copy that was not asked for. A page that is made anew begins anew.
 */
export class MessageOrder {
  #listens = false;
  #lastId = -1;
  #copies = 0;

  /** The page listens. */
  get listens(): boolean {
    return this.#listens;
  }

  /** The page is hidden or made anew: it says so itself when it listens again. */
  end(): void {
    this.#listens = false;
  }

  /** Takes note of a message, or says that it is out of order. */
  takes(message: FromPage): boolean {
    if (message.type === 'ready') {
      this.#listens = true;
      this.#lastId = -1;
      this.#copies = 0;
      return true;
    }
    if (!this.#listens) return false;
    switch (message.type) {
      case 'try':
      case 'write':
        if (message.id <= this.#lastId) return false;
        this.#lastId = message.id;
        return true;
      case 'copy':
        this.#copies += 1;
        return true;
      case 'copied':
        if (this.#copies === 0) return false;
        this.#copies -= 1;
        return true;
      default:
        return true;
    }
  }
}
