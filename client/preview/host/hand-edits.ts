import * as vscode from 'vscode';
import type { Refused, WrittenChange } from '../../../server/language/protocol.js';
import type { ServerLink } from '../../server-link.js';
import { checkEdits } from '../hand/edit-check.js';
import type { Made } from '../hand/try-feed.js';
import type { Look } from '../look.js';
import type { ToPage } from '../messages.js';
import type { Delivered } from '../scene-feed.js';
import { shapeOf } from './reveal.js';

export interface HandEditsParts {
  readonly server: ServerLink;
  readonly log: vscode.LogOutputChannel;
  readonly document: () => vscode.TextDocument | undefined;
  readonly editor: () => vscode.TextEditor | undefined;
  readonly look: () => Look;
  /** The drawing that the page has. */
  readonly drawn: () => Delivered | undefined;
  readonly post: (message: ToPage) => void;
  /** Brings the text forward, with words of it selected where they are given. False when that can't be done. */
  readonly show: (selection?: vscode.Range) => Promise<boolean>;
}

/** A change as the page asks for it; `id` comes back with the answer. */
export type Asked = Made & { readonly id: number };

const because = {
  gone: vscode.l10n.t('The plan is gone, so nothing can be written in it.'),
  stale: vscode.l10n.t('The text has changed meanwhile. Nothing is written; the drawing follows the text.'),
  readOnly: vscode.l10n.t('This plan can only be read, so the change can’t be written.'),
  notTaken: vscode.l10n.t('The editor did not take the change. Nothing is written.'),
  noAnswer: vscode.l10n.t('Mahlstick does not answer, so nothing is written. Your text is not affected.'),
} as const;

/** Tries and writes in a plan what is done by hand in its drawing. Each change is one edit of the text, one undo. */
export class HandEdits {
  readonly #parts: HandEditsParts;

  constructor(parts: HandEditsParts) {
    this.#parts = parts;
  }

  async try({ id, version, change }: Asked): Promise<void> {
    const { server, document, look, drawn, post } = this.#parts;
    const plan = document();
    if (plan === undefined) return this.#refuse(id, because.gone);
    if (plan.version !== version) return this.#refuse(id, because.stale, true);
    const before = drawn();
    const answer = await server
      .tryChange(plan.uri, look(), version, change, before?.id ?? 0)
      .catch(this.#failed);
    if (answer === null) this.#refuse(id, because.noAnswer);
    else if ('refused' in answer) this.#refuse(id, answer.refused, plan.version !== version);
    else if ('scene' in answer) post({ type: 'tried', id, version, scene: answer.scene });
    else if (before === undefined || before !== drawn()) this.#refuse(id, because.stale, true);
    else post({ type: 'tried change', id, version, epoch: before.epoch, change: answer.change });
  }

  async write(asked: Asked): Promise<void> {
    const { server, document, post } = this.#parts;
    const { id, version, change } = asked;
    const plan = document();
    if (plan === undefined) return this.#refuse(id, because.gone);
    if (plan.version !== version) return this.#refuse(id, because.stale, true);
    if (await isReadOnly(plan.uri)) return this.#refuse(id, because.readOnly);
    const answer = await server.writeChange(plan.uri, version, change).catch(this.#failed);
    if (answer === null) return this.#refuse(id, because.noAnswer);
    if ('refused' in answer) return this.#refuse(id, answer.refused, plan.version !== version);
    const reason = await this.#make(plan, answer).catch(this.#notMade);
    if (reason !== undefined) return this.#refuse(id, because[reason], reason === 'stale');
    post({ type: 'written', id, version: plan.version });
    if (answer.select !== undefined) await this.#parts.show(rangeOf(answer.select));
  }

  /** Takes the last change of the text back, or makes it again, and comes back to the drawing. */
  async step(command: 'undo' | 'redo', comeBack: () => void): Promise<void> {
    if (this.#parts.document() === undefined) return;
    // The command is for whatever text is in front: where that is another, it is left alone.
    if (!(await this.#parts.show())) return;
    await vscode.commands.executeCommand(command);
    comeBack();
  }

  /** Nothing is waited for between the check and the edit, which the editor checks against the version once more. */
  async #make(plan: vscode.TextDocument, written: WrittenChange): Promise<keyof typeof because | undefined> {
    const check = plan.isClosed ? 'gone' : checkEdits(shapeOf(plan), written.version, written.edits);
    if (check !== 'here') return check === 'outside' ? 'notTaken' : check;
    const editor = this.#parts.editor();
    const edits = written.edits.map(({ range, newText }) => ({ range: rangeOf(range), newText }));
    if (edits.length === 0) return undefined;
    if (editor === undefined) {
      const all = new vscode.WorkspaceEdit();
      for (const { range, newText } of edits) all.replace(plan.uri, range, newText);
      return (await vscode.workspace.applyEdit(all)) ? undefined : changedFrom(plan, written.version);
    }
    const isTaken = await editor.edit((builder) => {
      for (const { range, newText } of edits) builder.replace(range, newText);
    });
    if (!isTaken) return changedFrom(plan, written.version);
    // An editor that may only be read takes an edit and leaves the text as it is.
    return plan.version === written.version ? 'readOnly' : undefined;
  }

  readonly #failed = (error: unknown): null => {
    this.#parts.log.debug(`No answer to a change by hand: ${String(error)}`);
    return null;
  };

  /** An editor that is closed meanwhile takes no edit, and says so by failing; the page waits for an answer still. */
  readonly #notMade = (error: unknown): 'notTaken' => {
    this.#parts.log.debug(`A change by hand was not made: ${String(error)}`);
    return 'notTaken';
  };

  #refuse(id: number, reason: Refused['refused'], isStale = false): void {
    this.#parts.log.debug(`A change by hand was refused: ${reason}`);
    this.#parts.post({ type: 'refused', id, reason, isStale });
  }
}

function changedFrom(plan: vscode.TextDocument, version: number): 'stale' | 'notTaken' {
  return plan.version === version ? 'notTaken' : 'stale';
}

/** Whether a plan can be read and not written, as far as its file system tells. */
export async function isReadOnly(uri: vscode.Uri): Promise<boolean> {
  if (vscode.workspace.fs.isWritableFileSystem(uri.scheme) === false) return true;
  if (uri.scheme === 'untitled') return false;
  try {
    const { permissions = 0 } = await vscode.workspace.fs.stat(uri);
    return (permissions & vscode.FilePermission.Readonly) !== 0;
  } catch {
    // It is in the editor and nowhere else, where it can be written.
    return false;
  }
}

function rangeOf({ start, end }: NonNullable<WrittenChange['select']>): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}
