import path from 'node:path';
import type { Page } from '../drawing/page.js';
import type { Target } from './draw-target.js';
import { loadRenderers, pdfFile, pngFile } from './rendered.js';
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
    await terminal.print(await svg());
    return;
  }
  const content = await contentOf();
  await writeWhole(path.resolve(terminal.folder, file), file, content);

  async function contentOf(): Promise<string | Uint8Array> {
    switch (target.format) {
      case 'svg':
        return svg();
      case 'png':
        return pngFile(await svg(), width, terminal);
      case 'pdf':
        return pdfFile(page, theme, terminal);
    }
  }

  async function svg(): Promise<string> {
    return (await loadRenderers()).pageToText(page, { theme });
  }
}
