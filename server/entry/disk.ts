import { constants } from 'node:fs';
import { open, realpath } from 'node:fs/promises';
import path from 'node:path';
import { URI } from 'vscode-uri';
import { fileSizeLimitBytes } from '../language/protocol.js';
import type { FileAnswer } from '../plan/plan.js';

/**
 * Reads a text file from the disk. Refused, with the reason as a sentence for the painter: what a link leads to
 * outside of the `roots` (folder URIs), what is no plain file, what is larger than the limit, what is no UTF-8.
 * Never rejects.
 */
export async function readFromDisk(uri: string, roots: readonly string[]): Promise<FileAnswer> {
  const file = URI.parse(uri);
  if (file.scheme !== 'file') return refuse('This file is not on a disk that can be read.');
  try {
    const real = await realpath(file.fsPath);
    if (!(await liesIn(real, roots))) return refuse('This file lies outside the folder that is open.');
    return await readText(real);
  } catch (error) {
    return refuse(reasonOf(error));
  }
}

async function liesIn(file: string, roots: readonly string[]): Promise<boolean> {
  const folders = await Promise.all(
    roots
      .map((root) => URI.parse(root))
      .filter(({ scheme }) => scheme === 'file')
      .map(({ fsPath }) => realpath(fsPath).catch(() => undefined)),
  );
  return folders.some((folder) => folder !== undefined && liesBelow(file, folder));
}

/** True when the path leads below the folder. Of two real paths it holds for what is on the disk too. */
export function liesBelow(file: string, folder: string): boolean {
  const inner = path.relative(folder, file);
  return inner !== '' && !path.isAbsolute(inner) && inner.split(path.sep)[0] !== '..';
}

async function readText(file: string): Promise<FileAnswer> {
  // Opening a pipe would wait for somebody to write into it. The flag is not there on Windows, and not needed.
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const status = await handle.stat();
    if (!status.isFile()) return refuse('This is not a file.');
    if (status.size > fileSizeLimitBytes) return refuse('This file is larger than 5 MB.');
    const bytes = Buffer.alloc(fileSizeLimitBytes + 1);
    const { bytesRead } = await handle.read(bytes, 0, bytes.length, 0);
    if (bytesRead > fileSizeLimitBytes) return refuse('This file is larger than 5 MB.');
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, bytesRead)) };
  } finally {
    await handle.close();
  }
}

function refuse(reason: string): FileAnswer {
  return { ok: false, reason };
}

function reasonOf(error: unknown): string {
  if (error instanceof TypeError) return 'This file is not a text in UTF-8.';
  switch (error instanceof Error && 'code' in error ? error.code : undefined) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'There is no such file.';
    case 'EACCES':
    case 'EPERM':
      return 'This file may not be read.';
    case 'EISDIR':
      return 'This is not a file.';
    default:
      return 'This file could not be read.';
  }
}
