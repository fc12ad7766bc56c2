import { marked } from '../../grammar/marked.js';
import { constants } from 'node:fs';
import { open, realpath } from 'node:fs/promises';
import path from 'node:path';
import { URI } from 'vscode-uri';
import { fileSizeLimitBytes, tooLarge } from '../language/file-size.js';
import type { PictureBytes } from '../photograph/gather.js';
import { photographLimitBytes } from '../photograph/limits.js';
import type { FileAnswer } from '../plan/plan.js';

/**
 * Reads a text file from the disk. Refused, with the reason as a sentence for the painter: what a link leads to
 * outside of the `roots` (folder URIs), what is no plain file, what is larger than the limit, what is no UTF-8.
 * Never rejects.
 */
export async function readFromDisk(uri: string, roots: readonly string[]): Promise<FileAnswer> {
  const read = await readBytesFromDisk(uri, roots, fileSizeLimitBytes);
  if (!read.ok) return read;
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(read.bytes) };
  } catch {
    return refuse(marked('This file is not a text in UTF-8.'));
  }
}

/** Reads any file from the disk, with the same refusals. Never rejects. */
export async function readBytesFromDisk(
  uri: string,
  roots: readonly string[],
  limitBytes = photographLimitBytes,
): Promise<PictureBytes> {
  const file = URI.parse(uri);
  if (file.scheme !== 'file') return refuse(marked('This file is not on a disk that can be read.'));
  try {
    const real = await realpath(file.fsPath);
    if (!(await liesIn(real, roots)))
      return refuse(marked('This file lies outside the folder that is open.'));
    return await readBytes(real, limitBytes);
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

async function readBytes(file: string, limitBytes: number): Promise<PictureBytes> {
  // Opening a pipe would wait for somebody to write into it. The flag is not there on Windows, and not needed.
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const status = await handle.stat();
    if (!status.isFile()) return refuse(marked('This is not a file.'));
    if (status.size > limitBytes) return refuse(tooLarge(limitBytes));
    // One byte more tells that it has grown since.
    const bytes = new Uint8Array(status.size + 1);
    let length = 0;
    while (length < bytes.length) {
      const { bytesRead } = await handle.read(bytes, length, bytes.length - length, length);
      if (bytesRead === 0) break;
      length += bytesRead;
    }
    return length > limitBytes
      ? refuse(tooLarge(limitBytes))
      : { ok: true, bytes: bytes.subarray(0, length) };
  } finally {
    await handle.close();
  }
}

type Refusal = Extract<FileAnswer, { readonly ok: false }>;

function refuse(reason: Refusal['reason']): Refusal {
  return { ok: false, reason };
}

function reasonOf(error: unknown): string {
  switch (error instanceof Error && 'code' in error ? error.code : undefined) {
    case 'ENOENT':
    case 'ENOTDIR':
      return marked('There is no such file.');
    case 'EACCES':
    case 'EPERM':
      return marked('This file may not be read.');
    case 'EISDIR':
      return marked('This is not a file.');
    default:
      return marked('This file could not be read.');
  }
}
