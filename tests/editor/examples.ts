import * as vscode from 'vscode';

/** @returns the names of the plans in the folder that is open, in the order of the alphabet */
export async function exampleNames(): Promise<readonly string[]> {
  const entries = await vscode.workspace.fs.readDirectory(workspaceUri());
  return entries
    .map(([name]) => name)
    .filter((name) => name.endsWith('.mahl'))
    .sort();
}

/** Shows a plan of the folder that is open in an editor. */
export async function openExample(name: string): Promise<vscode.TextEditor> {
  const uri = vscode.Uri.joinPath(workspaceUri(), name);
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
}

function workspaceUri(): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error('No folder is open.');
  return folder.uri;
}

/**
 * Asks again and again until there is an answer.
 * @throws after 30 seconds without one
 */
export async function eventually<T>(
  what: string,
  ask: () => Promise<T | undefined> | T | undefined,
): Promise<T> {
  const end = Date.now() + 30_000;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    if (Date.now() > end) throw new Error(`${what}: not after 30 s`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
