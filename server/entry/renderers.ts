import { pageToText, renderToText } from '../drawing/headless.js';
import type { Page } from '../drawing/page.js';
import { checkFont } from '../drawing/pdf/fonts.js';
import { type PdfResult, pdfOf } from '../drawing/pdf/pdf.js';
import { roboto } from '../drawing/pdf/roboto.js';
import type { ExportTheme } from '../language/export-protocol.js';

/**
 * What writes SVG and PDF. It is large and seldom wanted, so it is a bundle of its own, `dist/export.js`, which the
 * servers for node and for web workers and the command line share and load when a drawing is exported for the first
 * time.
 */
export interface Renderers {
  readonly renderToText: typeof renderToText;
  readonly pageToText: typeof pageToText;
  /** @param more fonts for letters that the tool's own lack, in which `checkFont` found nothing wrong */
  readonly pdfOf: (
    pages: Page | readonly Page[],
    theme: ExportTheme,
    more?: readonly Uint8Array[],
  ) => Promise<PdfResult>;
  readonly checkFont: typeof checkFont;
}

export const renderers: Renderers = {
  renderToText,
  pageToText,
  pdfOf: (pages, theme, more = []) => pdfOf(pages, { theme, fonts: { ...roboto, more } }),
  checkFont,
};
