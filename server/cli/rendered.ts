import type { Page } from '../drawing/page.js';
import { missingLettersSentence } from '../drawing/pdf/words.js';
import type { Renderers } from '../entry/renderers.js';
import { CommandFailure, type Terminal } from './terminal.js';

/** What libraries make of a drawing; they are loaded when they are needed. What a drawing comes to lack is told. */

/** What writes SVG and PDF. */
export async function loadRenderers(): Promise<Renderers> {
  return (await import('../entry/renderers.js')).renderers;
}

/**
 * Pages as a PDF.
 * @param fonts those that were given for letters that the tool's own lack; left out where a command takes none
 */
export async function pdfFile(
  pages: Page | readonly Page[],
  theme: 'light' | 'dark',
  terminal: Pick<Terminal, 'complain'>,
  fonts?: readonly Uint8Array[],
): Promise<Uint8Array> {
  const { pdfOf } = await loadRenderers();
  const { pdf, missing } = await pdfOf(pages, theme, fonts);
  if (missing.length > 0) {
    const remedy = fonts === undefined ? '' : ' Give a font that has them with --font FILE.';
    terminal.complain(`${missingLettersSentence(missing)}${remedy}`);
  }
  return pdf;
}

/**
 * An SVG as a PNG so many pixels wide.
 * @throws CommandFailure where it can't be painted
 */
export async function pngFile(
  svg: string,
  width: number,
  terminal: Pick<Terminal, 'complain'>,
): Promise<Uint8Array> {
  const { pngOf } = await import('../drawing/png.js');
  const result = await pngOf(svg, width);
  if (!result.ok) throw new CommandFailure(result.reason);
  if (result.textMissing)
    terminal.complain('No font was found on this computer, so the drawing is without its words.');
  return result.png;
}
