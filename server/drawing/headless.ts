import { withWindow } from '@svgdotjs/svg.js';
import { createHTMLWindow } from 'svgdom';
import { type RenderOptions, render } from './render.js';
import type { Scene } from './scene.js';
import { serialise } from './serialise.js';

/**
 * A scene as the text of an SVG file, complete with XML declaration, drawn by the same code as on a page. The
 * window it is drawn in is its own and svg.js is left registered as it was, so calls do not affect each other.
 * Not for the theme `editor`, whose colours only a page of the editor knows.
 */
export function renderToText(scene: Scene, options: RenderOptions): string {
  return withWindow(createHTMLWindow(), (window) => {
    const { svg } = render(window.document.documentElement, scene, options);
    return `<?xml version="1.0" encoding="UTF-8"?>\n${serialise(svg.node)}\n`;
  });
}
