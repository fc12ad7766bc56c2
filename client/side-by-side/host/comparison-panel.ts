import * as vscode from 'vscode';
import type { ComparedView } from '../../../server/drawing/scene.js';
import type { FileAnswer } from '../../../server/plan/plan.js';
import type { ComparedPlans, PlanText } from '../../../server/language/comparison-protocol.js';
import type { ServerLink } from '../../server-link.js';
import { Shell, type ShellParts } from './shell.js';
import { openPlan, type TextAnswer } from './texts.js';

/** One of two plans: what it is called, where its words are shown, and how its text is had. */
export interface Side {
  readonly name: string;
  readonly uri: vscode.Uri;
  /** From where files that it names are looked for. */
  readonly base: vscode.Uri;
  readonly text: () => Promise<TextAnswer>;
  /** For a version whose files are not those of today. */
  readonly file?: (path: string) => Promise<FileAnswer>;
}

export interface ComparisonParts extends Pick<ShellParts, 'extensionUri' | 'log' | 'column'> {
  readonly server: ServerLink;
  readonly earlier: Side;
  readonly later: Side;
  readonly closed: () => void;
}

/** Of two versions of one plan its name alone, which leaves room in a row of tabs. */
function titleOf({ base, name }: Side, later: Side): string {
  return base.toString() === later.base.toString()
    ? vscode.l10n.t('Compare {0}', later.name)
    : vscode.l10n.t('Compare {0} with {1}', name, later.name);
}

/** A plan may name files that name files. */
const MOST_ROUNDS = 12;
const PAUSE_MILLISECONDS = 400;

/** Two plans side by side beside the text. What is written meanwhile is compared anew. */
export class ComparisonPanel implements vscode.Disposable {
  readonly #parts: ComparisonParts;
  readonly #shell: Shell;
  readonly #subscriptions: vscode.Disposable[];
  readonly #files = new Map<Side, Record<string, FileAnswer>>();
  #view: ComparedView = 'drawing';
  #shown: ComparedPlans | undefined;
  #asking: Promise<void> | undefined;
  #isStale = false;
  #pause: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: ComparisonParts) {
    this.#parts = parts;
    const { earlier, later, server } = parts;
    this.#shell = new Shell({
      ...parts,
      title: titleOf(earlier, later),
      ready: () => this.#refresh(),
      received: (message) => {
        if (message.type === 'open') void this.#open(message.index);
        else {
          this.#view = message.view;
          this.#refresh();
        }
      },
      closed: () => {
        clearTimeout(this.#pause);
        vscode.Disposable.from(...this.#subscriptions).dispose();
        parts.closed();
      },
    });
    this.#subscriptions = [
      server.onPlanChanged((changed) => {
        if (server.isAbout(changed, later.uri) || server.isAbout(changed, earlier.uri)) this.#refreshSoon();
      }),
      server.onStateChanged((state) => {
        if (state === 'running') this.#refresh();
      }),
    ];
  }

  dispose(): void {
    this.#shell.dispose();
  }

  /** When the typing pauses: two whole plans are worked out for it. */
  #refreshSoon(): void {
    clearTimeout(this.#pause);
    this.#pause = setTimeout(() => this.#refresh(), PAUSE_MILLISECONDS);
  }

  /**
   * One comparison at a time; what changes meanwhile is compared once after it, and while the page is hidden when it is
   * back.
   */
  #refresh(): void {
    if (!this.#shell.isReady) return;
    this.#isStale = this.#asking !== undefined;
    this.#asking ??= this.#compare().finally(() => {
      this.#asking = undefined;
      if (this.#isStale) this.#refresh();
    });
  }

  async #compare(): Promise<void> {
    const { earlier, later } = this.#parts;
    const compared = await this.#answer();
    if (typeof compared === 'string') {
      this.#shell.post({ type: 'nothing', reason: compared });
      return;
    }
    this.#shown = compared;
    const { changes, remarks } = compared;
    this.#shell.post({
      type: 'comparison',
      view: this.#view,
      earlier: { name: earlier.name, ...compared.earlier },
      later: { name: later.name, ...compared.later },
      changes: changes.map(({ topic, message, earlier: was, later: is }) => ({
        topic,
        message,
        isPlaced: (is ?? was) !== undefined,
      })),
      remarks: [...remarks],
    });
  }

  /** What differs, or why that can't be told. */
  async #answer(): Promise<ComparedPlans | string> {
    const { earlier, later, server } = this.#parts;
    const [before, now] = [await earlier.text(), await later.text()];
    if (!before.ok) return before.reason;
    if (!now.ok) return now.reason;
    try {
      for (let round = 0; round < MOST_ROUNDS; round++) {
        const result = await server.compare({
          earlier: this.#planText(earlier, before.text),
          later: this.#planText(later, now.text),
          view: this.#view,
        });
        if (result === null) break;
        if (!('needs' in result)) return result;
        await this.#get(earlier, result.needs.earlier);
        await this.#get(later, result.needs.later);
      }
    } catch (error) {
      this.#parts.log.debug(`No comparison: ${String(error)}`);
    }
    return vscode.l10n.t('Mahlstick does not answer, so nothing is compared. Your text is not affected.');
  }

  #planText(side: Side, text: string): PlanText {
    const files = this.#files.get(side) ?? {};
    return {
      uri: this.#parts.server.uriText(side.base),
      text,
      ...(side.file === undefined ? {} : { files }),
    };
  }

  async #get(side: Side, paths: readonly string[]): Promise<void> {
    const files = this.#files.get(side) ?? {};
    for (const path of paths)
      files[path] = (await side.file?.(path)) ?? {
        ok: false,
        reason: vscode.l10n.t('This file could not be read.'),
      };
    this.#files.set(side, files);
  }

  /** Shows the words that a change is about: in the later plan, or what is gone in the earlier. */
  async #open(index: number): Promise<void> {
    const change = this.#shown?.changes[index];
    const [side, place] = change?.later
      ? ([this.#parts.later, change.later] as const)
      : ([this.#parts.earlier, change?.earlier] as const);
    if (place === undefined) return;
    // A plan that it builds on has its words in a file of its own.
    const uri =
      place.file === undefined ? side.uri : vscode.Uri.joinPath(side.base, '..', ...place.file.split('/'));
    try {
      await openPlan(uri, this.#shell.column, place);
    } catch {
      void vscode.window.showInformationMessage(vscode.l10n.t('{0} can’t be shown any more.', side.name));
    }
  }
}
