import * as vscode from 'vscode';

export function documentOf(plan: vscode.Uri): vscode.TextDocument | undefined {
  return vscode.workspace.textDocuments.find(({ uri }) => isSame(uri, plan));
}

/** The editor of a plan that is in front, else one that is seen. */
export function editorOf(plan: vscode.Uri): vscode.TextEditor | undefined {
  const active = vscode.window.activeTextEditor;
  if (active !== undefined && isSame(active.document.uri, plan)) return active;
  return vscode.window.visibleTextEditors.find(({ document }) => isSame(document.uri, plan));
}

/** Where a plan is already, else beside the column that its drawing is in. */
export function columnFor(plan: vscode.Uri, drawing: vscode.ViewColumn | undefined): vscode.ViewColumn {
  const open = vscode.window.tabGroups.all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof vscode.TabInputText && isSame(input.uri, plan)),
  );
  const beside = drawing === vscode.ViewColumn.One ? vscode.ViewColumn.Two : vscode.ViewColumn.One;
  return editorOf(plan)?.viewColumn ?? open?.viewColumn ?? beside;
}

function isSame(one: vscode.Uri, other: vscode.Uri): boolean {
  return one.toString() === other.toString();
}
