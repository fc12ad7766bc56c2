import * as vscode from 'vscode';
import { Utils, URI } from 'vscode-uri';
import type { Wanted } from './choices.js';

const NAMES: Readonly<Record<Wanted['format'], string>> = {
  svg: 'SVG drawing',
  png: 'PNG image',
  pdf: 'PDF document',
};

/** Asks where the file is to be, beside the plan unless the painter says otherwise; the dialog asks before it overwrites. */
export async function askWhere(plan: vscode.Uri, { what, format }: Wanted): Promise<vscode.Uri | undefined> {
  const name = Utils.basename(URI.from(plan)).replace(/\.mahl$/u, '');
  const folder =
    plan.scheme === 'untitled'
      ? vscode.workspace.workspaceFolders?.[0]?.uri
      : vscode.Uri.from(Utils.dirname(URI.from(plan)));
  return vscode.window.showSaveDialog({
    title: 'Export drawing',
    ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, `${name}-${what}.${format}`) }),
    filters: { [NAMES[format]]: [format] },
  });
}

/**
 * Writes a file whole: beside it first, and then in its place, where the file system can do that.
 * @throws when it can't be written; what was there before is then still there, unless the file system can't rename
 */
export async function writeWhole(file: vscode.Uri, bytes: Uint8Array): Promise<void> {
  const { fs } = vscode.workspace;
  const beside = file.with({ path: `${file.path}.part` });
  try {
    await fs.writeFile(beside, bytes);
    await fs.rename(beside, file, { overwrite: true });
  } catch {
    await Promise.resolve(fs.delete(beside)).catch(() => undefined);
    await fs.writeFile(file, bytes);
  }
}
