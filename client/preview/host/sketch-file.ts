import * as vscode from 'vscode';
import { URI, Utils } from 'vscode-uri';
import { said } from '../../../grammar/localised.js';
import { resolvePath } from '../../../server/language/paths.js';
import { openFolders, reachOfPlans, workspaceFiles } from '../../reach.js';
import { readBytesForPlan } from '../../read-file.js';
import { languageId } from '../../server-link.js';
import type { SketchRead, ToPage } from '../messages.js';
import { shownBytes } from './shown-bytes.js';

/** A scan in colour of a large sheet has room in it. */
const limitBytes = 25 * 1024 * 1024;
/** A program that saves a picture writes it in several goes. */
const settleMs = 200;

type Named = 'sketch' | 'photograph';

/**
 * The sketch that a plan names, or the photograph of one of its sittings: read for its preview, and read again
 * whenever the file is another.
 */
export class SketchFile implements vscode.Disposable {
  readonly #post: (message: ToPage) => void;
  #named: { readonly plan: vscode.Uri; readonly file: string; readonly as: Named } | undefined;
  #watcher: vscode.Disposable | undefined;
  #timer: NodeJS.Timeout | number | undefined;
  /** Counts the reads, so that a slow one does not come after a later one. */
  #reads = 0;

  constructor(post: (message: ToPage) => void) {
    this.#post = post;
  }

  /** The page is to have this file now, as it is written in the plan; `undefined` for none. */
  show(plan: vscode.Uri, file: string | undefined, as: Named): void {
    const named = this.#named;
    if (named?.file === file && (file === undefined || named?.plan.toString() === plan.toString())) return;
    this.#stop();
    if (file === undefined) return;
    this.#named = { plan, file, as };
    void this.#read();
  }

  /** The page has lost what it was given. */
  forget(): void {
    this.#stop();
  }

  dispose(): void {
    this.#stop();
  }

  #stop(): void {
    this.#named = undefined;
    this.#reads += 1;
    this.#watcher?.dispose();
    this.#watcher = undefined;
    clearTimeout(this.#timer);
  }

  async #read(): Promise<void> {
    const named = this.#named;
    if (named === undefined) return;
    const read = ++this.#reads;
    const target = resolvePath(named.plan.toString(), named.file, openFolders());
    if (target.ok) this.#watch(target.uri);
    const answer = target.ok
      ? await this.#bytesOf(target.uri, named.as)
      : ({ ok: false, reason: said(target.reason) } as const);
    if (read === this.#reads) this.#post({ type: 'sketch', file: named.file, read: answer });
  }

  async #bytesOf(uri: string, as: Named): Promise<SketchRead> {
    const answer = await readBytesForPlan(uri, reachOfPlans(languageId), workspaceFiles, limitBytes);
    return answer.ok ? shownBytes(answer.bytes, as) : answer;
  }

  #watch(uri: string): void {
    if (this.#watcher !== undefined) return;
    const file = URI.parse(uri);
    const name = Utils.basename(file).replace(/[[\]{}*?]/g, '[$&]');
    const pattern = new vscode.RelativePattern(vscode.Uri.from(Utils.dirname(file)), name);
    const watcher = vscode.workspace.createFileSystemWatcher(pattern);
    const again = () => {
      clearTimeout(this.#timer);
      this.#timer = setTimeout(() => void this.#read(), settleMs);
    };
    watcher.onDidChange(again);
    watcher.onDidCreate(again);
    watcher.onDidDelete(again);
    this.#watcher = watcher;
  }
}
