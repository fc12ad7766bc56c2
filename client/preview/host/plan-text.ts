import * as vscode from 'vscode';
import type { Location } from '../../../server/plan/plan.js';
import type { Example } from '../example.js';
import { insertExample } from './example-edit.js';
import { columnFor, documentOf } from './plan-places.js';
import { checkPlace, shapeOf } from './reveal.js';

export interface PlanTextParts {
  readonly panel: vscode.WebviewPanel;
  readonly log: vscode.LogOutputChannel;
  /** Of the plan, which may be moved. */
  readonly uri: () => vscode.Uri;
  /** The plan has been opened, or was open. */
  readonly opened: () => void;
  /** The plan can't be opened. */
  readonly gone: () => void;
  /** The focus goes to the text. */
  readonly left: () => void;
}

/** An example that was offered with a drawing, and the version of the text that was drawn. */
export interface DrawnExample {
  readonly version: number;
  readonly example: Example;
}

/** The text that a preview draws: kept open, brought forward, its words selected. */
export class PlanText {
  readonly #parts: PlanTextParts;

  constructor(parts: PlanTextParts) {
    this.#parts = parts;
  }

  /** The server knows open documents only, so the plan is kept open while its drawing is. */
  async open(): Promise<vscode.TextDocument | undefined> {
    const { uri: now, opened, gone } = this.#parts;
    const uri = now();
    try {
      // Opening an unsaved plan that was closed would make an empty one of the same name.
      const document =
        uri.scheme === 'untitled' ? unsavedPlan(uri) : await vscode.workspace.openTextDocument(uri);
      opened();
      return document;
    } catch {
      if (uri.toString() === now().toString()) gone();
      return undefined;
    }
  }

  /** Brings the text forward, with words of it selected where they are given. False when that can't be done. */
  async show(selection?: vscode.Range): Promise<boolean> {
    const document = await this.open();
    if (document === undefined) return false;
    const { left, log, panel, uri } = this.#parts;
    left();
    try {
      await vscode.window.showTextDocument(document, {
        viewColumn: columnFor(uri(), panel.viewColumn),
        ...(selection === undefined ? {} : { selection }),
      });
      return true;
    } catch (error) {
      log.debug(`The text was not brought forward: ${String(error)}`);
      return false;
    }
  }

  /** Selects words that a drawing of some version stands for, if they are still there. */
  async reveal(version: number, { line, start, end }: Location): Promise<void> {
    const document = await this.open();
    if (document === undefined) return;
    const check = checkPlace(shapeOf(document), version, { line, start, end });
    if (check === 'here') await this.show(new vscode.Range(line, start, line, end));
    else this.#parts.log.debug(`A click in a drawing of version ${version} was refused: ${check}.`);
  }

  /** Writes the example that was offered with the drawing of a version, if the text is still that. */
  async insertExample(version: number, drawn: DrawnExample | undefined): Promise<void> {
    const document = await this.open();
    if (document?.version !== version || drawn?.version !== version) {
      this.#parts.log.debug(`An example for version ${version} was not written: the text is another.`);
      return;
    }
    const name = await insertExample(document, drawn.example);
    if (name !== undefined) await this.show(name);
  }
}

function unsavedPlan(uri: vscode.Uri): vscode.TextDocument {
  const document = documentOf(uri);
  if (document === undefined) throw new Error('It was closed.');
  return document;
}
