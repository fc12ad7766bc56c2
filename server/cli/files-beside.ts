import { constants, closeSync, fstatSync, openSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { liesBelow } from '../entry/disk.js';
import { fileSizeLimitBytes, tooLarge } from '../language/file-size.js';
import { refusalOfPath } from '../language/paths.js';
import type { PictureBytes } from '../photograph/gather.js';
import { photographLimitBytes } from '../photograph/limits.js';
import type { FileAnswer, ReadFile } from '../plan/plan.js';
import { readUpToAtOnce } from './read-up-to.js';
import { decodeUtf8 } from './utf8.js';

/**
 * Reads the files that a plan names, from the plan's own folder. A plan may come from a stranger: what lies neither
 * below that folder nor below the current one is refused, also when a link leads there. Reasons are whole sentences.
 */
export function filesBeside(planFolder: string, currentFolder: string): ReadFile {
  const roots = [planFolder, currentFolder].flatMap((folder) => realPath(folder) ?? []);
  return remembering((written) => readBeside(written, planFolder, roots));
}

/** Reads each file once. */
export function remembering(read: (written: string) => FileAnswer): ReadFile {
  const known = new Map<string, FileAnswer>();
  return (written) => {
    const answer = known.get(written) ?? read(written);
    known.set(written, answer);
    return answer;
  };
}

/** Reads the photographs and sketches that a plan names, with the same refusals. */
export function picturesBeside(planFolder: string, currentFolder: string): (written: string) => PictureBytes {
  const roots = [planFolder, currentFolder].flatMap((folder) => realPath(folder) ?? []);
  return (written) => {
    const found = fileBeside(written, planFolder, roots);
    return found.ok ? readBytes(found.file, photographLimitBytes) : found;
  };
}

function readBeside(written: string, planFolder: string, roots: readonly string[]): FileAnswer {
  const found = fileBeside(written, planFolder, roots);
  if (!found.ok) return found;
  const read = readBytes(found.file, fileSizeLimitBytes);
  return read.ok ? asText(read.bytes) : read;
}

/** The text of a file that a plan names. */
export function asText(bytes: Uint8Array): FileAnswer {
  const decoded = decodeUtf8(bytes);
  return decoded.ok ? { ok: true, text: decoded.text } : refuse(`This file ${decoded.reason}.`);
}

type Refusal = Extract<FileAnswer, { readonly ok: false }>;

function fileBeside(
  written: string,
  planFolder: string,
  roots: readonly string[],
): { readonly ok: true; readonly file: string } | Refusal {
  const name = written.replaceAll('\\', '/');
  const refusal = refusalOfPath(name);
  if (refusal !== undefined) return refuse(refusal);
  const file = path.resolve(planFolder, name);
  // Asked before the disk is, so that nobody learns from the answer what lies outside.
  const lexicalRoots = [...roots, path.resolve(planFolder)];
  if (!lexicalRoots.some((root) => liesBelow(file, root))) return refuse(OUTSIDE);
  const real = realPath(file);
  if (real === undefined) return refuse('There is no such file.');
  return roots.some((root) => liesBelow(real, root)) ? { ok: true, file: real } : refuse(OUTSIDE);
}

const OUTSIDE = "This file lies outside the plan's folder and outside the folder you are in.";

function readBytes(file: string, limitBytes: number): PictureBytes {
  let handle: number | undefined;
  try {
    // Opening a pipe would wait for somebody to write into it; Windows knows no such flag.
    handle = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const status = fstatSync(handle);
    if (!status.isFile()) return refuse('This is not a file.');
    if (status.size > limitBytes) return refuse(tooLarge(limitBytes));
    // It may have grown since: one byte more tells that.
    const bytes = readUpToAtOnce(handle, limitBytes + 1);
    return bytes.length > limitBytes ? refuse(tooLarge(limitBytes)) : { ok: true, bytes };
  } catch {
    return refuse('This file may not be read.');
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

function realPath(file: string): string | undefined {
  try {
    return realpathSync(file);
  } catch {
    return undefined;
  }
}

function refuse(reason: Refusal['reason']): Refusal {
  return { ok: false, reason };
}
