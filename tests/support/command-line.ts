import { Readable } from 'node:stream';
import { measureDocument } from '../../server/cli/measure-document.js';
import type { MeasureDocument } from '../../server/cli/schema/measure.js';
import { linesOf } from '../../server/language/text.js';
import { evaluateAlone } from '../../server/cli/evaluate.js';
import { run } from '../../server/cli/program.js';
import { remarksOf } from '../../server/cli/remarks.js';
import type { ExitCode } from '../../server/cli/exit-code.js';
import { readUpTo } from '../../server/cli/read-up-to.js';
import { complaint, type Terminal } from '../../server/cli/terminal.js';
import { checked } from './plan.js';

export interface Session {
  readonly code: ExitCode | undefined;
  readonly output: string;
  readonly complaints: readonly string[];
  /** The standard error stream as it reads. */
  readonly errors: string;
}

/** Runs a command line in this process, with its standard input. */
export async function session(
  words: readonly string[],
  input: string | Uint8Array = '',
  folder = '/',
): Promise<Session> {
  let [output, errors] = ['', ''];
  const complaints: string[] = [];
  const terminal: Terminal = {
    folder,
    square: async (...asked) =>
      (await import('../../server/photograph/square.js')).squarePhotograph(...asked),
    coloured: false,
    now: () => new Date('2026-11-30T08:05:09Z'),
    readInput: (mostBytes) => readUpTo(Readable.from([Buffer.from(input)]), mostBytes),
    print: (text) => {
      output += text;
      return Promise.resolve();
    },
    complain: (message) => {
      complaints.push(message);
      errors += complaint(message);
    },
    explain: (text) => {
      complaints.push(text);
      errors += text;
    },
  };
  const code = await run(words, terminal);
  return { code, output, complaints, errors };
}

/** A plan as `check` sees it, under the name `plan.mahl`. */
export function checkedPlan(text: string) {
  const snapshot = evaluateAlone({ name: 'plan.mahl', text, marked: false, folder: '/' }, { folder: '/' });
  return { name: 'plan.mahl', lines: linesOf(text), remarks: remarksOf(snapshot) };
}

/** Half of it `left`, a quarter of it `quarter`, a quarter bare: 20 x 10 cm in thirds. */
export const halves = `plan "Halves"
canvas 20 x 10 cm
  ground #ffffff
divide thirds
focus upper left
budget value dark 50%, light 30% within 5%
colour ink #1a1a1a dominant
object left, dominant
  shape rectangle (0, 0) to (10, 10)
  colour ink
  value 1
object quarter
  plane foreground
  shape rectangle (10, 0) to (15, 10)
  value 4
object gone
  plane background
  shape rectangle (0, 0) to (5, 5)
  value 3
`;

/** A plan as `measure --json` prints it, under the name `plan.mahl`. */
export function measured(text: string): MeasureDocument {
  const { plan, measures } = checked(text);
  return measureDocument('plan.mahl', plan, measures, 0);
}
