import { marked } from '../../grammar/marked.js';
import type { NoPhotograph, SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';
import { type SquarePhotograph, type SquaringOptions, stopped } from './answers.js';

/** What a darkroom is asked for. */
export interface SquareOrder {
  readonly bytes: Uint8Array;
  readonly squaring: Squaring;
  readonly content?: string;
}

/** What it says: how far it is, and at last the answer. */
export type SquareNews = { readonly part: number } | { readonly answer: SquaredAnswer };

/** A thread of its own in which photographs are squared up, so that it can be ended whatever they hold. */
export interface Thread {
  readonly post: (order: SquareOrder) => void;
  readonly end: () => void;
}

export interface ThreadListener {
  readonly heard: (news: SquareNews) => void;
  /** It has ended by itself, or could not begin; may be told more than once, and of a thread that was ended. */
  readonly failed: () => void;
}

/** A photograph of a camera takes a second; what takes so long was made to. */
const LONGEST_MILLISECONDS = 120_000;
/** A thread that has nothing to do is ended after so long: it holds what its largest photograph took. */
const IDLE_MILLISECONDS = 20_000;

const tooLong: NoPhotograph = {
  ok: false,
  reason: marked(
    'This photograph took more than two minutes to measure and was given up. Save it anew, and smaller.',
  ),
};
const lost: NoPhotograph = {
  ok: false,
  reason: marked(
    'Measuring this photograph failed, perhaps for want of memory. Save it smaller: 3000 pixels across are plenty.',
  ),
};

/**
 * Squares up photographs in a thread, one at a time. The thread begins with the first and is begun anew when it was
 * ended.
 */
export class Darkroom {
  readonly #begin: (listener: ThreadListener) => Thread;
  readonly #longest: number;
  #thread: Thread | undefined;
  #listener: ThreadListener | undefined;
  #last: Promise<unknown> = Promise.resolve();
  #idle: Timer | undefined;

  constructor(begin: (listener: ThreadListener) => Thread, longestMilliseconds = LONGEST_MILLISECONDS) {
    this.#begin = begin;
    this.#longest = longestMilliseconds;
  }

  /** Never rejects. Aborted while it is at it, the thread is ended. */
  readonly square: SquarePhotograph = (bytes, squaring, options = {}) => {
    const turn = this.#last.then(() => this.#square(bytes, squaring, options));
    this.#last = turn;
    return turn;
  };

  /** Ends the thread; a photograph asked for later begins another. */
  close(): void {
    clearTimeout(this.#idle);
    this.#thread?.end();
    this.#thread = undefined;
    this.#listener?.failed();
  }

  async #square(
    bytes: Uint8Array,
    squaring: Squaring,
    { progress, signal, content }: SquaringOptions,
  ): Promise<SquaredAnswer> {
    if (signal?.aborted) return stopped;
    clearTimeout(this.#idle);
    const answer = await new Promise<SquaredAnswer>((resolve) => {
      const give = (given: SquaredAnswer): void => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', stop);
        this.#listener = undefined;
        resolve(given);
      };
      const giveUp = (reason: NoPhotograph): void => {
        this.#thread?.end();
        this.#thread = undefined;
        give(reason);
      };
      const stop = (): void => giveUp(stopped);
      const timer = setTimeout(() => giveUp(tooLong), this.#longest);
      signal?.addEventListener('abort', stop);
      this.#listener = {
        heard: (news) => ('answer' in news ? give(news.answer) : progress?.(news.part)),
        failed: () => giveUp(lost),
      };
      try {
        this.#thread ??= this.#begun();
        this.#thread.post({ bytes, squaring, ...(content === undefined ? {} : { content }) });
      } catch {
        giveUp(lost);
      }
    });
    this.#idle = unattended(setTimeout(() => this.close(), IDLE_MILLISECONDS));
    return answer;
  }

  /** What a thread said last may be heard only when it has been ended, and another works: then it is of no use. */
  #begun(): Thread {
    let isOver = false;
    const thread = this.#begin({
      heard: (news) => {
        if (!isOver) this.#listener?.heard(news);
      },
      failed: () => {
        if (isOver) return;
        isOver = true;
        this.#thread = undefined;
        this.#listener?.failed();
      },
    });
    return {
      post: thread.post,
      end: () => {
        isOver = true;
        thread.end();
      },
    };
  }
}

type Timer = ReturnType<typeof setTimeout>;

/** In node a timer keeps a process from ending; this one has nothing to wait for. */
function unattended(timer: Timer): Timer {
  if (typeof timer === 'object' && 'unref' in timer) timer.unref();
  return timer;
}
