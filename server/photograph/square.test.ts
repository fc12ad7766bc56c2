import { encode as encodePng } from 'fast-png';
import exifr from 'exifr';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  exif,
  extendedWebp,
  mozJpeg,
  painted,
  profileChunk,
  webp,
  withChunks,
  withExif,
  withProfile,
  type Rgba,
} from '../../tests/photographs/made.js';
import { makeProfile, adobeColumns } from '../../tests/photographs/profiles.js';
import { readReferenceBytes } from '../../tests/references/read.js';
import { labDifference } from '../plan/colour/difference.js';
import { decode as decodeJpeg } from 'jpeg-js';
import type { Matrix } from './colour/matrix.js';
import {
  at,
  squared,
  refused,
  labAt,
  labOf,
  fields,
  farthestField,
  upright,
  stored,
} from '../../tests/photographs/squaring.js';

let jpeg: Uint8Array;
beforeAll(async () => {
  jpeg = await mozJpeg(upright);
});

describe('a photograph without corners', () => {
  it('is the canvas, whole, at the size that is measured', async () => {
    const picture = await squared(jpeg);
    expect(picture).toMatchObject({
      width: 480,
      height: 360,
      source: { type: 'JPEG', width: 160, height: 120 },
    });
    expect(picture.lab).toHaveLength(3 * 480 * 360);
    expect(picture.shown).toMatchObject({ width: 160, height: 120 });
    expect(picture.trust.sharpness).toBeCloseTo(1 / 3, 2);
    expect(farthestField(picture)).toBeLessThan(1);
  });

  it('says that sRGB was taken where nothing else is said', async () => {
    expect((await squared(jpeg)).source).toMatchObject({ profile: 'sRGB', profileStated: false });
  });

  it('is shown as it is measured', async () => {
    const { shown } = await squared(jpeg);
    const { data, width } = decodeJpeg(shown.jpeg, { formatAsRGBA: true });
    for (const [x, y, rgb] of fields) {
      const from = 4 * (Math.floor(y * shown.height) * width + Math.floor(x * shown.width));
      expect(labDifference(labOf([...data.subarray(from, from + 3)]), labOf(rgb))).toBeLessThan(2);
    }
  });

  it('has the same id for the same content and squaring, whatever its path, and another for another', async () => {
    const { id } = await squared(jpeg);
    expect((await squared(jpeg, { path: 'b.jpg' })).id).toBe(id);
    expect((await squared(jpeg, { proportion: 1 })).id).not.toBe(id);
    expect((await squared(jpeg, { grey: at(120, 90) })).id).not.toBe(id);
    expect((await squared(await mozJpeg(upright, { quality: 80 }))).id).not.toBe(id);
  });
});

describe('the camera', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('may have been held as orientation %i says', async (orientation) => {
    const turned = await mozJpeg(stored(upright, orientation));
    const picture = await squared(withExif(turned, { orientation }));
    expect(picture.source).toMatchObject({ width: 160, height: 120 });
    expect(farthestField(picture)).toBeLessThan(1);
    // Corners are those of the upright photograph: the right half alone.
    const half = await squared(withExif(turned, { orientation, isLittle: false }), {
      corners: [at(80, 0), at(160, 0), at(160, 120), at(80, 120)],
      proportion: 80 / 120,
    });
    expect(labDifference(labAt(half, 0.5, 0.25), labOf([40, 150, 60]))).toBeLessThan(1);
    expect(labDifference(labAt(half, 0.5, 0.75), labOf([128, 128, 128]))).toBeLessThan(1);
  });

  it('says when it was taken, and is told as a second reader of Exif tells it', async () => {
    const taken = '2026:03:09 17:20:00';
    const bytes = withExif(jpeg, { orientation: 6, taken, space: 1 });
    const told = (await exifr.parse(Buffer.from(bytes), {
      translateValues: false,
      reviveValues: false,
    })) as Readonly<Record<string, unknown>>;
    expect(told).toMatchObject({ Orientation: 6, DateTimeOriginal: taken, ColorSpace: 1 });
    const { source } = await squared(bytes);
    expect(source).toMatchObject({ taken: '2026-03-09', profile: 'sRGB', profileStated: true });
    expect((await squared(withExif(jpeg, { taken: '0000:00:00 00:00:00' }))).source.taken).toBeUndefined();
    expect((await squared(withExif(jpeg, { taken: '2026:02:31 00:00:00' }))).source.taken).toBeUndefined();
  });

  it('is heard in PNG and WebP too', async () => {
    const camera = exif({ orientation: 3, taken: '2026:03:09 17:20:00' });
    const turned = stored(upright, 3);
    const png = withChunks(encodePng({ ...turned, channels: 4 }), ['eXIf', camera]);
    const web = extendedWebp(await webp(turned, { lossless: 1 }), turned, { exif: camera });
    for (const bytes of [png, web]) {
      const picture = await squared(bytes);
      expect(picture.source.taken).toBe('2026-03-09');
      expect(farthestField(picture)).toBeLessThan(1);
    }
  });
});

describe('colours', () => {
  /** The fields as they are encoded in another space, so that they look the same. */
  function encodedIn(toSrgb: (rgb: readonly number[]) => readonly [number, number, number]): Rgba {
    return painted(160, 120, (x, y) => {
      const from = 4 * (y * 160 + x);
      return toSrgb([...upright.data.subarray(from, from + 3)]);
    });
  }
  const linear = (level: number) =>
    level <= 10 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4;
  // CSS Color 4, section 10.2 and its sample code: linear sRGB to linear Display P3.
  const toP3: Matrix = [
    [0.8224621, 0.177538, 0],
    [0.0331942, 0.9668058, 0],
    [0.0170826, 0.0723974, 0.9105199],
  ];
  const intoP3 = ([r = 0, g = 0, b = 0]: readonly number[]): readonly [number, number, number] => {
    const all = [linear(r), linear(g), linear(b)];
    const along = (row: readonly number[]) => {
      const sum = row.reduce((total, part, index) => total + part * (all[index] ?? 0), 0);
      return 255 * (sum <= 0.0031308 ? 12.92 * sum : 1.055 * sum ** (1 / 2.4) - 0.055);
    };
    return [along(toP3[0]), along(toP3[1]), along(toP3[2])];
  };

  it('in Display P3 are brought back by the profile, in each kind of file', async () => {
    const profile = readReferenceBytes('DisplayP3.icm');
    const picture = encodedIn(intoP3);
    const files = [
      withProfile(await mozJpeg(picture), profile),
      withChunks(encodePng({ ...picture, channels: 4 }), profileChunk(profile)),
      extendedWebp(await webp(picture, { lossless: 1 }), picture, { profile }),
      withChunks(encodePng({ ...picture, channels: 4 }), ['cICP', Uint8Array.from([12, 13, 0, 1])]),
    ];
    for (const bytes of files) {
      const found = await squared(bytes);
      expect(found.source.profile).toMatch(/Display ?P3/);
      expect(found.source.profileStated).toBe(true);
      expect(farthestField(found)).toBeLessThan(1.2);
    }
  });

  it('beyond sRGB are kept', async () => {
    const red = painted(64, 48, () => [255, 0, 0]);
    const found = await squared(withProfile(await mozJpeg(red), readReferenceBytes('DisplayP3.icm')));
    // Display P3's red by its primaries, as CSS Color 4 converts it: oklch and lab of color(display-p3 1 0 0) lie
    // outside sRGB.
    expect(Math.hypot(labAt(found, 0.5, 0.5)[1], labAt(found, 0.5, 0.5)[2])).toBeGreaterThan(110);
  });

  it('in Adobe RGB are told by a profile or by the camera alone', async () => {
    const { curves } = {
      curves: [{ gamma: 2 + 51 / 256 }, { gamma: 2 + 51 / 256 }, { gamma: 2 + 51 / 256 }],
    };
    const profile = makeProfile({ columns: adobeColumns, curves, name: 'Adobe RGB (1998)' });
    const byProfile = await squared(withProfile(jpeg, profile));
    const byCamera = await squared(withExif(jpeg, { space: 0xffff, rule: 'R03' }));
    expect(byCamera.source).toMatchObject({ profile: 'Adobe RGB (1998)', profileStated: true });
    for (const [x, y] of fields)
      expect(labDifference(labAt(byProfile, x, y), labAt(byCamera, x, y))).toBeLessThan(0.1);
    expect(labDifference(labAt(byCamera, 0.75, 0.25), labOf([40, 150, 60]))).toBeGreaterThan(5);
  });

  it('of a PNG are told by its gamma and primaries', async () => {
    const png = encodePng({ ...upright, channels: 4 });
    const numbers = (values: readonly number[]) => {
      const bytes = new Uint8Array(4 * values.length);
      values.forEach((value, index) => new DataView(bytes.buffer).setUint32(4 * index, value * 100_000));
      return bytes;
    };
    const primaries = numbers([0.3127, 0.329, 0.64, 0.33, 0.3, 0.6, 0.15, 0.06]);
    const found = await squared(withChunks(png, ['gAMA', numbers([0.45455])], ['cHRM', primaries]));
    expect(found.source).toMatchObject({ profile: 'its own primaries, gamma 2.20', profileStated: true });
    expect(farthestField(found)).toBeLessThan(2.5);
    expect((await squared(withChunks(png, ['sRGB', Uint8Array.of(0)]))).source.profileStated).toBe(true);
  });

  it.each<readonly [string, Uint8Array, string]>([
    ['of high dynamic range', Uint8Array.from([9, 16, 0, 1]), 'high dynamic range'],
    ['that nobody knows', Uint8Array.from([77, 13, 0, 1]), 'is not known here'],
  ])('of a PNG %s are refused', async (_, numbers, words) => {
    expect(
      await refused(withChunks(encodePng({ ...upright, channels: 4 }), ['cICP', numbers]), {}),
    ).toContain(words);
  });

  it('of a profile that can’t be unpacked, or is for grey, are refused', async () => {
    const png = encodePng({ ...upright, channels: 4 });
    const broken = Buffer.from('made\0\0not zlib', 'latin1');
    expect(await refused(withChunks(png, ['iCCP', broken]), {})).toContain('can’t be unpacked');
    const bomb = profileChunk(new Uint8Array(5_000_000));
    expect(await refused(withChunks(png, bomb), {})).toContain('can’t be unpacked');
    const grey = makeProfile({ space: 'GRAY', curves: [{ gamma: 2.2 }] });
    expect(await refused(withProfile(jpeg, grey), {})).toContain('its colour profile is for grey');
    const greyJpeg = await mozJpeg(
      painted(64, 48, () => [119, 119, 119]),
      { color_space: 1 },
    );
    const [lightness, a, b] = labAt(await squared(withProfile(greyJpeg, grey)), 0.5, 0.5);
    expect([lightness, Math.hypot(a, b)].map(Math.round)).toEqual([50, 0]);
  });

  it('of 16 bits are as fine as they are, and what is transparent stands before white', async () => {
    const levels = Uint16Array.from({ length: 64 * 48 * 4 }, (_, index) =>
      index % 4 === 3 ? 65535 : 33_000,
    );
    const fine = await squared(encodePng({ width: 64, height: 48, data: levels, channels: 4, depth: 16 }));
    expect(labAt(fine, 0.5, 0.5)[0]).toBeCloseTo(labOf([33_000 / 257, 33_000 / 257, 33_000 / 257])[0], 2);
    const clear = await squared(encodePng({ ...painted(64, 48, () => [0, 0, 0, 0]), channels: 4 }));
    expect(labAt(clear, 0.5, 0.5)[0]).toBeCloseTo(100, 3);
    expect(clear.trust).toMatchObject({ burntShare: 0, blackShare: 0 });
  });
});
