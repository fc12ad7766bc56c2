import { reasonInWords } from '../../grammar/localised.js';
import { marked } from '../../grammar/marked.js';
import { reasonOf } from '../../grammar/reason.js';
import type { FileAnswer, ReadFile } from '../plan/plan.js';
import { AskedBy, Computations } from './asked-by.js';
import { resolvePath, usualSpelling } from './paths.js';
import { fileSizeLimitBytes, tooLarge } from './file-size.js';

/** A plan from a stranger could name any number of files, each of them read into memory. */
export const filesPerPlan = 200;

export const tooManyFiles: FileAnswer = {
  ok: false,
  reason: reasonOf(marked('A plan can name {0} files, and this one names more.'), filesPerPlan),
};

interface Entry {
  answer: FileAnswer | undefined;
  readonly askedBy: AskedBy;
  /** Counts the reads, so that a slow early one does not overwrite a later one. */
  reads: number;
}

export interface PlanFilesHost {
  /** Fetches a text by URI. It may reject; the painter is then told that the file can't be read. */
  readonly fetch: (uri: string, planUri: string) => Promise<FileAnswer>;
  /**
   * The text of a document that is open in the editor: it goes before what is on the disk. Asked in the usual spelling.
   */
  readonly openText: (uri: string) => string | undefined;
  readonly folders: () => readonly string[];
  /** These plans were given another answer than they would be given now. */
  readonly changed: (planUris: readonly string[]) => void;
}

/**
 * The files that plans name. A plan asks and is answered at once: with the text, with the reason why there is
 * none, or with `undefined` while it is being fetched. It is told when asking again would give another answer.
 */
export class PlanFiles {
  readonly #host: PlanFilesHost;
  readonly #entries = new Map<string, Entry>();
  readonly #computations = new Computations();

  constructor(host: PlanFilesHost) {
    this.#host = host;
  }

  /** A reader for one computation of a plan. Files that it asked for in neither this nor the last one are let go. */
  readerFor(planUri: string): ReadFile {
    const computation = this.#computations.begin(planUri);
    this.#letGo(planUri, computation - 1);
    return (path) => {
      const target = resolvePath(planUri, path, this.#host.folders());
      return target.ok ? this.#ask(target.uri, planUri, computation) : target;
    };
  }

  /** Reads again what is known of these files; plans that named them keep the old answer until the new one is there. */
  reread(uris: Iterable<string>): void {
    for (const uri of new Set([...uris].map(usualSpelling))) {
      const entry = this.#entries.get(uri);
      const asker = entry?.askedBy.plans[0];
      if (entry !== undefined && asker !== undefined) this.#read(uri, entry, asker);
    }
  }

  /** Reads again every file that a plan names. */
  rereadFor(planUri: string): void {
    this.reread([...this.#entries].filter(([, { askedBy }]) => askedBy.has(planUri)).map(([uri]) => uri));
  }

  /** Tells the plans that name this document that its text has changed in the editor. */
  edited(uri: string): void {
    const entry = this.#entries.get(usualSpelling(uri));
    if (entry !== undefined) this.#host.changed(entry.askedBy.plans);
  }

  /** The document is no longer open: what is on the disk counts, and until it is read the text that was last open. */
  closed(uri: string, lastText: string): void {
    const entry = this.#entries.get(usualSpelling(uri));
    if (entry === undefined) return;
    entry.answer = { ok: true, text: lastText };
    this.reread([uri]);
  }

  /** A plan that is closed needs its files no more. */
  forget(planUri: string): void {
    this.#letGo(planUri, Number.POSITIVE_INFINITY);
    this.#computations.forget(planUri);
  }

  #ask(uri: string, planUri: string, computation: number): FileAnswer | undefined {
    let entry = this.#entries.get(uri);
    if (entry === undefined && this.#countFor(planUri) >= filesPerPlan) {
      return tooManyFiles;
    }
    if (entry === undefined) {
      entry = { answer: undefined, askedBy: new AskedBy(), reads: 0 };
      this.#entries.set(uri, entry);
    }
    entry.askedBy.add(planUri, computation);
    const open = this.#host.openText(uri);
    if (open !== undefined) return withinLimit({ ok: true, text: open });
    if (entry.reads === 0) this.#read(uri, entry, planUri);
    return entry.answer;
  }

  #read(uri: string, entry: Entry, planUri: string): void {
    const read = ++entry.reads;
    const settle = (answer: FileAnswer): void => {
      if (read !== entry.reads || this.#entries.get(uri) !== entry) return;
      const before = entry.answer;
      entry.answer = answer;
      if (!sameAnswer(before, answer)) this.#host.changed(entry.askedBy.plans);
    };
    this.#host.fetch(uri, planUri).then(
      (answer) => settle(withinLimit(answer)),
      () => settle({ ok: false, reason: marked('This file could not be read.') }),
    );
  }

  #countFor(planUri: string): number {
    return [...this.#entries.values()].filter(({ askedBy }) => askedBy.has(planUri)).length;
  }

  #letGo(planUri: string, before: number): void {
    for (const [uri, { askedBy }] of this.#entries) {
      askedBy.letGo(planUri, before);
      if (askedBy.plans.length === 0) this.#entries.delete(uri);
    }
  }
}

function withinLimit(answer: FileAnswer): FileAnswer {
  if (!answer.ok || answer.text.length <= fileSizeLimitBytes) return answer;
  return { ok: false, reason: tooLarge(fileSizeLimitBytes) };
}

function sameAnswer(a: FileAnswer | undefined, b: FileAnswer): boolean {
  if (a?.ok === true && b.ok) return a.text === b.text;
  if (a?.ok === false && !b.ok) return reasonInWords(a.reason) === reasonInWords(b.reason);
  return false;
}
