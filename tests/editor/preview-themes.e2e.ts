import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { openWorkbench } from '../hosts/workbench.mjs';

const plans = path.resolve(import.meta.dirname, 'preview-plans');
const artefacts = path.resolve(import.meta.dirname, '../../artefacts');
const extension = process.env['MAHLSTICK_EXTENSION'] ? { extension: process.env['MAHLSTICK_EXTENSION'] } : {};

type Rgb = readonly [number, number, number];

/** Relative luminance of WCAG 2.2, from sRGB parts of one. */
function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

function contrast(one: Rgb, other: Rgb): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

/** Computed colours come as `rgb(1 2 3)` in 255ths or `color(srgb 0.1 0.2 0.3)`. */
function parsed(css: string): Rgb {
  const [r = 0, g = 0, b = 0] = (css.match(/[\d.]+/g) ?? []).map(Number);
  const scale = css.startsWith('color(') ? 1 : 255;
  return [r / scale, g / scale, b / scale];
}

describe.each(['light', 'dark', 'high-contrast', 'high-contrast-light'] as const)(
  'the preview in %s',
  (theme) => {
    it('has text of 4.5 : 1 and signs of 3 : 1 on their grounds', async () => {
      const workbench = await openWorkbench({ host: 'node', plans, theme, ...extension });
      try {
        await workbench.openFile('bowl.mahl');
        await workbench.runCommand('Mahlstick: Open Preview to the Side');
        const preview = await workbench.preview();
        await preview.locator('.findings li').first().waitFor();
        await workbench.screenshot(path.join(artefacts, `preview-${theme}.png`));

        const found = await preview.locator('body').evaluate((body) => {
          const ground = getComputedStyle(body).backgroundColor;
          const texts = [
            ...[...body.querySelectorAll('svg [data-layer="captions"] text')]
              // Figures in the boxes of the value scale stand on the greys of the picture.
              .filter((text) => !(text.getAttribute('fill') ?? '').startsWith('#'))
              .map((text) => ({ text, colour: getComputedStyle(text).fill })),
            ...[...body.querySelectorAll('h2, .count, .views span, .said, .advice, .place')].map((text) => ({
              text,
              colour: getComputedStyle(text).color,
            })),
          ].map(({ text, colour }) => ({ what: text.textContent, colour }));
          const signs = [...body.querySelectorAll('.sign')].map(
            (sign) => getComputedStyle(sign).backgroundColor,
          );
          return { ground, texts, signs };
        });
        const ground = parsed(found.ground);
        expect(found.texts.length).toBeGreaterThan(20);
        expect(found.texts.filter(({ colour }) => contrast(parsed(colour), ground) < 4.5)).toEqual([]);
        expect(found.signs.length).toBeGreaterThan(0);
        expect(found.signs.filter((colour) => contrast(parsed(colour), ground) < 3)).toEqual([]);
      } finally {
        await workbench.close();
      }
    });
  },
);
