import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { mixDocument } from './mix-document.js';
import { mixText } from './mix-text.js';
import { readOneSource } from './source.js';
import type { Terminal } from './terminal.js';

export interface MixOptions {
  readonly json?: boolean;
}

/** `mahlstick mix`: what the colours are mixed of. A plan with errors is worked with as far as it can be read. */
export async function mix(name: string, options: MixOptions, terminal: Terminal): Promise<ExitCode> {
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal, 'plan');
  const errors = errorsOf(snapshot);
  const document = mixDocument(name, snapshot.plan, snapshot.measures.palette, errors);
  await terminal.print(
    options.json
      ? `${JSON.stringify(document, null, 2)}\n`
      : mixText(document, snapshot.findings, terminal.coloured),
  );
  return endingWith(name, errors, 'left out', terminal);
}
