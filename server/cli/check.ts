import { linesOfBase } from '../plan/based-on/bases.js';
import { checkDocument, type CheckedFile } from './check-document.js';
import { checkText } from './check-text.js';
import { evaluate } from './evaluate.js';
import { exitCodes, gravest, type ExitCode } from './exit-code.js';
import { countRemarks, remarksOf } from './remarks.js';
import {
  readSource,
  refuseRepeatedInput,
  type SourceAnswer,
  spokenName,
  unreadableText,
  type UnreadableSource,
} from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';

export interface CheckOptions {
  readonly json?: boolean;
  /** Warnings count as errors do. */
  readonly strict?: boolean;
  /** Instead of plans by name those that are about to be committed, as they are staged. */
  readonly staged?: boolean;
}

interface Checked extends CheckedFile {
  readonly lines: readonly string[];
  readonly linesOf: (file: string) => readonly string[];
}

/** `mahlstick check`: says what is wrong with plans, and what the rules find in them. */
export async function check(
  names: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  refuse(names, options);
  const files: (Checked | UnreadableSource)[] = [];
  for await (const answer of options.staged === true ? staged(terminal) : sources(names, terminal)) {
    if (!answer.ok) {
      files.push(answer.unreadable);
      continue;
    }
    const snapshot = await evaluate(answer.source, terminal);
    const title = snapshot.plan.title?.value;
    files.push({
      name: answer.source.name,
      ...(title === undefined ? {} : { title }),
      lines: snapshot.lines,
      linesOf: (file) => linesOfBase(snapshot.plan.basedOn, file),
      remarks: remarksOf(snapshot),
    });
  }
  if (options.json) {
    await terminal.print(`${JSON.stringify(checkDocument(files), null, 2)}\n`);
  } else {
    const plans = files.filter(isChecked).map((file) => ({ ...file, name: spokenName(file.name) }));
    await terminal.print(checkText(plans, terminal.coloured));
    for (const file of files) if (!isChecked(file)) terminal.complain(unreadableText(file));
  }
  return gravest(files.map((file) => endingOf(file, options)));
}

function refuse(names: readonly string[], { staged }: CheckOptions): void {
  if (staged === true && names.length > 0)
    throw new CommandFailure('--staged checks what is staged; give it no plans.');
  if (staged !== true && names.length === 0)
    throw new CommandFailure('Name the plans to check, or give --staged. Try `mahlstick check --help`.');
  refuseRepeatedInput(names);
}

/** What reads from git is loaded only for this. */
async function* staged(terminal: Terminal): AsyncGenerator<SourceAnswer> {
  yield* (await import('./staged.js')).stagedSources(terminal);
}

async function* sources(names: readonly string[], terminal: Terminal): AsyncGenerator<SourceAnswer> {
  for (const name of names) yield await readSource(name, terminal);
}

function endingOf(file: Checked | UnreadableSource, { strict }: CheckOptions): ExitCode {
  if (!isChecked(file)) return exitCodes.failed;
  const { errors, warnings } = countRemarks(file.remarks);
  return errors > 0 || (strict && warnings > 0) ? exitCodes.found : exitCodes.fine;
}

function isChecked(file: Checked | UnreadableSource): file is Checked {
  return 'remarks' in file;
}
