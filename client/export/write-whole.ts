import type * as vscode from 'vscode';

/** What a file is written with: `vscode.workspace.fs`. */
export type Disk = Pick<vscode.FileSystem, 'writeFile' | 'rename' | 'delete' | 'stat'>;

/**
 * Writes a file whole: beside it first, and then in its place. Where a file system refuses that, a new file is written
 * straight away, but one that is there stays as it is.
 * @throws when it can't be written; what was there before is then still there, and nothing of what is new
 */
export async function writeWhole(disk: Disk, file: vscode.Uri, bytes: Uint8Array): Promise<void> {
  const beside = file.with({ path: `${file.path}.part` });
  try {
    await disk.writeFile(beside, bytes);
    await disk.rename(beside, file, { overwrite: true });
  } catch (error) {
    await remove(disk, beside);
    // Writing over it bit by bit would lose it when the disk is full.
    if (await mayBeThere(disk, file)) throw error;
    await writeNew(disk, file, bytes);
  }
}

async function writeNew(disk: Disk, file: vscode.Uri, bytes: Uint8Array): Promise<void> {
  try {
    await disk.writeFile(file, bytes);
  } catch (error) {
    await remove(disk, file);
    throw error;
  }
}

async function mayBeThere(disk: Disk, file: vscode.Uri): Promise<boolean> {
  try {
    await disk.stat(file);
    return true;
  } catch (error) {
    return !(error instanceof Error && 'code' in error && error.code === 'FileNotFound');
  }
}

async function remove(disk: Disk, file: vscode.Uri): Promise<void> {
  await Promise.resolve(disk.delete(file)).catch(() => undefined);
}
