import path from 'node:path';
import { pageToText } from '../drawing/headless.js';
import type { Page } from '../drawing/page.js';
import type { Target } from './draw-target.js';
import { pdfFile, pngFile } from './rendered.js';
import type { Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

/** Wide enough for a page with two pictures. */
const USUAL_WIDTH = 2400;

/** Writes a page as SVG, PNG or PDF, or prints the SVG where no file is named. */
export async function writePage(
  page: Page,
  target: Target,
  { theme, width = USUAL_WIDTH }: { readonly theme: 'light' | 'dark'; readonly width?: number },
  terminal: Terminal,
): Promise<void> {
  const { file } = target;
  if (file === undefined) {
    await terminal.print(pageToText(page, { theme }));
    return;
  }
  const content = await contentOf();
  await writeWhole(path.resolve(terminal.folder, file), file, content);

  function contentOf(): string | Promise<Uint8Array> {
    switch (target.format) {
      case 'svg':
        return pageToText(page, { theme });
      case 'png':
        return pngFile(pageToText(page, { theme }), width, terminal);
      case 'pdf':
        return pdfFile(page, theme, terminal);
    }
  }
}
