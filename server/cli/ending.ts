import { errorsSentence } from '../language/errors.js';
import type { Snapshot } from '../language/snapshot.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { countRemarks, remarksOf } from './remarks.js';
import { spokenName } from './source.js';
import type { Terminal } from './terminal.js';

/** How many errors a plan has, with those that rules find. */
export function errorsOf(snapshot: Snapshot): number {
  return countRemarks(remarksOf(snapshot)).errors;
}

/** How a command ends that has done what it could with a plan; where that was not all, it is told. */
export function endingWith(
  name: string,
  errors: number,
  whatBecomesOfIt: Parameters<typeof errorsSentence>[2],
  terminal: Pick<Terminal, 'complain'>,
): ExitCode {
  if (errors === 0) return exitCodes.fine;
  terminal.complain(`${errorsSentence(spokenName(name), errors, whatBecomesOfIt)} See \`mahlstick check\`.`);
  return exitCodes.found;
}
