import type {
  NoPhotograph,
  Photographs,
  SizeAnswer,
  SquaredAnswer,
  Squaring,
} from '../measure/photograph/photographs.js';
import type { SquarePhotograph } from '../photograph/answers.js';
import { contentOf, idOf } from '../photograph/content.js';
import type { PictureBytes } from '../photograph/gather.js';
import { sizeOfPicture } from '../photograph/size.js';
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
  /** The same for a text that is only tried: it is answered with what is known, and nothing is read or measured for it. */
  readonly aside: Photographs;
}

/** What is shown while photographs are measured. */
export interface MeasuringShown {
  /** `part` of all that is known to be done, 0 to 1. */
  readonly at: (path: string, part: number) => void;
  readonly end: () => void;
}

/** Plans that asked, each with the last of its computations in which it did. */
type AskedBy = Map<string, number>;

interface Want {
  readonly squaring: Squaring;
  readonly askedBy: AskedBy;
  /** What was answered last. */
  given: SquaredAnswer | undefined;
}

interface Entry {
  /** As a plan has it. */
  readonly path: string;
  readonly wants: Map<string, Want>;
  readonly size: { readonly askedBy: AskedBy; given: SizeAnswer | undefined };
  /** To be read, for the first time or again. */
  isStale: boolean;
  content?: string | undefined;
  failure?: NoPhotograph | undefined;
  measured?: SizeAnswer | undefined;
  /** Nothing of it is measured until the painter asks again. */
  isStopped: boolean;
}

/** A plan from a stranger could name any number of files; what is measured of each takes some two megabytes. */
const PICTURES_PER_PLAN = 100;
/** Of what nobody asks for just now, in case that a corner is put back or a plan opened again. */
const UNWANTED_KEPT = 30;
/** Programs write a photograph in several goes, and painters a corner in several keys. */
const SETTLE_MILLISECONDS = 200;

const stopped: NoPhotograph = {
  ok: false,
  reason:
    'Measuring was stopped. It goes on when the plan is saved, or when this line or the photograph changes.',
};

/**
 * The photographs and sketches that open plans name. A plan asks and is answered at once, with `undefined` while a picture is
 * on its way; it is told when asking again would give another answer. One file is read and measured at a time, that of the
 * plan edited last first. What was measured is kept by the content of the file, so neither a new name nor another line of the
 * plan has it measured again.
 */
export class PlanPhotographs {
  readonly #host: PlanPhotographsHost;
  /** By the usual spelling of their URIs. */
  readonly #entries = new Map<string, Entry>();
  /** By their ids; the one used last is the last. */
  readonly #results = new Map<string, SquaredAnswer>();
  readonly #computations = new Map<string, number>();
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
        computation = (this.#computations.get(planUri) ?? 0) + 1;
        this.#computations.set(planUri, computation);
        this.#letGo(planUri, computation - 1);
      }
      return computation;
    };
    return {
      squared: (squaring) => {
        // What is let go goes first: a file that nobody has asked for yet would go with it.
        const now = begun();
        const found = this.#entryAt(planUri, squaring.path);
        return 'ok' in found ? found : this.#squared(found, squaring, planUri, now);
      },
      sizeOf: (path) => {
        const now = begun();
        const found = this.#entryAt(planUri, path);
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
      const entry = this.#entries.get(usualSpelling(uri));
      if (entry !== undefined) this.#renew(entry);
    }
  }

  /** The painter has saved a plan: what was stopped goes on, and files of whose changes nobody tells are read again. */
  rereadFor(planUri: string): void {
    for (const [uri, entry] of this.#entries) {
      const isTold = this.#host.isTold && this.#host.folders().some((folder) => contains(folder, uri));
      if (plansOf(entry).has(planUri) && (entry.isStopped || !isTold)) this.#renew(entry);
    }
  }

  /** A plan that is closed needs its pictures no more; what was measured is kept a while, in case it is opened again. */
  forget(planUri: string): void {
    this.#letGo(planUri, Number.POSITIVE_INFINITY);
    this.#computations.delete(planUri);
    this.#edited.delete(planUri);
  }

  /** The painter wants no more to be measured for now. */
  stop(): void {
    const left = [...this.#entries.values()].filter((entry) => this.#hasWork(entry));
    for (const entry of left) entry.isStopped = true;
    this.#current?.controller.abort();
    this.#tell(left);
  }

  #known(planUri: string, path: string): Entry | undefined {
    const target = resolvePath(planUri, path, this.#host.folders());
    return target.ok ? this.#entries.get(usualSpelling(target.uri)) : undefined;
  }

  #entryAt(planUri: string, path: string): Entry | NoPhotograph {
    const target = resolvePath(planUri, path, this.#host.folders());
    if (!target.ok) return target;
    const uri = usualSpelling(target.uri);
    const known = this.#entries.get(uri);
    if (known !== undefined) return known;
    const count = [...this.#entries.values()].filter((entry) => plansOf(entry).has(planUri)).length;
    if (count >= PICTURES_PER_PLAN)
      return { ok: false, reason: `A plan can name ${PICTURES_PER_PLAN} pictures, and this one names more.` };
    const entry: Entry = {
      path,
      wants: new Map(),
      size: { askedBy: new Map(), given: undefined },
      isStale: true,
      isStopped: false,
    };
    this.#entries.set(uri, entry);
    return entry;
  }

  #squared(
    entry: Entry,
    squaring: Squaring,
    planUri: string,
    computation: number,
  ): SquaredAnswer | undefined {
    const key = idOf('', squaring);
    let want = entry.wants.get(key);
    if (want === undefined) {
      want = { squaring, askedBy: new Map(), given: undefined };
      entry.wants.set(key, want);
      // Another line than the one that was stopped.
      entry.isStopped = false;
    }
    want.askedBy.set(planUri, computation);
    want.given = this.#answerTo(entry, squaring);
    if (want.given === undefined) this.#wake();
    return want.given;
  }

  #sizeOf(entry: Entry, planUri: string, computation: number): SizeAnswer | undefined {
    entry.size.askedBy.set(planUri, computation);
    entry.size.given = this.#sizeIn(entry);
    if (entry.size.given === undefined) {
      // It was read before anybody asked how large it is.
      if (entry.content !== undefined) entry.isStale = true;
      this.#wake();
    }
    return entry.size.given;
  }

  /** While a file is read again, what it held before still stands. */
  #answerTo(entry: Entry, squaring: Squaring): SquaredAnswer | undefined {
    if (entry.failure !== undefined) return entry.failure;
    const id = entry.content === undefined ? undefined : idOf(entry.content, squaring);
    const result = id === undefined ? undefined : this.#results.get(id);
    if (id !== undefined && result !== undefined) {
      this.#results.delete(id);
      this.#results.set(id, result);
      return result;
    }
    return entry.isStopped ? stopped : undefined;
  }

  #sizeIn(entry: Entry): SizeAnswer | undefined {
    return entry.failure ?? entry.measured ?? (entry.isStopped ? stopped : undefined);
  }

  #hasWork(entry: Entry): boolean {
    if (entry.isStopped) return false;
    return (
      entry.isStale || [...entry.wants.values()].some(({ squaring }) => !this.#answerTo(entry, squaring))
    );
  }

  #renew(entry: Entry): void {
    entry.isStale = true;
    entry.isStopped = false;
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
      const [uri, entry] = next;
      shown ??= this.#host.show?.(() => this.stop());
      const left = [...this.#entries.values()].filter((each) => this.#hasWork(each)).length;
      const report = (part: number): void => shown?.at(entry.path, (done + part) / (done + left));
      await this.#work(uri, entry, report);
      done += 1;
    }
    shown?.end();
    this.#isRunning = false;
  }

  /** Of the plan edited last, in the order in which it asked. */
  #next(): readonly [string, Entry] | undefined {
    const waiting = [...this.#entries].filter(([, entry]) => this.#hasWork(entry));
    const order = [...this.#edited];
    const recency = (entry: Entry): number =>
      Math.max(-1, ...[...plansOf(entry)].map((plan) => order.indexOf(plan)));
    const latest = Math.max(...waiting.map(([, entry]) => recency(entry)));
    return waiting.find(([, entry]) => recency(entry) === latest);
  }

  /** Reads a file and measures in it what is wanted of it. Never rejects. */
  async #work(uri: string, entry: Entry, report: (part: number) => void): Promise<void> {
    report(0);
    entry.isStale = false;
    const [planUri = uri] = plansOf(entry);
    const read = await this.#host.fetch(uri, planUri).catch(() => unreadable);
    if (!read.ok) {
      if (entry.failure?.reason !== read.reason) entry.failure = read;
      entry.content = undefined;
      this.#tell([entry]);
      return;
    }
    entry.failure = undefined;
    entry.content = await contentOf(read.bytes);
    entry.measured = entry.size.askedBy.size > 0 ? sizeOfPicture(read.bytes) : undefined;
    this.#tell([entry]);
    const { content } = entry;
    for (const want of [...entry.wants.values()]) {
      const isWanted = entry.wants.has(idOf('', want.squaring));
      if (entry.isStale || entry.isStopped || !isWanted || this.#answerTo(entry, want.squaring)) continue;
      const controller = new AbortController();
      this.#current = { want, controller };
      const { signal } = controller;
      const answer = await this.#host
        .square(read.bytes, want.squaring, { signal, progress: report, content })
        .catch((): SquaredAnswer => unmeasurable);
      this.#current = undefined;
      if (signal.aborted) continue;
      this.#keep(idOf(content, want.squaring), answer);
      this.#tell([entry]);
    }
  }

  /** What is asked for is kept whatever its number: else it would be measured again and again. */
  #keep(id: string, answer: SquaredAnswer): void {
    this.#results.set(id, answer);
    const wanted = new Set(
      [...this.#entries.values()].flatMap(({ content, wants }) =>
        content === undefined ? [] : [...wants.values()].map(({ squaring }) => idOf(content, squaring)),
      ),
    );
    const unwanted = [...this.#results.keys()].filter((each) => !wanted.has(each));
    for (const each of unwanted.slice(0, Math.max(0, unwanted.length - UNWANTED_KEPT)))
      this.#results.delete(each);
  }

  /** Tells the plans that would now be answered otherwise. */
  #tell(entries: readonly Entry[]): void {
    const plans = new Set<string>();
    for (const entry of entries) {
      for (const want of entry.wants.values()) {
        const answer = this.#answerTo(entry, want.squaring);
        if (answer === undefined || answer === want.given) continue;
        want.given = answer;
        [...want.askedBy.keys()].forEach((plan) => plans.add(plan));
      }
      const size = this.#sizeIn(entry);
      if (size === undefined || isSameSize(size, entry.size.given)) continue;
      entry.size.given = size;
      [...entry.size.askedBy.keys()].forEach((plan) => plans.add(plan));
    }
    if (plans.size > 0) this.#host.changed([...plans]);
  }

  #letGo(planUri: string, before: number): void {
    const release = (askedBy: AskedBy): void => {
      const last = askedBy.get(planUri);
      if (last !== undefined && last < before) askedBy.delete(planUri);
    };
    for (const [uri, entry] of this.#entries) {
      release(entry.size.askedBy);
      for (const [key, want] of entry.wants) {
        release(want.askedBy);
        if (want.askedBy.size > 0) continue;
        entry.wants.delete(key);
        if (this.#current?.want === want) this.#current.controller.abort();
      }
      if (plansOf(entry).size === 0) this.#entries.delete(uri);
    }
  }
}

const unreadable: NoPhotograph = { ok: false, reason: 'This file could not be read.' };
const unmeasurable: NoPhotograph = { ok: false, reason: 'This photograph could not be measured.' };

/** The plans that ask for something of a file. */
function plansOf({ wants, size }: Entry): ReadonlySet<string> {
  return new Set([
    ...size.askedBy.keys(),
    ...[...wants.values()].flatMap(({ askedBy }) => [...askedBy.keys()]),
  ]);
}

function isSameSize(one: SizeAnswer, other: SizeAnswer | undefined): boolean {
  if (one.ok && other?.ok === true) return one.width === other.width && one.height === other.height;
  return one === other;
}
