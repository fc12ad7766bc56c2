import { type DrawOptions, draw } from './draw.js';
import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { recordDocument } from './record-document.js';
import { recordText } from './record-text.js';
import { readOneSource } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';

export interface RecordOptions extends Pick<
  DrawOptions,
  'output' | 'width' | 'theme' | 'paper' | 'sitting' | 'font'
> {
  readonly json?: boolean;
}

/**
 * `mahlstick record`: what the photographs of the sittings tell, or with -o the drawing of it. A plan with errors is
 * worked with as far as it can be read.
 */
export async function record(name: string, options: RecordOptions, terminal: Terminal): Promise<ExitCode> {
  const { json, output } = options;
  if (output !== undefined) {
    if (json) throw new CommandFailure('--json is printed and -o writes a drawing; give one of them.');
    return draw(name, { ...options, view: 'record' }, terminal);
  }
  const withOutput = (['width', 'paper', 'sitting', 'font'] as const).find(
    (one) => options[one] !== undefined,
  );
  if (withOutput !== undefined) throw new CommandFailure(`--${withOutput} belongs to a drawing: give -o.`);
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal);
  const errors = errorsOf(snapshot);
  const document = recordDocument(name, snapshot.plan, snapshot.measures, errors);
  await terminal.print(
    json
      ? `${JSON.stringify(document, null, 2)}\n`
      : recordText(document, snapshot.findings, terminal.coloured),
  );
  return endingWith(name, errors, 'left out', terminal);
}
