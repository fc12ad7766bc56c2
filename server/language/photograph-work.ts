import { reasonInWords } from '../../grammar/localised.js';
import { marked } from '../../grammar/marked.js';
import type { NoPhotograph, SquaredAnswer } from '../measure/photograph/photographs.js';
import type { SquarePhotograph } from '../photograph/answers.js';
import { contentOf } from '../photograph/content.js';
import type { PictureBytes } from '../photograph/gather.js';
import { sizeOfPicture } from '../photograph/size.js';
import { type AskedPicture, type AskedPictures, plansOf, type Want } from './asked-pictures.js';
import type { PictureAnswers } from './picture-answers.js';

export interface PhotographWorkHost {
  /** Fetches a file by URI. It may reject; the painter is then told that the file can't be read. */
  readonly fetch: (uri: string, planUri: string) => Promise<PictureBytes>;
  /** Squares up one photograph at a time, away from what answers the editor. */
  readonly square: SquarePhotograph;
  /** Shows that photographs are being measured; `stop` is what the painter can do about it. */
  readonly show?: (stop: () => void) => MeasuringShown;
}

/** What is shown while photographs are measured. */
export interface MeasuringShown {
  /** `part` of all that is known to be done, 0 to 1. */
  readonly at: (path: string, part: number) => void;
  readonly end: () => void;
}

export interface PhotographWorkParts extends PhotographWorkHost {
  readonly pictures: AskedPictures;
  readonly answers: PictureAnswers;
  /** Plans by their URIs, the one edited last as the last. */
  readonly edited: ReadonlySet<string>;
  /** Another answer is known about these than before. */
  readonly known: (pictures: readonly AskedPicture[]) => void;
  /** How long it is waited for more to change before anything is read. */
  readonly settleMilliseconds: number;
}

/** Reads the pictures that plans ask for and measures what is wanted of them, one file after the other. */
export class PhotographWork {
  readonly #parts: PhotographWorkParts;
  #current: { readonly want: Want; readonly controller: AbortController } | undefined;
  #isRunning = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: PhotographWorkParts) {
    this.#parts = parts;
  }

  /** There may be something to do. */
  wake(): void {
    if (this.#isRunning) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#run(), this.#parts.settleMilliseconds);
  }

  /** Nothing is measured any more of what is still to be measured. */
  stop(): void {
    const left = this.#waiting;
    for (const picture of left) picture.isStopped = true;
    this.#current?.controller.abort();
    this.#parts.known(left);
  }

  /** Nobody asks for these any more. */
  letGo(unwanted: readonly Want[]): void {
    if (this.#current && unwanted.includes(this.#current.want)) this.#current.controller.abort();
  }

  get #waiting(): readonly AskedPicture[] {
    const { answers, pictures } = this.#parts;
    return pictures.all.filter((picture) => answers.areWanting(picture));
  }

  async #run(): Promise<void> {
    if (this.#isRunning) return;
    this.#isRunning = true;
    let shown: MeasuringShown | undefined;
    let done = 0;
    try {
      for (let next = this.#next(); next !== undefined; next = this.#next()) {
        const { path } = next;
        shown ??= this.#parts.show?.(() => this.stop());
        const all = done + this.#waiting.length;
        const before = done;
        await this.#work(next, (part) => shown?.at(path, (before + part) / all));
        done += 1;
      }
    } finally {
      shown?.end();
      this.#isRunning = false;
    }
  }

  /** Of the plan edited last, in the order in which it asked. */
  #next(): AskedPicture | undefined {
    const waiting = this.#waiting;
    const order = [...this.#parts.edited];
    const recency = (picture: AskedPicture): number =>
      Math.max(-1, ...[...plansOf(picture)].map((plan) => order.indexOf(plan)));
    const latest = Math.max(...waiting.map(recency));
    return waiting.find((picture) => recency(picture) === latest);
  }

  /** Reads a file and measures in it what is wanted of it. */
  async #work(picture: AskedPicture, report: (part: number) => void): Promise<void> {
    const { answers, fetch, known, pictures, square } = this.#parts;
    report(0);
    picture.isStale = false;
    const { uri } = picture;
    const [planUri = uri] = plansOf(picture);
    const read = await fetch(uri, planUri).catch(() => unreadable);
    if (!read.ok) {
      if (!picture.failure || reasonInWords(picture.failure.reason) !== reasonInWords(read.reason))
        picture.failure = read;
      picture.content = undefined;
      known([picture]);
      return;
    }
    picture.failure = undefined;
    picture.content = await contentOf(read.bytes);
    picture.measured = picture.size.askedBy.plans.length > 0 ? sizeOfPicture(read.bytes) : undefined;
    known([picture]);
    const { content } = picture;
    for (const [key, want] of [...picture.wants]) {
      const isWanted = picture.wants.has(key);
      if (picture.isStale || picture.isStopped || !isWanted || answers.squared(picture, want.squaring))
        continue;
      const controller = new AbortController();
      this.#current = { want, controller };
      const { signal } = controller;
      const answer = await square(read.bytes, want.squaring, { signal, progress: report, content }).catch(
        (): SquaredAnswer => unmeasurable,
      );
      this.#current = undefined;
      if (signal.aborted) continue;
      answers.keep(content, want.squaring, answer, pictures.ids);
      known([picture]);
    }
  }
}

const unreadable: NoPhotograph = { ok: false, reason: marked('This file could not be read.') };
const unmeasurable: NoPhotograph = { ok: false, reason: marked('This photograph could not be measured.') };
