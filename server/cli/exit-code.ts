/** How a command ends, told to the shell and explained in every help text. */
export const exitCodes = {
  /** Done, and no plan has an error. */
  fine: 0,
  /** Done, but a plan has errors (with `--strict` warnings, with `format --check` another format). */
  found: 1,
  /** Not done: a file could not be read or written, or the command was not understood. */
  failed: 2,
  /** A fault in the program itself. */
  fault: 3,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** The graver of several endings. */
export function gravest(codes: readonly ExitCode[]): ExitCode {
  return codes.reduce<ExitCode>((worst, code) => (code > worst ? code : worst), exitCodes.fine);
}
