import path from 'node:path';
import { format as formatPlan } from '../../grammar/index.js';
import { shown } from './display.js';
import { exitCodes, gravest, type ExitCode } from './exit-code.js';
import {
  readSource,
  refuseRepeatedInput,
  spokenName,
  standardInput,
  unreadableText,
  type Source,
} from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

export interface FormatOptions {
  /** Changes nothing and names the files that another format would change. */
  readonly check?: boolean;
}

const BYTE_ORDER_MARK = '\ufeff';

/** `mahlstick format`: sets plans in the house's style. Files that are in it already are not touched. */
export async function format(
  names: readonly string[],
  options: FormatOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  refuseRepeatedInput(names);
  const endings: ExitCode[] = [];
  for (const name of names) {
    const answer = await readSource(name, terminal);
    if (!answer.ok) {
      terminal.complain(unreadableText(answer.unreadable));
      endings.push(exitCodes.failed);
      continue;
    }
    endings.push(await formatSource(answer.source, options, terminal));
  }
  return gravest(endings);
}

async function formatSource(source: Source, options: FormatOptions, terminal: Terminal): Promise<ExitCode> {
  const { name, text, marked } = source;
  const formatted = formatPlan(text);
  if (options.check) {
    if (formatted === text) return exitCodes.fine;
    await terminal.print(`${shown(spokenName(name))}\n`);
    return exitCodes.found;
  }
  if (name === standardInput) {
    await terminal.print(formatted);
    return exitCodes.fine;
  }
  if (formatted === text) return exitCodes.fine;
  try {
    const content = (marked ? BYTE_ORDER_MARK : '') + formatted;
    await writeWhole(path.resolve(terminal.folder, name), name, content);
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    terminal.complain(error.message);
    return exitCodes.failed;
  }
  return exitCodes.fine;
}
