import { marked, parse, type SyntaxTree } from '../../grammar/index.js';
import type { FileAnswer } from '../plan/plan.js';
import { every } from '../plan/select.js';
import { filesNamedIn } from './file-names.js';
import { namesOf, type Names } from './names.js';
import { contains, resolvePath, usualSpelling } from './paths.js';
import { linesOf } from './text.js';

/** A text that plans are made of, as far as it is known. */
export interface KnownText {
  readonly uri: string;
  readonly text: string;
  /** Of the document, when it is open in the editor. */
  readonly version?: number;
}

/** A plan whose text is known: one that is open, or one that was read. */
export interface KnownPlan extends KnownText {
  readonly lines: readonly string[];
  readonly tree: SyntaxTree;
  readonly names: Names;
}

/** The plans and files round a plan at one moment. */
export interface Surroundings {
  /** Those that are open first. */
  readonly plans: readonly KnownPlan[];
  /** The text of a file that a plan names by a path; nothing where it may not or can't be read. */
  readonly fileOf: (plan: KnownText, path: string) => KnownText | undefined;
  /** The plan that a plan names by a path. */
  readonly planOf: (plan: KnownText, path: string) => KnownPlan | undefined;
  /** The address that a path in a plan leads to, when plans may read there. */
  readonly addressOf: (planUri: string, path: string) => string | undefined;
}

export interface LibraryHost {
  readonly fetch: (uri: string, planUri: string) => Promise<FileAnswer>;
  /** Addresses of the plans below the open folders, where they can be listed. */
  readonly list: () => Promise<readonly string[]>;
  readonly folders: () => readonly string[];
  readonly openPlans: () => readonly KnownPlan[];
  /** The client tells of files that change, so that what was read stays true until then. */
  readonly isTold: boolean;
}

/** So many files are read beside the open plans at most; a folder from a stranger may hold any number. */
const FILES_READ = 500;
/** And so much text, of which there may be several megabytes in each. */
const CHARACTERS_READ = 30_000_000;

/**
 * What stands round the open plans: the other plans of the workspace, those that they are based on, and the drawings
 * whose parts they take. It is read when a question needs it, and not again while nothing is told to have changed.
 */
export class Library {
  readonly #host: LibraryHost;
  readonly #texts = new Map<string, Promise<FileAnswer>>();
  readonly #plans = new Map<string, KnownPlan>();
  #listed: Promise<readonly string[]> | undefined;

  constructor(host: LibraryHost) {
    this.#host = host;
  }

  /** These files have changed, come or gone. */
  changed(uris: Iterable<string>): void {
    for (const uri of uris) this.#texts.delete(usualSpelling(uri));
    this.#listed = undefined;
  }

  /** Reads what is not known yet, and gives what then is. Never rejects. */
  async gather(): Promise<Surroundings> {
    const folders = this.#host.folders();
    const isIn = (uri: string): boolean => folders.some((folder) => contains(folder, uri));
    // Of files that lie in no open folder no client tells.
    for (const uri of this.#texts.keys()) if (!this.#host.isTold || !isIn(uri)) this.#texts.delete(uri);
    if (!this.#host.isTold) this.#listed = undefined;
    this.#listed ??= this.#host.list().catch(() => []);
    const listed = (await this.#listed).map(usualSpelling).filter(isIn);
    const read = new Map<string, KnownText>();
    const asked = new Set<string>();
    let characters = 0;
    // Each round reads what the plans of the last one name.
    let wanted = new Map(listed.map((uri) => [uri, uri]));
    let newest: readonly KnownPlan[] = [...this.#open().values()];
    for (;;) {
      for (const plan of newest)
        for (const path of pathsIn(plan)) {
          const address = this.#addressOf(plan.uri, path);
          if (address !== undefined) wanted.set(address, plan.uri);
        }
      const fresh = [...wanted].filter(([uri]) => !asked.has(uri)).slice(0, FILES_READ - asked.size);
      if (fresh.length === 0) break;
      fresh.forEach(([uri]) => asked.add(uri));
      wanted = new Map();
      const open = this.#open();
      const texts: KnownText[] = [];
      await Promise.all(
        fresh
          .filter(([uri]) => !open.has(uri))
          .map(async ([uri, planUri]) => {
            const answer = await this.#read(uri, planUri);
            if (!answer.ok || characters + answer.text.length > CHARACTERS_READ) return;
            characters += answer.text.length;
            texts.push({ uri, text: answer.text });
          }),
      );
      texts.forEach((text) => read.set(text.uri, text));
      newest = this.#plansAmong(texts);
    }
    for (const uri of this.#plans.keys()) if (!read.has(uri)) this.#plans.delete(uri);
    // A path is known at every key that it is typed with.
    for (const uri of this.#texts.keys()) if (!asked.has(uri)) this.#texts.delete(uri);
    return this.#surroundings(read);
  }

  /** What is known without reading anything: the open plans. */
  known(): Surroundings {
    return this.#surroundings(new Map());
  }

  #surroundings(read: ReadonlyMap<string, KnownText>): Surroundings {
    const open = this.#open();
    const others = this.#plansAmong([...read.values()]).filter(({ uri }) => !open.has(uri));
    const plans = [...open.values(), ...others];
    const byUri = new Map(plans.map((plan) => [usualSpelling(plan.uri), plan]));
    const addressOf = (planUri: string, path: string) => this.#addressOf(planUri, path);
    return surroundingsOf(plans, addressOf, (uri) => byUri.get(uri) ?? read.get(uri));
  }

  #open(): ReadonlyMap<string, KnownPlan> {
    return new Map(this.#host.openPlans().map((plan) => [usualSpelling(plan.uri), plan]));
  }

  #plansAmong(texts: readonly KnownText[]): readonly KnownPlan[] {
    return texts.filter(({ uri }) => isPlan(uri)).map((text) => this.#plan(text));
  }

  #plan({ uri, text }: KnownText): KnownPlan {
    const known = this.#plans.get(uri);
    if (known?.text === text) return known;
    const plan = knownPlan(uri, text, known);
    this.#plans.set(uri, plan);
    return plan;
  }

  #read(uri: string, planUri: string): Promise<FileAnswer> {
    const known = this.#texts.get(uri);
    if (known !== undefined) return known;
    const answer = this.#host
      .fetch(uri, planUri)
      .catch((): FileAnswer => ({ ok: false, reason: marked('This file could not be read.') }));
    this.#texts.set(uri, answer);
    return answer;
  }

  #addressOf(planUri: string, path: string): string | undefined {
    const answer = resolvePath(planUri, path, this.#host.folders());
    return answer.ok ? usualSpelling(answer.uri) : undefined;
  }
}

/** Plans that know of each other by their paths. */
export function surroundingsOf(
  plans: readonly KnownPlan[],
  addressOf: Surroundings['addressOf'],
  textAt: (uri: string) => KnownText | undefined,
): Surroundings {
  const byUri = new Map(plans.map((plan) => [usualSpelling(plan.uri), plan]));
  const found = <T>(planUri: string, path: string, at: (uri: string) => T | undefined): T | undefined => {
    const address = addressOf(planUri, path);
    return address === undefined ? undefined : at(address);
  };
  return {
    plans,
    addressOf,
    fileOf: ({ uri }, path) => found(uri, path, textAt),
    planOf: ({ uri }, path) => found(uri, path, (address) => byUri.get(address)),
  };
}

/**
 * A plan that is not open in the editor.
 *
 * @param before an earlier text of it, of which what is the same need not be read again
 */
export function knownPlan(uri: string, text: string, before?: KnownPlan): KnownPlan {
  const tree = parse(text, before?.tree);
  return { uri, text, lines: linesOf(text), tree, names: namesOf(tree) };
}

/** The path of the plan that a plan is based on; where it names several, the last counts. */
export function basePathOf({ nodes }: SyntaxTree): string | undefined {
  return every(nodes, 'based on').at(-1)?.statement.file.value;
}

function isPlan(uri: string): boolean {
  return /\.mahl$/iu.test(uri);
}

/** The plans and drawings that a plan names; photographs are no text. */
function pathsIn(plan: KnownPlan): readonly string[] {
  const texts = filesNamedIn(plan).filter(({ kind }) => kind === 'plan' || kind === 'drawing');
  return [...new Set(texts.map(({ path }) => path))];
}
