import path from 'node:path';
import { compose } from '../drawing/compose.js';
import { renderToText } from '../drawing/headless.js';
import type { Page } from '../drawing/page.js';
import { type Paper, pageOf, scaleInWords } from '../drawing/paper.js';
import type { View } from '../drawing/scene.js';
import type { Snapshot } from '../language/snapshot.js';
import { type Distance, millimetresOf } from './distance.js';
import { type Target, targetOf } from './draw-target.js';
import { evaluate } from './evaluate.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { readFonts } from './fonts.js';
import { countRemarks, remarksOf } from './remarks.js';
import { readOneSource, spokenName } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

export interface DrawOptions {
  readonly view: View;
  readonly theme: 'light' | 'dark';
  readonly output?: string;
  /** Pixels. */
  readonly width?: number;
  /** From where the picture is looked at in the view `squint`, as `lengthOf` reads it. */
  readonly distance?: Distance;
  readonly paper?: Paper;
  /** Files of fonts for letters that the tool's own lacks. */
  readonly font?: readonly string[];
}

const USUAL_WIDTH = 1600;

/** `mahlstick draw`: a plan as SVG, PNG or PDF. A plan with errors is drawn as far as it can be read. */
export async function draw(name: string, options: DrawOptions, terminal: Terminal): Promise<ExitCode> {
  if (options.distance !== undefined && options.view !== 'squint') {
    throw new CommandFailure('--distance belongs to --view squint.');
  }
  const target = targetOf(options);
  if (options.paper !== undefined && target.format !== 'pdf') {
    throw new CommandFailure('--paper belongs to a .pdf. Add -o NAME.pdf.');
  }
  const fonts = target.format === 'pdf' ? await readFonts(options.font ?? [], terminal) : [];
  const snapshot = evaluate(await readOneSource(name, terminal), terminal);
  await write(target, snapshot, options, fonts, terminal);
  const { errors } = countRemarks(remarksOf(snapshot));
  if (errors === 0) return exitCodes.fine;
  terminal.complain(
    `${spokenName(name)} has ${errors} error${errors === 1 ? '' : 's'}; what can't be read is not drawn. ` +
      'See `mahlstick check`.',
  );
  return exitCodes.found;
}

async function write(
  target: Target,
  snapshot: Snapshot,
  options: DrawOptions,
  fonts: readonly Uint8Array[],
  terminal: Terminal,
): Promise<void> {
  const { plan, measures, findings } = snapshot;
  const scene = compose(plan, measures, findings, options.view, {
    distanceMillimetres: options.distance && millimetresOf(options.distance, plan.canvas),
  });
  if (target.format === 'pdf') {
    const { page, scale } = pageOf(scene, plan, options.paper ?? 'true');
    await writeTo(target.file, await printed(page, options, fonts, terminal), terminal);
    if (scale !== 1) terminal.complain(`The picture is drawn at ${scaleInWords(scale)}.`);
    return;
  }
  const svg = renderToText(scene, { theme: options.theme });
  if (target.file === undefined) {
    await terminal.print(svg);
    return;
  }
  const content = target.format === 'png' ? await painted(svg, options.width ?? USUAL_WIDTH, terminal) : svg;
  await writeTo(target.file, content, terminal);
}

function writeTo(file: string, content: string | Uint8Array, { folder }: Terminal): Promise<void> {
  return writeWhole(path.resolve(folder, file), file, content);
}

async function printed(
  page: Page,
  { theme }: DrawOptions,
  more: readonly Uint8Array[],
  terminal: Terminal,
): Promise<Uint8Array> {
  const [{ pdfOf }, { roboto }, { missingLettersSentence }] = await Promise.all([
    import('../drawing/pdf/pdf.js'),
    import('../drawing/pdf/roboto.js'),
    import('../drawing/pdf/words.js'),
  ]);
  const { pdf, missing } = await pdfOf(page, { theme, fonts: { ...roboto, more } });
  if (missing.length > 0) {
    terminal.complain(`${missingLettersSentence(missing)} Give a font that has them with --font FILE.`);
  }
  return pdf;
}

async function painted(svg: string, width: number, terminal: Terminal): Promise<Uint8Array> {
  const { pngOf } = await import('../drawing/png.js');
  const result = await pngOf(svg, width);
  if (!result.ok) throw new CommandFailure(result.reason);
  if (result.textMissing) {
    terminal.complain('No font was found on this computer, so the drawing is without its words.');
  }
  return result.png;
}
