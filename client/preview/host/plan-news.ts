import * as vscode from 'vscode';
import { findingsOf } from '../../plan-findings.js';
import type { ServerLink } from '../../server-link.js';
import { type ToPage, mostFindings } from '../messages.js';
import { isReadOnly } from './hand-edits.js';
import { documentOf, editorOf } from './plan-places.js';

export interface PlanNewsParts {
  readonly server: ServerLink;
  /** Of the plan, which may be moved. */
  readonly uri: () => vscode.Uri;
  readonly post: (message: ToPage) => void;
}

/**
 * Keeps a page told of what is about the text and in no drawing: findings, the place of the cursor, whether it can be
 * written.
 */
export class PlanNews implements vscode.Disposable {
  readonly #parts: PlanNewsParts;
  readonly #subscriptions: vscode.Disposable;

  constructor(parts: PlanNewsParts) {
    const { server, uri } = parts;
    this.#parts = parts;
    this.#subscriptions = vscode.Disposable.from(
      server.onPlanDiagnosed((diagnosed) => {
        if (server.isAbout(diagnosed, uri())) this.#tellFindings();
      }),
      vscode.languages.onDidChangeDiagnostics(({ uris }) => {
        if (uris.some((changed) => this.#isPlan(changed))) this.#tellFindings();
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (this.#isPlan(textEditor.document.uri)) this.#tellMark();
      }),
      vscode.window.onDidChangeVisibleTextEditors(() => this.#tellMark()),
    );
  }

  /** Tells all of it, to a page that has only now come. */
  async tellAll(): Promise<void> {
    this.#tellFindings();
    this.#tellMark();
    if (await isReadOnly(this.#parts.uri())) this.#parts.post({ type: 'read only' });
  }

  dispose(): void {
    this.#subscriptions.dispose();
  }

  #isPlan(uri: vscode.Uri): boolean {
    return uri.toString() === this.#parts.uri().toString();
  }

  #tellFindings(): void {
    const { server, uri, post } = this.#parts;
    const version = server.versionOf(uri());
    if (version === undefined) return;
    post({ type: 'findings', version, findings: findingsOf(uri()).slice(0, mostFindings) });
  }

  #tellMark(): void {
    const { uri, post } = this.#parts;
    const editor = editorOf(uri());
    const document = editor?.document ?? documentOf(uri());
    if (document === undefined) return;
    post({ type: 'mark', version: document.version, line: editor?.selection.active.line ?? null });
  }
}
