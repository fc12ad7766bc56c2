import { describe, expect, it } from 'vitest';
import { pathMark } from '../marks.js';
import { circlePath, rectanglePath } from '../path-data.js';
import { blurredRaster } from './blurred.js';
import { bytesOf, paintShapes } from './raster.js';

const same = <T>(point: T): T => point;
const red = (light: Float32Array): readonly number[] => [...light].filter((_, at) => at % 3 === 0);

describe('shapes as pixels', () => {
  it('cover of a pixel what lies in it', () => {
    const box = pathMark('box', rectanglePath({ x: 1, y: 1, width: 1.25, height: 1.5 }), { fill: '#000000' });
    const light = red(paintShapes([box], { width: 4, height: 4 }, same).light);
    expect(light.map((each) => Number(each.toFixed(6)))).toEqual([
      1, 1, 1, 1, 1, 0, 0.75, 1, 1, 0.5, 0.875, 1, 1, 1, 1, 1,
    ]);
  });

  it('have the area of a circle, and a hole where the rule says so', () => {
    const d = circlePath({ x: 50, y: 50 }, 40) + circlePath({ x: 50, y: 50 }, 20);
    const covered = (fillRule?: 'evenodd') => {
      const mark = pathMark('ring', d, { fill: '#000000', fillRule });
      return red(paintShapes([mark], { width: 100, height: 100 }, same).light).reduce(
        (sum, each) => sum + 1 - each,
        0,
      );
    };
    expect(Math.abs(covered() / (Math.PI * 1600) - 1)).toBeLessThan(0.005);
    expect(Math.abs(covered('evenodd') / (Math.PI * 1200) - 1)).toBeLessThan(0.005);
  });

  it('are cut at the edges of the picture, and lie where they belong', () => {
    const box = pathMark('box', rectanglePath({ x: -2, y: 2.5, width: 4, height: 9 }), { fill: '#000000' });
    const outside = pathMark('outside', rectanglePath({ x: 5, y: -3, width: 2, height: 2 }), {
      fill: '#000000',
    });
    const light = red(paintShapes([box, outside], { width: 3, height: 4 }, same).light);
    expect(light).toEqual([1, 1, 1, 1, 1, 1, 0.5, 0.5, 1, 0, 0, 1]);
  });

  it('come back as the colour that they were given', () => {
    const mark = pathMark('all', rectanglePath({ x: 0, y: 0, width: 2, height: 1 }), { fill: '#2f6f73' });
    const bytes = bytesOf(paintShapes([mark], { width: 2, height: 1 }, same));
    expect([...bytes]).toEqual([0x2f, 0x6f, 0x73, 0x2f, 0x6f, 0x73]);
  });
});

describe('a blur', () => {
  const size = { width: 200, height: 40 };
  const half = pathMark('half', rectanglePath({ x: 0, y: 0, width: 100, height: 40 }), { fill: '#000000' });
  const sharp = paintShapes([half], size, same);

  it('of an edge is the normal distribution', () => {
    const row = red(blurredRaster(sharp, 8).light).slice(20 * 200, 21 * 200);
    // Values of the distribution function from any table: 0.1587 at -1, 0.8413 at 1, 0.0228 at -2.
    const at = (deviations: number) => {
      const place = 100 + 8 * deviations - 0.5;
      const [left, right] = [Math.floor(place), Math.ceil(place)];
      return ((row[left] ?? 0) + (row[right] ?? 0)) / 2;
    };
    expect(at(0)).toBeCloseTo(0.5, 2);
    expect(at(-1)).toBeCloseTo(0.1587, 2);
    expect(at(1)).toBeCloseTo(0.8413, 2);
    expect(at(-2)).toBeCloseTo(0.0228, 2);
  });

  it('takes nothing from beyond the picture', () => {
    const light = red(blurredRaster(sharp, 8).light);
    expect(light[0]).toBeCloseTo(0, 5);
    expect(light.at(-1)).toBeCloseTo(1, 5);
  });
});
