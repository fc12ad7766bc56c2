import { readFileSync, readdirSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { compose } from './compose.js';
import { renderToText } from './headless.js';
import { pngOf } from './png.js';
import { doorwayPlan, sceneOf, worked } from './test-plans.js';

const examples = new URL('../../examples/', import.meta.url);
const names = readdirSync(examples).filter((name) => name.endsWith('.mahl'));

/** Parts of the picture by colour, `#rrggbb`, as a painting library other than ours sees them. */
function partsByColour(svg: string): ReadonlyMap<string, number> {
  const { pixels } = new Resvg(svg, { fitTo: { mode: 'width', value: 1600 }, shapeRendering: 1 }).render();
  const parts = new Map<string, number>();
  for (let i = 0; i < pixels.length; i += 4) {
    const hex = `#${pixels.subarray(i, i + 3).toString('hex')}`;
    parts.set(hex, (parts.get(hex) ?? 0) + 4 / pixels.length);
  }
  return parts;
}

describe('the plain picture of the values', () => {
  it.each(names)('has as much of each grey as is measured of its step: %s', (name) => {
    const { plan, measures } = worked(readFileSync(new URL(name, examples), 'utf8'));
    const scene = compose(plan, measures, [], 'values');
    const seen = partsByColour(renderToText(scene, { theme: 'light', part: 'plain' }));
    const strip = scene.layers.find(({ name: layer }) => layer === 'captions')?.marks ?? [];
    for (const { step, share } of measures.values.steps) {
      const swatch = strip.find(({ key }) => key === `scale:${step}`);
      const grey = swatch?.kind === 'path' ? swatch.fill : undefined;
      const unplanned = plan.canvas.ground.step === step ? measures.values.unplannedShare : 0;
      expect(Math.abs((seen.get(grey ?? '') ?? 0) - share - unplanned), `step ${step}`).toBeLessThan(0.005);
    }
  });
});

describe('PNG', () => {
  const svg = renderToText(sceneOf(doorwayPlan, 'notan'), { theme: 'dark' });

  it('is as wide as asked for and keeps the proportion', async () => {
    const result = await pngOf(svg, 320);
    if (!result.ok) throw new Error(result.reason);
    expect(result.width).toBe(320);
    const [, width = 0, height = 0] = /viewBox="\S+ \S+ (\S+) (\S+)"/.exec(svg)?.map(Number) ?? [];
    expect(Math.abs(result.height - (320 * height) / width)).toBeLessThanOrEqual(1);
    expect([...result.png.subarray(1, 4)].map((code) => String.fromCharCode(code)).join('')).toBe('PNG');
  });

  it.each([0, -5, 2.5, NaN])('of %s pixels is refused', async (width) => {
    expect(await pngOf(svg, width)).toMatchObject({ ok: false });
  });

  it('that no machine could hold is refused with the width that can be had', async () => {
    const result = await pngOf(svg, 1_000_000);
    expect(!result.ok && /can be \d+ pixels wide at most/.test(result.reason)).toBe(true);
  });
});
