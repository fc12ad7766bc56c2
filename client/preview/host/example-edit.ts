import * as vscode from 'vscode';
import { type Example, appended } from '../example.js';

/**
 * Writes an example at the end of a plan, as one edit that one undo takes back.
 * @returns where the name in it stands, to be typed over; `undefined` when the editor did not take the edit
 */
export async function insertExample(
  document: vscode.TextDocument,
  { text, name }: Example,
): Promise<vscode.Range | undefined> {
  const before = document.getText();
  const more = appended(before, text);
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, document.positionAt(before.length), more);
  if (!(await vscode.workspace.applyEdit(edit))) return undefined;
  const at = document.getText().lastIndexOf(name);
  return new vscode.Range(document.positionAt(at), document.positionAt(at + name.length));
}
