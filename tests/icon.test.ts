import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { decode } from 'fast-png';
import { expect, it } from 'vitest';
import { compose } from '../server/drawing/compose.js';
import { renderToText } from '../server/drawing/headless.js';
import { checked } from './support/plan.js';

const media = path.resolve(import.meta.dirname, '../client/media');
const sizePx = 128;

/** The plan of the icon as VS Code shows it: its flat colours, with round corners. */
function icon(): Buffer {
  const { plan, measures, findings } = checked(readFileSync(path.join(media, 'icon.mahl'), 'utf8'));
  const scene = compose(plan, measures, findings, 'colour');
  const drawn = renderToText(scene, { theme: 'light', part: 'plain' }).replace(/^<\?xml.*\?>/u, '');
  const sized = drawn.replace(/<svg [^>]*>/u, (root) => root.replaceAll(/ (?:width|height)="[^"]*"/gu, ''));
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 128 128">
    <clipPath id="round"><rect width="128" height="128" rx="26"/></clipPath>
    <g clip-path="url(#round)">${sized}</g>
  </svg>`;
  const options = { fitTo: { mode: 'width', value: sizePx }, font: { loadSystemFonts: false } } as const;
  return new Resvg(svg, options).render().asPng();
}

it('the icon is drawn from its plan', () => {
  const file = path.join(media, 'icon.png');
  const png = icon();
  if (process.env['UPDATE_REFERENCE']) writeFileSync(file, png);
  const [is, wanted] = [decode(readFileSync(file)), decode(png)];
  expect([is.width, is.height]).toEqual([sizePx, sizePx]);
  expect(Buffer.from(is.data).equals(Buffer.from(wanted.data))).toBe(true);
});
