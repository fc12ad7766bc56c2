import { G, SVG, withWindow } from '@svgdotjs/svg.js';
import { createHTMLWindow } from 'svgdom';
import { safeText } from './attributes.js';
import type { Page } from './page.js';
import { shownBox } from './parts.js';
import { number } from './path-data.js';
import { type RenderOptions, render, renderMarks } from './render.js';
import type { Scene } from './scene.js';
import { serialise } from './serialise.js';
import { textFamily } from './theme.js';

/** Width that a viewer gives the drawing before it is asked for another, CSS pixels. */
const FILE_WIDTH = 900;

/**
 * A scene as the text of an SVG file, complete with XML declaration, drawn by the same code as on a page. The
 * window it is drawn in is its own and svg.js is left registered as it was, so calls do not affect each other.
 * Not for the theme `editor`, whose colours only a page of the editor knows.
 */
export function renderToText(scene: Scene, options: RenderOptions): string {
  return withWindow(createHTMLWindow(), (window) => {
    const { svg } = render(window.document.documentElement, scene, options);
    const { width, height } = shownBox(scene, options.part);
    svg.attr({ width: String(FILE_WIDTH), height: number((FILE_WIDTH * height) / width) });
    return `<?xml version="1.0" encoding="UTF-8"?>\n${serialise(svg.node)}\n`;
  });
}

/** A page as the text of an SVG file of its size in millimetres; see `renderToText`. */
export function pageToText(page: Page, options: Pick<RenderOptions, 'theme'>): string {
  return withWindow(createHTMLWindow(), (window) => {
    const { theme } = options;
    const svg = SVG().addTo(window.document.documentElement);
    svg.attr({
      role: 'img',
      'aria-labelledby': 'mahl-page-title mahl-page-description',
      'font-family': textFamily,
      viewBox: `0 0 ${number(page.width)} ${number(page.height)}`,
      width: `${number(page.width)}mm`,
      height: `${number(page.height)}mm`,
    });
    svg.element('title').attr('id', 'mahl-page-title').words(safeText(page.title));
    svg.element('desc').attr('id', 'mahl-page-description').words(safeText(page.description));
    renderMarks(new G().addTo(svg), page.marks, page.em, { theme });
    for (const { key, scene, part, at } of page.drawings) {
      const drawing = render(svg.node as unknown as HTMLElement, scene, {
        theme,
        part,
        idPrefix: `mahl-${key}`,
      });
      drawing.svg.attr({
        x: number(at.x),
        y: number(at.y),
        width: number(at.width),
        height: number(at.height),
      });
    }
    return `<?xml version="1.0" encoding="UTF-8"?>\n${serialise(svg.node)}\n`;
  });
}
