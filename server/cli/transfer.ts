import path from 'node:path';
import { reasonInWords } from '../../grammar/index.js';
import type { PaperSize } from '../drawing/paper.js';
import { usualPaper } from '../drawing/plan-sheet/sheet.js';
import { fullSizePages } from '../drawing/transfer/full-size.js';
import type { Ruler } from '../measure/transfer/rulers.js';
import type { Snapshot } from '../language/snapshot.js';
import { draw } from './draw.js';
import { type Target, targetOf } from './draw-target.js';
import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { readFonts } from './fonts.js';
import { pdfFile } from './rendered.js';
import { readOneSource } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { transferDocument } from './transfer-document.js';
import { transferText } from './transfer-text.js';
import { writeWhole } from './write-whole.js';

export interface TransferOptions {
  readonly json?: boolean;
  readonly output?: string;
  readonly unit?: Ruler;
  readonly mirror?: boolean;
  readonly paper?: PaperSize;
  readonly landscape?: boolean;
  readonly upright?: boolean;
  /** Millimetres. */
  readonly overlap?: number;
  readonly margin?: number;
  /** Pixels. */
  readonly width?: number;
  readonly font?: readonly string[];
}

/**
 * `mahlstick transfer`: what is measured off to carry a drawing over, or with a file the drawing itself, as a PDF at
 * full size on sheets of paper. A plan with errors is worked with as far as it can be read.
 */
export async function transfer(
  name: string,
  options: TransferOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { output, json, mirror = false } = options;
  refuseUnfit(options);
  if (output === undefined) return tell(name, options, terminal);
  if (json) throw new CommandFailure('--json goes to the standard output. Leave out -o, or --json.');
  const target = targetOf(options);
  if (target.format !== 'pdf') {
    return draw(name, { ...drawn(options), view: 'transfer', theme: 'light', mirror }, terminal);
  }
  const fonts = await readFonts(options.font ?? [], terminal);
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal);
  await writePages(target, snapshot, options, fonts, terminal);
  return endingWith(name, errorsOf(snapshot), 'not drawn', terminal);
}

async function tell(name: string, options: TransferOptions, terminal: Terminal): Promise<ExitCode> {
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal);
  const { plan, measures, findings } = snapshot;
  const errors = errorsOf(snapshot);
  const document = transferDocument(plan, measures, {
    file: name,
    errors,
    isMirrored: options.mirror ?? false,
    ruler: options.unit,
  });
  await terminal.print(
    options.json
      ? `${JSON.stringify(document, null, 2)}\n`
      : transferText(document, plan, findings, terminal.coloured),
  );
  return endingWith(name, errors, 'left out', terminal);
}

function drawn({ output, width }: TransferOptions): { readonly output?: string; readonly width?: number } {
  return { ...(output === undefined ? {} : { output }), ...(width === undefined ? {} : { width }) };
}

/** Before any work is done, so that a wrong word costs nobody a wait. */
function refuseUnfit({
  output,
  paper,
  landscape,
  upright,
  overlap,
  margin,
  unit,
  width,
  font,
}: TransferOptions): void {
  const isPdf = output !== undefined && path.extname(output).toLowerCase() === '.pdf';
  const ofSheets = [
    ['--paper', paper],
    ['--landscape', landscape],
    ['--upright', upright],
    ['--overlap', overlap],
    ['--margin', margin],
    ['--font', font],
  ] as const;
  const [wrong] = ofSheets.find(([, value]) => value !== undefined) ?? [];
  if (wrong !== undefined && !isPdf)
    throw new CommandFailure(`${wrong} belongs to full-size pages. Add -o NAME.pdf.`);
  if (landscape && upright) throw new CommandFailure('Sheets lie upright or landscape, not both.');
  if (unit !== undefined && output !== undefined)
    throw new CommandFailure('--unit belongs to the table. Leave out -o, or --unit.');
  if (width !== undefined && output === undefined)
    throw new CommandFailure('--width counts the pixels of a .png. Add -o NAME.png.');
}

async function writePages(
  target: Extract<Target, { format: 'png' | 'pdf' }>,
  { plan, measures }: Snapshot,
  options: TransferOptions,
  fonts: readonly Uint8Array[],
  terminal: Terminal,
): Promise<void> {
  const full = fullSizePages(plan, measures, {
    paper: options.paper ?? usualPaper(plan),
    lies: options.landscape ? 'landscape' : options.upright ? 'upright' : undefined,
    overlap: options.overlap,
    margin: options.margin,
    isMirrored: options.mirror,
  });
  if (!full.ok) throw new CommandFailure(reasonInWords(full.reason));
  const pdf = await pdfFile(full.pages, 'light', terminal, fonts);
  await writeWhole(path.resolve(terminal.folder, target.file), target.file, pdf);
  const { length } = full.layout.sheets;
  terminal.explain(
    `${target.file} is written: a page with the map, and ${length === 1 ? 'one sheet' : `${length} sheets`} of ${full.layout.paper}. Print at 100 % and measure the rules on the first page.\n`,
  );
}
