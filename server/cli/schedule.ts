import path from 'node:path';
import type { Snapshot } from '../language/snapshot.js';
import { calendarEvents } from '../drawing/icalendar/events.js';
import { iCalendar } from '../drawing/icalendar/write.js';
import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { scheduleDocument } from './schedule-document.js';
import { scheduleText } from './schedule-text.js';
import { readOneSource, spokenName, standardInput } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

export interface ScheduleOptions {
  readonly json?: boolean;
  readonly output?: string;
}

/**
 * `mahlstick schedule`: the sittings in time, or as a calendar. A plan with errors is worked with as far as it can be
 * read.
 */
export async function schedule(
  name: string,
  options: ScheduleOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  refuse(options);
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal, 'plan');
  const errors = errorsOf(snapshot);
  if (options.output === undefined) await terminal.print(printed(name, snapshot, errors, options, terminal));
  else await writeCalendar(name, snapshot, options.output, terminal);
  return endingWith(name, errors, 'left out', terminal);
}

/** Decided before any work is done. */
function refuse({ json, output }: ScheduleOptions): void {
  if (output === undefined) return;
  if (json) throw new CommandFailure('--json is printed and -o writes a calendar; give one of them.');
  if (output === standardInput || path.extname(output).toLowerCase() === '.ics') return;
  const ending = path.extname(output);
  throw new CommandFailure(
    `${output} ${ending === '' ? 'has no ending' : `ends in ${ending}`}; a calendar is written as .ics.`,
  );
}

function printed(
  name: string,
  { plan, measures, findings }: Snapshot,
  errors: number,
  { json }: ScheduleOptions,
  { coloured }: Terminal,
): string {
  const document = scheduleDocument(name, plan, measures.schedule, errors);
  return json ? `${JSON.stringify(document, null, 2)}\n` : scheduleText(document, findings, coloured);
}

async function writeCalendar(
  name: string,
  { plan, measures }: Snapshot,
  output: string,
  terminal: Terminal,
): Promise<void> {
  const file = path.basename(spokenName(name));
  const events = measures.schedule ? calendarEvents(plan, measures.schedule, file) : [];
  if (events.length === 0) {
    throw new CommandFailure(
      `${spokenName(name)} plans nothing on any day, so there is nothing to put into a calendar.`,
    );
  }
  const calendar = iCalendar(events, { name: plan.title?.value ?? file, now: terminal.now() });
  if (output === standardInput) await terminal.print(calendar);
  else await writeWhole(path.resolve(terminal.folder, output), output, calendar);
}
