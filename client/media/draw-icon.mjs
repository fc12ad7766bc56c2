// @ts-check
// Writes icon.png, which the extension shows in VS Code, from icon.svg: node client/media/draw-icon.mjs
import { readFile, writeFile } from 'node:fs/promises';
import { Resvg } from '@resvg/resvg-js';

const sizePx = 128;
const svg = await readFile(new URL('icon.svg', import.meta.url), 'utf8');
const icon = new Resvg(svg, { fitTo: { mode: 'width', value: sizePx }, font: { loadSystemFonts: false } });
await writeFile(new URL('icon.png', import.meta.url), icon.render().asPng());
