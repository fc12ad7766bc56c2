import { createReadStream } from 'node:fs';
import path from 'node:path';
import type { ReadFile } from '../plan/plan.js';
import { fileSizeLimitBytes } from '../language/file-size.js';
import { readUpTo } from './read-up-to.js';
import { CommandFailure, refusalOf, type Terminal } from './terminal.js';
import { decodeUtf8 } from './utf8.js';

/** The name under which the standard input is given and reported. */
export const standardInput = '-';

export interface Source {
  /** As the painter gave it. */
  readonly name: string;
  readonly text: string;
  /** The file begins with a byte order mark, which `text` does not hold. */
  readonly marked: boolean;
  /** Files that the plan names are looked for from here. */
  readonly folder: string;
  /** Reads them from somewhere else than the disk: from a commit. */
  readonly readFile?: ReadFile;
}

export interface UnreadableSource {
  readonly name: string;
  /** Goes behind the name: `is not there`. */
  readonly reason: string;
  /** Counted from 1; where there is a place to tell. */
  readonly line?: number;
  readonly byte?: number;
}

export type SourceAnswer =
  | { readonly ok: true; readonly source: Source }
  | { readonly ok: false; readonly unreadable: UnreadableSource };

/** Reads a plan from a file or a pipe, or from the standard input when its name is `-`. */
export async function readSource(name: string, terminal: Terminal): Promise<SourceAnswer> {
  if (name === '') return { ok: false, unreadable: { name, reason: 'names no file' } };
  const file = path.resolve(terminal.folder, name);
  const folder = name === standardInput ? terminal.folder : path.dirname(file);
  let bytes: Uint8Array;
  try {
    // One byte more tells that there are too many; a device may have no end.
    const most = fileSizeLimitBytes + 1;
    bytes = await (name === standardInput
      ? terminal.readInput(most)
      : readUpTo(createReadStream(file), most));
  } catch (error) {
    return { ok: false, unreadable: { name, reason: refusalOf(error) } };
  }
  if (bytes.length > fileSizeLimitBytes)
    return { ok: false, unreadable: { name, reason: 'is larger than 5 MB' } };
  const decoded = decodeUtf8(bytes);
  if (decoded.ok) return { ok: true, source: { name, text: decoded.text, marked: decoded.marked, folder } };
  const { reason, line, byte } = decoded;
  return { ok: false, unreadable: { name, reason, line, byte } };
}

/** Reads the one plan that a command is about. */
export async function readOneSource(name: string, terminal: Terminal): Promise<Source> {
  const answer = await readSource(name, terminal);
  if (answer.ok) return answer.source;
  throw new CommandFailure(unreadableText(answer.unreadable));
}

/** The sentence to tell of a plan that can't be read. */
export function unreadableText({ name, reason }: UnreadableSource): string {
  return `${spokenName(name)} ${reason}.`;
}

/** How a message speaks of a file. */
export function spokenName(name: string): string {
  if (name === standardInput) return 'the standard input';
  return name === '' ? '""' : name;
}

/** The standard input can be read once. */
export function refuseRepeatedInput(names: readonly string[]): void {
  if (names.filter((name) => name === standardInput).length > 1) {
    throw new CommandFailure('The standard input (-) can be read only once.');
  }
}
