import * as vscode from 'vscode';
import { columnFor, documentOf } from '../../preview/host/plan-places.js';
import { fileSizeLimitBytes } from '../../../server/language/file-size.js';

export type TextAnswer =
  | { readonly ok: true; readonly text: string }
  /** A sentence to the painter. */
  | { readonly ok: false; readonly reason: string };

/** The text of a plan as it is now: that of the editor where it is open, without opening it where it is not. */
export async function textOf(plan: vscode.Uri): Promise<TextAnswer> {
  const document = documentOf(plan);
  if (document !== undefined) return { ok: true, text: document.getText() };
  const name = nameOf(plan);
  try {
    const { size } = await vscode.workspace.fs.stat(plan);
    if (size > fileSizeLimitBytes)
      return { ok: false, reason: vscode.l10n.t('{0} is larger than 5 MB.', name) };
    const bytes = await vscode.workspace.fs.readFile(plan);
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch (error) {
    const isBadText = error instanceof TypeError;
    return {
      ok: false,
      reason: isBadText
        ? vscode.l10n.t('{0} is not a text in UTF-8.', name)
        : vscode.l10n.t('{0} can’t be read.', name),
    };
  }
}

export function nameOf(plan: vscode.Uri): string {
  return plan.path.slice(plan.path.lastIndexOf('/') + 1);
}

/** Opens a plan, with words of it selected where they are told. */
export async function openPlan(
  plan: vscode.Uri,
  page: vscode.ViewColumn | undefined,
  place?: { readonly line: number; readonly start: number; readonly end: number },
): Promise<void> {
  const document = await vscode.workspace.openTextDocument(plan);
  const selection =
    place && document.validateRange(new vscode.Range(place.line, place.start, place.line, place.end));
  await vscode.window.showTextDocument(document, {
    viewColumn: columnFor(plan, page),
    ...(selection === undefined ? {} : { selection }),
  });
}
