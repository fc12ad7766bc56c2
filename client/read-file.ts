import { URI, Utils } from 'vscode-uri';
import { t } from '../grammar/localised.js';
import { fileSizeLimitBytes } from '../server/language/file-size.js';
import type { ReadFileResult } from '../server/language/protocol.js';

/** The part of `vscode.workspace.fs` that reading needs; `type` is a sum of {@link fileTypes}. */
export interface Files {
  readonly stat: (uri: URI) => Thenable<{ readonly type: number; readonly size: number }>;
  readonly readFile: (uri: URI) => Thenable<Uint8Array>;
}

/** The bits of `vscode.FileType`. */
const fileTypes = { file: 1, symbolicLink: 64 } as const;

/** Where plans may read from. */
export interface Reach {
  /** The open workspace folders. */
  readonly folders: readonly URI[];
  /** The open plans, beside which may be read while no folder is open. */
  readonly plans: readonly URI[];
}

export type BytesAnswer =
  | { readonly ok: true; readonly bytes: Uint8Array }
  /** Shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/**
 * Reads a text that a plan names, in UTF-8 and no larger than {@link fileSizeLimitBytes}; see {@link readBytesForPlan}.
 */
export async function readFileForPlan(uriText: string, reach: Reach, files: Files): Promise<ReadFileResult> {
  const read = await readBytesForPlan(uriText, reach, files, fileSizeLimitBytes);
  if (!read.ok) return read;
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(read.bytes) };
  } catch {
    return refused(t('This file is not a text in UTF-8.'));
  }
}

/**
 * Reads a file that a plan names, on whatever file system it lies. The server has checked the place; it is
 * checked again here, as the plan may come from a stranger: only below a workspace folder, or below the folder of
 * an open plan while there is none, never through a link, and no more than `limitBytes`.
 */
export async function readBytesForPlan(
  uriText: string,
  reach: Reach,
  files: Files,
  limitBytes: number,
): Promise<BytesAnswer> {
  const tooLarge = refused(t('This file is larger than {0} MB.', limitBytes / 1024 / 1024));
  const uri = parseUri(uriText);
  const root = uri && rootOf(uri, reach);
  if (uri === undefined || root === undefined) {
    return refused(t('This file lies outside the folder that is open.'));
  }
  try {
    for (const place of placesBetween(root, uri)) {
      if (((await files.stat(place)).type & fileTypes.symbolicLink) !== 0) {
        return refused(t('This is a link to another place.'));
      }
    }
    const { type, size } = await files.stat(uri);
    if ((type & fileTypes.file) === 0) return refused(t('This is not a file.'));
    if (size > limitBytes) return tooLarge;
    const bytes = await files.readFile(uri);
    return bytes.byteLength > limitBytes ? tooLarge : { ok: true, bytes };
  } catch (error) {
    return refused(reasonOf(error));
  }
}

function refused(reason: string): { readonly ok: false; readonly reason: string } {
  return { ok: false, reason };
}

function parseUri(text: string): URI | undefined {
  try {
    const uri = URI.parse(text, true);
    const segments = uri.path.split('/');
    // A backslash is a separator to a Windows disk, and none to the comparison of paths below.
    return segments.includes('..') || segments.includes('.') || uri.path.includes('\\') ? undefined : uri;
  } catch {
    return undefined;
  }
}

function rootOf(uri: URI, { folders, plans }: Reach): URI | undefined {
  if (folders.length > 0) return folders.find((folder) => isBelow(uri, folder));
  return plans
    .filter(({ path }) => path.startsWith('/'))
    .map((plan) => Utils.dirname(plan))
    .find((folder) => isBelow(uri, folder));
}

/** Of two paths as they are written out, in which the letter of a Windows disk is small, however an editor has it. */
function isBelow(uri: URI, folder: URI): boolean {
  const stem = folder.toString();
  return uri.toString().startsWith(stem.endsWith('/') ? stem : `${stem}/`);
}

/** The folders between the root and the file, and the file. */
function placesBetween(root: URI, uri: URI): readonly URI[] {
  const names = uri.path
    .slice(root.path.length)
    .split('/')
    .filter((name) => name !== '');
  return names.map((_, index) => Utils.joinPath(root, ...names.slice(0, index + 1)));
}

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'FileNotFound' ? t('There is no such file.') : t('This file could not be read.');
}
