import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { measureDocument } from './measure-document.js';
import { measureText } from './measure-text.js';
import { readOneSource } from './source.js';
import type { Terminal } from './terminal.js';

export interface MeasureOptions {
  readonly json?: boolean;
}

/** `mahlstick measure`: what is measured on a plan. A plan with errors is measured as far as it can be read. */
export async function measure(name: string, options: MeasureOptions, terminal: Terminal): Promise<ExitCode> {
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal, 'plan');
  const errors = errorsOf(snapshot);
  const document = measureDocument(name, snapshot.plan, snapshot.measures, errors);
  await terminal.print(
    options.json ? `${JSON.stringify(document, null, 2)}\n` : measureText(document, terminal.coloured),
  );
  return endingWith(name, errors, 'not measured', terminal);
}
