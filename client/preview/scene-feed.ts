import type { Scene, View } from '../../server/drawing/scene.js';
import { type SceneChange, toldScene } from '../../server/drawing/scene-change.js';
import type { ChangedScene, WholeScene } from '../../server/language/protocol.js';
import type { Look } from './look.js';

export interface SceneFeedHost {
  /**
   * Asks the server, which may tell what is another than in the drawing of the id `known`, 0 for none; `null` when it
   * does not know the plan. Rejects when it is gone.
   */
  readonly ask: (look: Look, known: number) => Promise<WholeScene | ChangedScene | null>;
  readonly deliver: (delivery: Delivery) => void;
  readonly failed: (error: unknown) => void;
}

/** A drawing for the page. */
export interface Delivery {
  /** Counts up with each scene. */
  readonly epoch: number;
  readonly version: number;
  readonly scene: Scene;
  /** What makes the scene of the one delivered before, where that was the same view of the same document. */
  readonly change?: SceneChange;
}

/** The last drawing that was delivered. */
export interface Delivered extends Omit<Delivery, 'change'> {
  /** What the server knows it by. */
  readonly id: number;
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
  #last: Delivered | undefined;

  constructor(look: Look, host: SceneFeedHost) {
    this.#look = look;
    this.#host = host;
  }

  get look(): Look {
    return this.#look;
  }

  /** The drawing that the page has. */
  get delivered(): Delivered | undefined {
    return this.#last;
  }

  show(look: Look): void {
    this.#look = look;
    this.refresh();
  }

  /** The plan, or a file that it names, is another than before. */
  refresh(): void {
    if (this.#stopped) return;
    this.#wanted = true;
    if (!this.#asking) void this.#work();
  }

  /** The page has lost what it was given: it is given a whole drawing next. */
  forget(): void {
    this.#last = undefined;
  }

  /** The plan is another document than before, or was opened anew: its versions begin again. */
  begin(): void {
    this.#document += 1;
    this.forget();
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
      const before = this.#last;
      try {
        const answer = await this.#host.ask(look, before?.id ?? 0);
        if (answer !== null && document === this.#document) this.#take(look.view, answer, before);
      } catch (error) {
        if (!this.#stopped) this.#host.failed(error);
      }
    }
    this.#asking = false;
  }

  #take(view: View, answer: WholeScene | ChangedScene, before: Delivered | undefined): void {
    const { version, id = 0 } = answer;
    const overtaken = this.#last?.scene.view === view && version < this.#last.version;
    if (this.#stopped || view !== this.#look.view || overtaken) return;
    const change = 'change' in answer ? answer.change : undefined;
    const scene = toldScene(answer, before?.scene);
    if (scene === undefined) {
      this.forget();
      this.#wanted = true;
      return;
    }
    const isNext = change !== undefined && before === this.#last;
    this.#epoch += 1;
    const delivery = { epoch: this.#epoch, version, scene };
    this.#last = { ...delivery, id };
    this.#host.deliver(isNext ? { ...delivery, change } : delivery);
  }
}
