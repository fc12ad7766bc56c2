import type {
  NoPhotograph,
  Photographs,
  SizeAnswer,
  SquaredAnswer,
  Squaring,
} from '../measure/photograph/photographs.js';
import { marked } from '../../grammar/marked.js';
import type { SquarePhotograph } from '../photograph/answers.js';
import { contentOf, idOf } from '../photograph/content.js';
import type { PictureBytes } from '../photograph/gather.js';
import { sizeOfPicture } from '../photograph/size.js';
import { AskedBy, Computations } from './asked-by.js';
import { type AskedPicture, AskedPictures, plansOf, type Want } from './asked-pictures.js';
import { KeptAnswers } from './kept-answers.js';
import { contains, resolvePath, usualSpelling } from './paths.js';

export interface PlanPhotographsHost {
  /** Fetches a file by URI. It may reject; the painter is then told that the file can't be read. */
  readonly fetch: (uri: string, planUri: string) => Promise<PictureBytes>;
  /** Squares up one photograph at a time, away from what answers the editor. */
  readonly square: SquarePhotograph;
  readonly folders: () => readonly string[];
  /** These plans were given another answer than they would be given now. */
  readonly changed: (planUris: readonly string[]) => void;
  /** Changed files below the folders are told of. */
  readonly isTold: boolean;
  /** Shows that photographs are being measured; `stop` is what the painter can do about it. */
  readonly show?: (stop: () => void) => MeasuringShown;
  /** How long it is waited for more to change before anything is read. */
  readonly settleMilliseconds?: number;
}

export interface AskedPhotographs extends Photographs {
  /**
   * The same for a text that is only tried: it is answered with what is known, and nothing is read or measured for it.
   */
  readonly aside: Photographs;
}

/** What is shown while photographs are measured. */
export interface MeasuringShown {
  /** `part` of all that is known to be done, 0 to 1. */
  readonly at: (path: string, part: number) => void;
  readonly end: () => void;
}

/** Programs write a photograph in several goes, and painters a corner in several keys. */
export const SETTLE_MILLISECONDS = 200;

const stopped: NoPhotograph = {
  ok: false,
  reason: marked(
    'Measuring was stopped. It goes on when the plan is saved, or when this line or the photograph changes.',
  ),
};

/**
 * The photographs and sketches that open plans name. A plan asks and is answered at once, with `undefined` while a
 * picture is on its way; it is told when asking again would give another answer. One file is read and measured at a
 * time, that of the plan edited last first. What was measured is kept by the content of the file, so neither a new name
 * nor another line of the plan has it measured again.
 */
export class PlanPhotographs {
  readonly #host: PlanPhotographsHost;
  readonly #pictures = new AskedPictures();
  readonly #answers = new KeptAnswers();
  readonly #computations = new Computations();
  /** The plan edited last is the last. */
  readonly #edited = new Set<string>();
  #current: { readonly want: Want; readonly controller: AbortController } | undefined;
  #isRunning = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: PlanPhotographsHost) {
    this.#host = host;
  }

  /** What one computation of a plan asks. What was asked for in neither this nor the last one is let go. */
  photographsFor(planUri: string): AskedPhotographs {
    let computation: number | undefined;
    const begun = (): number => {
      if (computation === undefined) {
        computation = this.#computations.begin(planUri);
        this.#letGo(planUri, computation - 1);
      }
      return computation;
    };
    return {
      squared: (squaring) => {
        // What is let go goes first: a file that nobody has asked for yet would go with it.
        const now = begun();
        const found = this.#named(planUri, squaring.path);
        return 'ok' in found ? found : this.#squared(found, squaring, planUri, now);
      },
      sizeOf: (path) => {
        const now = begun();
        const found = this.#named(planUri, path);
        return 'ok' in found ? found : this.#sizeOf(found, planUri, now);
      },
      aside: {
        squared: (squaring) => {
          const known = this.#known(planUri, squaring.path);
          return known && this.#answerTo(known, squaring);
        },
        sizeOf: (path) => {
          const known = this.#known(planUri, path);
          return known && this.#sizeIn(known);
        },
      },
    };
  }

  /** The text of a plan has changed: what it names is wanted first. */
  edited(planUri: string): void {
    this.#edited.delete(planUri);
    this.#edited.add(planUri);
  }

  /** Reads again what is known of these files, and measures them if they hold something else than before. */
  reread(uris: Iterable<string>): void {
    for (const uri of uris) {
      const picture = this.#pictures.known(usualSpelling(uri));
      if (picture !== undefined) this.#renew(picture);
    }
  }

  /** The painter has saved a plan: what was stopped goes on, and files of whose changes nobody tells are read again. */
  rereadFor(planUri: string): void {
    for (const picture of this.#pictures.all) {
      const isTold =
        this.#host.isTold && this.#host.folders().some((folder) => contains(folder, picture.uri));
      if (plansOf(picture).has(planUri) && (picture.isStopped || !isTold)) this.#renew(picture);
    }
  }

  /**
   * A plan that is closed needs its pictures no more; what was measured is kept a while, in case it is opened again.
   */
  forget(planUri: string): void {
    this.#letGo(planUri, Number.POSITIVE_INFINITY);
    this.#computations.forget(planUri);
    this.#edited.delete(planUri);
  }

  /** The painter wants no more to be measured for now. */
  stop(): void {
    const left = this.#pictures.all.filter((picture) => this.#hasWork(picture));
    for (const picture of left) picture.isStopped = true;
    this.#current?.controller.abort();
    this.#tell(left);
  }

  #known(planUri: string, path: string): AskedPicture | undefined {
    const target = resolvePath(planUri, path, this.#host.folders());
    return target.ok ? this.#pictures.known(usualSpelling(target.uri)) : undefined;
  }

  #named(planUri: string, path: string): AskedPicture | NoPhotograph {
    const target = resolvePath(planUri, path, this.#host.folders());
    return target.ok ? this.#pictures.named(usualSpelling(target.uri), path, planUri) : target;
  }

  #squared(
    picture: AskedPicture,
    squaring: Squaring,
    planUri: string,
    computation: number,
  ): SquaredAnswer | undefined {
    const key = idOf('', squaring);
    let want = picture.wants.get(key);
    if (want === undefined) {
      want = { squaring, askedBy: new AskedBy(), given: undefined };
      picture.wants.set(key, want);
      // Another line than the one that was stopped.
      picture.isStopped = false;
    }
    want.askedBy.add(planUri, computation);
    want.given = this.#answerTo(picture, squaring);
    if (want.given === undefined) this.#wake();
    return want.given;
  }

  #sizeOf(picture: AskedPicture, planUri: string, computation: number): SizeAnswer | undefined {
    picture.size.askedBy.add(planUri, computation);
    picture.size.given = this.#sizeIn(picture);
    if (picture.size.given === undefined) {
      // It was read before anybody asked how large it is.
      if (picture.content !== undefined) picture.isStale = true;
      this.#wake();
    }
    return picture.size.given;
  }

  /** While a file is read again, what it held before still stands. */
  #answerTo(picture: AskedPicture, squaring: Squaring): SquaredAnswer | undefined {
    if (picture.failure !== undefined) return picture.failure;
    const known =
      picture.content === undefined ? undefined : this.#answers.use(idOf(picture.content, squaring));
    return known ?? (picture.isStopped ? stopped : undefined);
  }

  #sizeIn(picture: AskedPicture): SizeAnswer | undefined {
    return picture.failure ?? picture.measured ?? (picture.isStopped ? stopped : undefined);
  }

  #hasWork(picture: AskedPicture): boolean {
    if (picture.isStopped) return false;
    return (
      picture.isStale ||
      [...picture.wants.values()].some(({ squaring }) => !this.#answerTo(picture, squaring))
    );
  }

  #renew(picture: AskedPicture): void {
    picture.isStale = true;
    picture.isStopped = false;
    this.#wake();
  }

  #wake(): void {
    if (this.#isRunning) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#run(), this.#host.settleMilliseconds ?? SETTLE_MILLISECONDS);
  }

  async #run(): Promise<void> {
    if (this.#isRunning) return;
    this.#isRunning = true;
    let shown: MeasuringShown | undefined;
    let done = 0;
    for (let next = this.#next(); next !== undefined; next = this.#next()) {
      const picture = next;
      shown ??= this.#host.show?.(() => this.stop());
      const left = this.#pictures.all.filter((each) => this.#hasWork(each)).length;
      const report = (part: number): void => shown?.at(picture.path, (done + part) / (done + left));
      await this.#work(picture, report);
      done += 1;
    }
    shown?.end();
    this.#isRunning = false;
  }

  /** Of the plan edited last, in the order in which it asked. */
  #next(): AskedPicture | undefined {
    const waiting = this.#pictures.all.filter((picture) => this.#hasWork(picture));
    const order = [...this.#edited];
    const recency = (picture: AskedPicture): number =>
      Math.max(-1, ...[...plansOf(picture)].map((plan) => order.indexOf(plan)));
    const latest = Math.max(...waiting.map(recency));
    return waiting.find((picture) => recency(picture) === latest);
  }

  /** Reads a file and measures in it what is wanted of it. Never rejects. */
  async #work(picture: AskedPicture, report: (part: number) => void): Promise<void> {
    report(0);
    picture.isStale = false;
    const { uri } = picture;
    const [planUri = uri] = plansOf(picture);
    const read = await this.#host.fetch(uri, planUri).catch(() => unreadable);
    if (!read.ok) {
      if (picture.failure?.reason !== read.reason) picture.failure = read;
      picture.content = undefined;
      this.#tell([picture]);
      return;
    }
    picture.failure = undefined;
    picture.content = await contentOf(read.bytes);
    picture.measured = picture.size.askedBy.plans.length > 0 ? sizeOfPicture(read.bytes) : undefined;
    this.#tell([picture]);
    const { content } = picture;
    for (const [key, want] of [...picture.wants]) {
      const isWanted = picture.wants.has(key);
      if (picture.isStale || picture.isStopped || !isWanted || this.#answerTo(picture, want.squaring))
        continue;
      const controller = new AbortController();
      this.#current = { want, controller };
      const { signal } = controller;
      const answer = await this.#host
        .square(read.bytes, want.squaring, { signal, progress: report, content })
        .catch((): SquaredAnswer => unmeasurable);
      this.#current = undefined;
      if (signal.aborted) continue;
      this.#answers.keep(idOf(content, want.squaring), answer, this.#pictures.ids);
      this.#tell([picture]);
    }
  }

  /** Tells the plans that would now be answered otherwise. */
  #tell(pictures: readonly AskedPicture[]): void {
    const plans = new Set<string>();
    for (const picture of pictures) {
      for (const want of picture.wants.values()) {
        const answer = this.#answerTo(picture, want.squaring);
        if (answer === undefined || answer === want.given) continue;
        want.given = answer;
        want.askedBy.plans.forEach((plan) => plans.add(plan));
      }
      const size = this.#sizeIn(picture);
      if (size === undefined || isSameSize(size, picture.size.given)) continue;
      picture.size.given = size;
      picture.size.askedBy.plans.forEach((plan) => plans.add(plan));
    }
    if (plans.size > 0) this.#host.changed([...plans]);
  }

  #letGo(planUri: string, before: number): void {
    const unwanted = this.#pictures.letGo(planUri, before);
    if (this.#current && unwanted.includes(this.#current.want)) this.#current.controller.abort();
  }
}

const unreadable: NoPhotograph = { ok: false, reason: marked('This file could not be read.') };
const unmeasurable: NoPhotograph = { ok: false, reason: marked('This photograph could not be measured.') };

function isSameSize(one: SizeAnswer, other: SizeAnswer | undefined): boolean {
  if (one.ok && other?.ok === true) return one.width === other.width && one.height === other.height;
  return one === other;
}
