import { encode as encodePng } from 'fast-png';
import exifr from 'exifr';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  exif,
  extendedWebp,
  mozJpeg,
  painted,
  profileChunk,
  quarters,
  webp,
  withChunks,
  withExif,
  withProfile,
  type Rgba,
} from '../../tests/photographs/made.js';
import { makeProfile, adobeColumns } from '../../tests/photographs/profiles.js';
import { readReferenceBytes } from '../../tests/references/read.js';
import { type SquaredPicture, type Squaring, shownSide } from '../measure/photograph/photographs.js';
import { labDifference } from '../plan/colour/difference.js';
import type { Lab } from '../plan/colour/model.js';
import { rgbToLab } from '../plan/colour/srgb.js';
import { type Corners, fromUnitSquare } from '../plan/geometry/homography.js';
import type { PicturePlace } from '../plan/plan.js';
import { decode as decodeJpeg } from 'jpeg-js';
import { inverse, type Matrix } from './colour/matrix.js';
import { storedPlace, uprightSize } from './orientation.js';
import { squarePhotograph } from './square.js';

const whole: Squaring = { path: 'a.jpg', corners: [], proportion: 4 / 3 };
const at = (x: number, y: number): PicturePlace => ({
  across: { value: x, in: 'pixels' },
  down: { value: y, in: 'pixels' },
});

async function squared(bytes: Uint8Array, squaring: Partial<Squaring> = {}): Promise<SquaredPicture> {
  const answer = await squarePhotograph(bytes, { ...whole, ...squaring });
  if (!answer.ok) throw new Error(answer.reason);
  return answer.picture;
}

async function refused(bytes: Uint8Array, squaring: Partial<Squaring>): Promise<string> {
  const answer = await squarePhotograph(bytes, { ...whole, ...squaring });
  return answer.ok ? 'it was measured' : answer.reason;
}

/** At a part of the width and of the height. */
function labAt({ lab, width, height }: SquaredPicture, across: number, down: number): Lab {
  const from = 3 * (Math.floor(down * height) * width + Math.floor(across * width));
  return [lab[from] ?? 0, lab[from + 1] ?? 0, lab[from + 2] ?? 0];
}

const labOf = (rgb: readonly number[]): Lab =>
  rgbToLab([(rgb[0] ?? 0) / 255, (rgb[1] ?? 0) / 255, (rgb[2] ?? 0) / 255]);

const fields = [
  [0.25, 0.25, [200, 40, 30]],
  [0.75, 0.25, [40, 150, 60]],
  [0.25, 0.75, [40, 60, 170]],
  [0.75, 0.75, [128, 128, 128]],
] as const;

/** How far the middles of the four fields are from their colours, CIEDE2000. */
function farthestField(picture: SquaredPicture): number {
  return Math.max(...fields.map(([x, y, rgb]) => labDifference(labAt(picture, x, y), labOf(rgb))));
}

const upright = quarters(160, 120);

/** A picture as a camera stores it that was held so. */
function stored(picture: Rgba, orientation: number): Rgba {
  const size = uprightSize(picture, orientation);
  const made = painted(size.width, size.height, () => [0, 0, 0]);
  for (let y = 0; y < picture.height; y++) {
    for (let x = 0; x < picture.width; x++) {
      const place = storedPlace({ x: x + 0.5, y: y + 0.5 }, size, orientation);
      const from = 4 * (y * picture.width + x);
      made.data.set(
        picture.data.subarray(from, from + 4),
        4 * (Math.floor(place.y) * size.width + Math.floor(place.x)),
      );
    }
  }
  return made;
}

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
    // Display P3's red by its primaries, as CSS Color 4 converts it: oklch and lab of color(display-p3 1 0 0) lie outside sRGB.
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

describe('corners', () => {
  const corners: Corners = [
    { x: 300, y: 150 },
    { x: 1_050, y: 90 },
    { x: 1_130, y: 800 },
    { x: 240, y: 730 },
  ];
  const given = corners.map(({ x, y }) => at(x, y));
  /** The four fields on an easel, by a map of its own: the inverse of the one that is under test, sample by sample. */
  const photographed = (() => {
    const map = fromUnitSquare(corners);
    if (map === undefined) throw new Error('These are corners.');
    const { a, b, c, d, e, f, g, h, i } = map;
    const back = inverse([
      [a, b, c],
      [d, e, f],
      [g, h, i],
    ]);
    if (back === undefined) throw new Error('It can be turned round.');
    const [one, two, three] = back;
    return painted(1_280, 900, (x, y) => {
      const along = ([p, q, r]: readonly [number, number, number]) => p * (x + 0.5) + q * (y + 0.5) + r;
      const [u, v] = [along(one) / along(three), along(two) / along(three)];
      if (u < 0 || v < 0 || u > 1 || v > 1) return [12, 12, 12];
      const pixel = 4 * (Math.floor(v * 120) * 160 + Math.floor(u * 160));
      return [upright.data[pixel] ?? 0, upright.data[pixel + 1] ?? 0, upright.data[pixel + 2] ?? 0];
    });
  })();

  it('square up what leans, to the edges of the canvas', async () => {
    const picture = await squared(await mozJpeg(photographed), { corners: given });
    expect(farthestField(picture)).toBeLessThan(1);
    for (const [x, y, rgb] of [
      [0.01, 0.01, [200, 40, 30]],
      [0.99, 0.99, [128, 128, 128]],
    ] as const)
      expect(labDifference(labAt(picture, x, y), labOf(rgb))).toBeLessThan(3);
    // The fields meet in the middle, where the diagonals of the canvas cross.
    expect(labDifference(labAt(picture, 0.49, 0.25), labOf([200, 40, 30]))).toBeLessThan(2);
    expect(labDifference(labAt(picture, 0.51, 0.25), labOf([40, 150, 60]))).toBeLessThan(2);
    expect(picture.trust.sharpness).toBeGreaterThan(1.5);
  });

  it('may be parts of the sides', async () => {
    const parts = corners.map(({ x, y }): PicturePlace => ({
      across: { value: x / 1_280, in: 'parts' },
      down: { value: y / 900, in: 'parts' },
    }));
    expect(farthestField(await squared(await mozJpeg(photographed), { corners: parts }))).toBeLessThan(1);
  });

  const [p0, p1, p2, p3] = given as [PicturePlace, PicturePlace, PicturePlace, PicturePlace];
  it.each<readonly [string, readonly PicturePlace[], string]>([
    ['three', [p0, p1, p2], 'A canvas has four corners; `corners` gives 3.'],
    ['crossed', [p0, p2, p1, p3], 'do not go round a canvas'],
    ['the other way round', [p1, p0, p3, p2], 'go round the wrong way'],
    ['dented', [p0, p1, at(500, 300), p3], 'do not go round a canvas'],
    ['in one place', [p0, p0, p2, p3], 'only 0 pixels long'],
    ['tiny', [at(10, 10), at(30, 10), at(30, 30), at(10, 30)], 'only 20 pixels long'],
    ['nearly in a line', [at(10, 10), at(600, 8), at(1_200, 10), at(10, 800)], 'too much from the side'],
    [
      'far outside',
      [at(-400, 0), p1, p2, p3],
      'The upper left corner lies outside the photograph, which is 1280 × 900',
    ],
    ['nowhere', [at(NaN, 0), p1, p2, p3], 'lies outside'],
  ])('that are %s are refused', async (_, places, words) => {
    expect(await refused(await mozJpeg(photographed), { corners: places })).toContain(words);
  });

  it('may lie a little outside, where the edge goes on', async () => {
    const picture = await squared(jpeg, { corners: [at(-2, -2), at(162, -2), at(162, 122), at(-2, 122)] });
    expect(labDifference(labAt(picture, 0, 0), labOf([200, 40, 30]))).toBeLessThan(1);
  });
});

describe('resampling', () => {
  it.each([
    ['twice as wide as it is shown, and no beat of the stripes is left', 2 * shownSide, 0.5],
    ['of any other width, and hardly a beat of stripes as fine as its pixels', 3_050, 4],
  ])('averages in linear light where it is %s', async (_, width, most) => {
    const stripes = painted(width, 150, (x) => (x % 2 === 0 ? [255, 255, 255] : [0, 0, 0]));
    const picture = await squared(encodePng({ ...stripes, channels: 4 }), { proportion: 16 });
    // L* of Y = 0.5, not that of level 128: CIE 15:2004, equation 8.3.
    const half = 116 * Math.cbrt(0.5) - 16;
    for (const x of [0.1, 0.37, 0.5, 0.93])
      expect(Math.abs(labAt(picture, x, 0.5)[0] - half)).toBeLessThan(most);
    expect(picture.trust.burntShare).toBeCloseTo(0.5, 2);
    expect(picture.trust.blackShare).toBeCloseTo(0.5, 2);
  });

  it('gives the same for opaque photographs of 8 bits, which go a faster way, as for all others', async () => {
    const soft = painted(1_500, 300, (x, y) => [(x / 6) & 255, (y / 5) & 255, (x * y) & 255]);
    const corners = [at(30, 20), at(1_450, 30), at(1_400, 280), at(60, 250)];
    const [fast, slow] = [3, 4].map((channels) => {
      const data = channels === 4 ? soft.data : soft.data.filter((_, index) => index % 4 !== 3);
      return encodePng({ width: 1_500, height: 300, data, channels });
    });
    const [one, other] = [
      await squared(fast ?? jpeg, { corners, proportion: 5 }),
      await squared(slow ?? jpeg, { corners, proportion: 5 }),
    ];
    const differences = one.lab.map((level, index) => Math.abs(level - (other.lab[index] ?? 0)));
    expect(differences.reduce((sum, each) => sum + each, 0) / differences.length).toBeLessThan(0.1);
    expect(one.trust.burntShare).toBeCloseTo(other.trust.burntShare, 3);
  });
});

describe('the grey patch', () => {
  /** A warm light on everything, and a card in the lower left. */
  const warm = (level: number) =>
    painted(320, 240, (x, y) => {
      const isCard = x < 60 && y > 180;
      const [r, g, b] = isCard ? [level, level, level] : [100, 140, 90];
      return [Math.min(255, r * 1.15), g, b * 0.8];
    });

  it('takes the tint out of the light, and keeps how light it is', async () => {
    const bytes = await mozJpeg(warm(128));
    const [before, after] = [await squared(bytes), await squared(bytes, { grey: at(30, 210) })];
    const [lightness, a, b] = labAt(after, 0.08, 0.88);
    expect(Math.hypot(a, b)).toBeLessThan(1);
    expect(lightness).toBeCloseTo(labAt(before, 0.08, 0.88)[0], 0);
    expect(after.trust.grey?.fault).toBeUndefined();
    expect(after.trust.grey?.cast).toBeGreaterThan(1.8);
    expect(labDifference(labAt(after, 0.7, 0.3), labOf([100, 140, 90]))).toBeLessThan(
      labDifference(labAt(before, 0.7, 0.3), labOf([100, 140, 90])),
    );
  });

  it.each<readonly [string, Rgba, PicturePlace, string]>([
    ['burnt out', warm(250), at(30, 210), 'burnt out'],
    ['too dark', warm(14), at(30, 210), 'too dark'],
    ['no grey at all', painted(320, 240, () => [220, 60, 40]), at(30, 210), 'too strong a colour'],
    ['outside', warm(128), at(900, 900), 'outside the photograph'],
  ])('that is %s is told, and the photograph left as it is', async (_, picture, grey, words) => {
    const bytes = await mozJpeg(picture);
    const [before, after] = [await squared(bytes), await squared(bytes, { grey })];
    expect(after.trust.grey?.fault).toContain(words);
    expect(Buffer.compare(Buffer.from(after.lab.buffer), Buffer.from(before.lab.buffer))).toBe(0);
  });
});

it('says how far it is, and stops when it is told to', async () => {
  const parts: number[] = [];
  await squarePhotograph(jpeg, whole, { progress: (part) => parts.push(part) });
  expect(parts.length).toBeGreaterThan(1);
  expect(parts).toEqual([...parts].sort((one, other) => one - other));
  const answer = await squarePhotograph(jpeg, whole, { signal: AbortSignal.abort() });
  expect(answer).toEqual({ ok: false, reason: 'Measuring was stopped.' });
});
