import type { SquarePhotograph } from '../photograph/answers.js';
import { shown } from './display.js';

/** What a command may know of the world it runs in, apart from the files it is given by name. */
export interface Terminal {
  /** The current directory. */
  readonly folder: string;
  /** Whether what is printed may be coloured. */
  readonly coloured: boolean;
  /** What the clock says. */
  now(): Date;
  /** The bytes of the standard input, those beyond `mostBytes` left out. */
  readInput(mostBytes: number): Promise<Uint8Array>;
  /** Writes to the standard output, whole; settles when the reader has taken it or has gone. */
  print(output: string): Promise<void>;
  /** Squares up the photographs that plans name; begun with the first. */
  readonly square: SquarePhotograph;
  /** Tells the painter one thing that is amiss, on the standard error stream. */
  complain(message: string): void;
  /** Shows help on the standard error stream, as it is. */
  explain(text: string): void;
}

/**
 * How what is amiss reads on the error stream: a line that says who tells it, whatever signs are in the names that it
 * tells of.
 */
export function complaint(message: string): string {
  return `mahlstick: ${shown(message)}\n`;
}

/** A command that cannot be carried out, with the reason in plain words: a whole sentence. */
export class CommandFailure extends Error {}

/** The words for why the system refuses a file, to go behind its name: `is not there`. */
export function refusalOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
      return 'is not there';
    case 'ENOTDIR':
      return 'is not there: part of its path is a file, not a folder';
    case 'EISDIR':
      return 'is a folder, not a file';
    case 'EACCES':
    case 'EPERM':
      return 'is out of reach: permission denied';
    case 'EROFS':
      return 'cannot be written: the disk can only be read';
    case 'ENOSPC':
      return 'cannot be written: the disk is full';
    case 'ELOOP':
      return 'is a link that leads to itself';
    case 'ENAMETOOLONG':
      return 'has too long a name';
    default:
      return typeof code === 'string' ? `is out of reach (${code})` : 'is out of reach';
  }
}
