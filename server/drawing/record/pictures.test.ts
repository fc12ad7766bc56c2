import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { parseHex } from '../../plan/colour/css.js';
import { bytesOfPicture } from '../picture-data.js';
import { photographsAt, pictureOf } from '../../measure/photograph/test-support.js';
import { photographed, photographedPlan } from './test-record.js';
import {
  type Band,
  colourBands,
  differencePicture,
  differencePictures,
  evenedOut,
  smallPicture,
  valueBands,
} from './pictures.js';

function lightness({ hex }: Band): number {
  const reading = parseHex(hex);
  if (reading?.ok !== true) throw new Error(hex);
  return reading.lab[0];
}

describe('the scales of what is off', () => {
  it('tell their order by lightness alone, so that they are read in grey and by every eye', () => {
    const values = valueBands.map(lightness);
    const colours = colourBands.map(lightness);
    values.slice(1).forEach((each, index) => expect(each - (values[index] ?? 0)).toBeGreaterThan(5));
    colours.slice(1).forEach((each, index) => expect((colours[index] ?? 0) - each).toBeGreaterThan(8));
  });

  it('have as many bands to either side of the plan', () => {
    expect(valueBands.map(({ from }) => from)).toEqual([-Infinity, -2, -1.5, -1, -0.5, 0.5, 1, 1.5, 2]);
  });
});

describe('a picture of what is off', () => {
  it('has each difference in its band, and is clear where nothing is planned', () => {
    const size = { width: 40, height: 1 };
    const values = Float32Array.from({ length: 40 }, (_, x) => {
      if (x < 10) return -3;
      if (x < 20) return 0.2;
      return x < 30 ? 1.2 : NaN;
    });
    const { href, shares, unplanned } = differencePicture(values, size, valueBands);
    const { data, palette } = decode(bytesOfPicture(href));
    expect([data[2], data[15], data[25], data[35]]).toEqual([1, 5, 7, 0]);
    expect(palette?.[0]).toEqual([0, 0, 0, 0]);
    expect(unplanned).toBe(0.25);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(0.75, 9);
  });

  it('is evened out over a few pixels, and what is not known adds nothing', () => {
    const even = evenedOut(Float32Array.of(0, 0, 0, 7, 0, 0, 0, NaN, 3, 3), 10, 1);
    // Three to each side and itself; at the end what there is.
    expect(even[3]).toBeCloseTo(1, 6);
    expect(even[7]).toBeNaN();
    expect(even[9]).toBeCloseTo((0 + 3 + 3) / 3, 6);
    const flat = evenedOut(new Float32Array(12).fill(0.7), 4, 3);
    flat.forEach((value) => expect(value).toBeCloseTo(0.7, 5));
  });
});

describe('the pictures of what is off', () => {
  const text = photographedPlan;
  const pictured = (plan: string) => {
    const { plan: read, measures } = photographed(plan, () => photographs);
    const record = measures.record?.sittings[0];
    if (record?.is !== 'measured') throw new Error('It is not measured.');
    return differencePictures(picture, record.figures, read.scale.steps);
  };
  const picture = pictureOf({ width: 80, height: 60 }, () => [55, 0, 0]);
  const photographs = photographsAt({
    'jug 1.5 steps lighter.jpg': picture,
    'jug 0.4 steps lighter, fruit #a05030.jpg': picture,
  });

  it('are the same ones while the plan has the same at each pixel, and others once it has not', () => {
    const first = pictured(text);
    expect(first.colours).toBeDefined();
    expect(pictured(text.replace('plan "Blue jug"', 'plan "Jug"'))).toBe(first);
    const other = pictured(text.replace('value 2', 'value 3'));
    expect(other.values.href).not.toBe(first.values.href);
    expect(other.colours?.href).not.toBe(first.colours?.href);
  });
});

describe('a small picture', () => {
  it('has the colours of the photograph, and is made once', () => {
    const picture = pictureOf({ width: 400, height: 200 }, (x) => (x < 0.5 ? [20, 0, 0] : [90, 0, 0]));
    const small = smallPicture(picture);
    const { width, height, data, channels } = decode(bytesOfPicture(small));
    expect([width, height, channels]).toEqual([160, 80, 3]);
    const grey = (x: number) => data[3 * (40 * width + x)] ?? 0;
    // CIELAB to sRGB: L* 20 is 48, L* 90 is 226.
    expect(Math.abs(grey(10) - 48)).toBeLessThan(2);
    expect(Math.abs(grey(150) - 226)).toBeLessThan(2);
    expect(smallPicture(picture)).toBe(small);
  });
});
