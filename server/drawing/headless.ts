import { withWindow } from '@svgdotjs/svg.js';
import { createHTMLWindow } from 'svgdom';
import { shownBox } from './parts.js';
import { number } from './path-data.js';
import { type RenderOptions, render } from './render.js';
import type { Scene } from './scene.js';
import { serialise } from './serialise.js';

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
