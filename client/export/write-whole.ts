import type * as vscode from 'vscode';

/** What a file is written with: `vscode.workspace.fs`. */
export type Disk = Pick<vscode.FileSystem, 'writeFile' | 'rename' | 'delete'>;

/**
 * Writes a file whole: beside it first, and then in its place, where the file system can do that.
 * @throws when it can't be written; what was there before is then still there, unless the file system can't rename
 */
export async function writeWhole(disk: Disk, file: vscode.Uri, bytes: Uint8Array): Promise<void> {
  const beside = file.with({ path: `${file.path}.part` });
  try {
    await disk.writeFile(beside, bytes);
    await disk.rename(beside, file, { overwrite: true });
  } catch {
    await Promise.resolve(disk.delete(beside)).catch(() => undefined);
    await disk.writeFile(file, bytes);
  }
}
