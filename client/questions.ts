import * as vscode from 'vscode';

/** One answer of a list; what has no value, a heading, can't be chosen. */
export type Choice<T> = vscode.QuickPickItem & { readonly value?: T };

// A preview that was clicked may take the focus only when the list is there already, and would close it.
const keptOpen = { ignoreFocusOut: true } as const;

/** Asks with a list, which stays until it is answered or left with Escape; `undefined` when it is left. */
export async function choose<T>(
  items: readonly Choice<T>[],
  options: vscode.QuickPickOptions,
): Promise<T | undefined> {
  return (await vscode.window.showQuickPick(items, { ...options, ...keptOpen }))?.value;
}

/** Asks with a field, which stays until it is answered or left with Escape; `undefined` when it is left. */
export async function askFor(options: vscode.InputBoxOptions): Promise<string | undefined> {
  return vscode.window.showInputBox({ ...options, ...keptOpen });
}
