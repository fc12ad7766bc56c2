import type { View } from '../../server/drawing/scene.js';
import type { SceneResult } from '../../server/language/protocol.js';
import type { Look } from './look.js';

export interface SceneFeedHost {
  /** Asks the server; `null` when it does not know the plan. Rejects when it is gone. */
  readonly ask: (look: Look) => Promise<SceneResult | null>;
  /** `epoch` counts up with each scene. */
  readonly deliver: (epoch: number, result: SceneResult) => void;
  readonly failed: (error: unknown) => void;
}

/**
 * Keeps a page supplied with the latest drawing: one request at a time, and one more when the plan has changed
 * meanwhile, so that fast typing neither piles up requests nor stops the drawing. An answer for a view that is no
 * longer shown, of another document, or older than one already delivered, is dropped.
 */
export class SceneFeed {
  readonly #host: SceneFeedHost;
  #look: Look;
  #asking = false;
  #wanted = false;
  #stopped = false;
  #epoch = 0;
  /** Counts the documents: versions of one say nothing of another. */
  #document = 0;
  #last: { readonly view: View; readonly version: number } | undefined;

  constructor(look: Look, host: SceneFeedHost) {
    this.#look = look;
    this.#host = host;
  }

  get look(): Look {
    return this.#look;
  }

  show(look: Look): void {
    this.#look = look;
    this.refresh();
  }

  /** The plan, or a file that it names, is another than before; or the page has lost what it was given. */
  refresh(): void {
    if (this.#stopped) return;
    this.#wanted = true;
    if (!this.#asking) void this.#work();
  }

  /** The plan is another document than before, or was opened anew: its versions begin again. */
  begin(): void {
    this.#document += 1;
    this.#last = undefined;
    this.refresh();
  }

  stop(): void {
    this.#stopped = true;
  }

  async #work(): Promise<void> {
    this.#asking = true;
    while (this.#wanted && !this.#stopped) {
      this.#wanted = false;
      const look = this.#look;
      const document = this.#document;
      try {
        const result = await this.#host.ask(look);
        if (result !== null && document === this.#document) this.#take(look.view, result);
      } catch (error) {
        if (!this.#stopped) this.#host.failed(error);
      }
    }
    this.#asking = false;
  }

  #take(view: View, result: SceneResult): void {
    const overtaken = this.#last?.view === view && result.version < this.#last.version;
    if (this.#stopped || view !== this.#look.view || overtaken) return;
    this.#last = { view, version: result.version };
    this.#epoch += 1;
    this.#host.deliver(this.#epoch, result);
  }
}
