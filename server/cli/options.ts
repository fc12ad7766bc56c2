import { InvalidArgumentError } from 'commander';
import { millimetresPer } from '../plan/lengths.js';
import { type Distance, readDistance } from './distance.js';
import type { ExitCode } from './exit-code.js';

/** The values of options, as they are written on a command line; what is none is refused in a sentence. */

const WIDEST = 20_000;

/** A width in pixels, 1 to 20,000. */
export function pixels(text: string): number {
  const count = Number(text);
  if (/^\d+$/.test(text) && count >= 1 && count <= WIDEST) return count;
  throw new InvalidArgumentError(`A width is a whole number of pixels from 1 to ${WIDEST}.`);
}

/** An option that can be given again. */
export function collected(file: string, files: readonly string[] = []): readonly string[] {
  return [...files, file];
}

/** From how far a picture is looked at. */
export function distance(text: string): Distance {
  const read = readDistance(text);
  if (read !== undefined) return read;
  throw new InvalidArgumentError('A distance is a length from 1 mm to 1000 m, such as 3m, 250cm or 120in.');
}

/** The number of a sitting, counted from 1. */
export function sitting(text: string): number {
  const count = Number(text);
  if (/^\d{1,6}$/.test(text) && count >= 1) return count;
  throw new InvalidArgumentError('A sitting is told by its number in the plan: 1 for the first.');
}

/** Millimetres, also where no unit is given. */
export function within(what: string, { least, most }: { readonly least: number; readonly most: number }) {
  return (text: string): number => {
    const read = readDistance(text);
    const millimetres = read === undefined ? NaN : read.value * millimetresPer(read.unit ?? 'mm');
    if (millimetres >= least && millimetres <= most) return millimetres;
    throw new InvalidArgumentError(`${what} is a length from ${least} to ${most} mm, such as 10mm or 0.5in.`);
  };
}

/** What stands below the options of a command: an example, and what its exit codes mean. */
export function helpText(example: string, endings: readonly (readonly [ExitCode, string])[]): string {
  const codes = endings.map(([code, meaning]) => `  ${code}  ${meaning}`).join('\n');
  return `\nExample:\n  ${example}\n\nExit codes:\n${codes}\n`;
}
