import path from 'node:path';
import { pageToText } from '../drawing/headless.js';
import type { Page } from '../drawing/page.js';
import type { Target } from './draw-target.js';
import { readFonts } from './fonts.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

/** Wide enough for a page with two pictures. */
const USUAL_WIDTH = 2400;

/** Writes a page as SVG, PNG or PDF, or prints the SVG where no file is named. */
export async function writePage(
  page: Page,
  target: Target,
  {
    theme,
    width,
    font,
  }: { readonly theme: 'light' | 'dark'; readonly width?: number; readonly font?: readonly string[] },
  terminal: Terminal,
): Promise<void> {
  if (target.format === 'svg' && target.file === undefined) {
    await terminal.print(pageToText(page, { theme }));
    return;
  }
  const file = target.file ?? '';
  await writeWhole(
    path.resolve(terminal.folder, file),
    file,
    await contentOf(page, target, { theme, width, font }, terminal),
  );
}

async function contentOf(
  page: Page,
  { format }: Target,
  {
    theme,
    width,
    font = [],
  }: {
    readonly theme: 'light' | 'dark';
    readonly width: number | undefined;
    readonly font: readonly string[] | undefined;
  },
  terminal: Terminal,
): Promise<string | Uint8Array> {
  if (format === 'pdf') {
    const [{ pdfOf }, { roboto }, { missingLettersSentence }] = await Promise.all([
      import('../drawing/pdf/pdf.js'),
      import('../drawing/pdf/roboto.js'),
      import('../drawing/pdf/words.js'),
    ]);
    const { pdf, missing } = await pdfOf(page, {
      theme,
      fonts: { ...roboto, more: await readFonts(font, terminal) },
    });
    if (missing.length > 0) terminal.complain(missingLettersSentence(missing));
    return pdf;
  }
  const svg = pageToText(page, { theme });
  if (format === 'svg') return svg;
  const { pngOf } = await import('../drawing/png.js');
  const result = await pngOf(svg, width ?? USUAL_WIDTH);
  if (!result.ok) throw new CommandFailure(result.reason);
  if (result.textMissing)
    terminal.complain('No font was found on this computer, so the drawing is without its words.');
  return result.png;
}
