import { encode as encodePng } from 'fast-png';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  exif,
  extendedWebp,
  joined,
  mozJpeg,
  quarters,
  rawPng,
  webp,
  withChunks,
  withExif,
  withProfile,
  withSegments,
} from '../../../tests/photographs/made.js';
import { reasonInWords } from '../../../grammar/index.js';
import { squarePhotograph } from '../square.js';
import { sizeOfPicture } from '../size.js';
import { headOf } from './head.js';

const size = { width: 40, height: 24 };
const picture = quarters(40, 24);
let jpeg: Uint8Array;
let progressive: Uint8Array;
let lossy: Uint8Array;
let lossless: Uint8Array;
const png = encodePng({ ...picture, channels: 4, depth: 8 });
beforeAll(async () => {
  jpeg = await mozJpeg(picture);
  progressive = await mozJpeg(picture, { progressive: true });
  lossy = await webp(picture);
  lossless = await webp(picture, { lossless: 1 });
});

const headIn = (bytes: Uint8Array) => {
  const answer = headOf(bytes);
  if (!answer.ok) throw new Error(reasonInWords(answer.reason));
  return answer.head;
};
const reasonFor = (bytes: Uint8Array) => {
  const answer = headOf(bytes);
  return answer.ok ? 'it was read' : reasonInWords(answer.reason);
};
const squaredReason = async (bytes: Uint8Array) => {
  const answer = await squarePhotograph(bytes, { path: 'a.jpg', corners: [], proportion: 4 / 3 });
  return answer.ok ? 'it was measured' : reasonInWords(answer.reason);
};
const latin = (words: string) => new Uint8Array(Buffer.from(words, 'latin1'));

describe('the head of a picture', () => {
  it('tells kind and size of each that can be read, whatever it is called', () => {
    expect(headIn(jpeg)).toMatchObject({
      type: 'JPEG',
      ...size,
      bits: 8,
      isGrey: false,
      isProgressive: false,
    });
    expect(headIn(progressive)).toMatchObject({ type: 'JPEG', ...size, isProgressive: true });
    expect(headIn(png)).toMatchObject({ type: 'PNG', ...size, bits: 8, hasAlpha: true });
    expect(headIn(lossy)).toMatchObject({ type: 'WebP', ...size, hasAlpha: false });
    expect(headIn(lossless)).toMatchObject({ type: 'WebP', ...size });
    expect(headIn(extendedWebp(lossy, size, { flags: 0x10 }))).toMatchObject({ ...size, hasAlpha: true });
  });

  it('is upright, as the camera was held', () => {
    for (const orientation of [1, 2, 3, 4]) {
      expect(sizeOfPicture(withExif(jpeg, { orientation }))).toEqual({ ok: true, width: 40, height: 24 });
    }
    for (const orientation of [5, 6, 7, 8]) {
      const turned = { ok: true, width: 24, height: 40 };
      expect(sizeOfPicture(withExif(jpeg, { orientation }))).toEqual(turned);
      expect(sizeOfPicture(withChunks(png, ['eXIf', exif({ orientation })]))).toEqual(turned);
      expect(sizeOfPicture(extendedWebp(lossy, size, { exif: exif({ orientation }) }))).toEqual(turned);
    }
  });

  it('holds a profile in one piece or in several, and none when a piece is missing', () => {
    const profile = Uint8Array.from({ length: 1000 }, (_, at) => at % 251);
    expect(headIn(withProfile(jpeg, profile)).profile?.bytes).toEqual(profile);
    expect(headIn(withProfile(jpeg, profile, 300)).profile?.bytes).toEqual(profile);
    const piece = joined(latin('ICC_PROFILE\0'), Uint8Array.from([1, 2]), profile);
    expect(headIn(withSegments(jpeg, [0xe2, piece])).profile).toBeUndefined();
  });

  it('is read past what the file holds besides: comments, a thumbnail, a film behind the picture', () => {
    const crowded = withSegments(jpeg, [0xfe, latin('a comment')], [0xe1, joined(latin('Exif\0\0'), jpeg)]);
    expect(headIn(joined(crowded, lossy, jpeg.subarray(0, 50)))).toMatchObject(size);
  });
});

describe('a file that is no photograph that can be read', () => {
  it.each([
    ['nothing', '', 'empty'],
    ['a HEIC', '\0\0\0\x18ftypheic', 'HEIC photograph, as many phones take them. Save a copy as JPEG'],
    ['a HEIC by its general brand', '\0\0\0\x18ftypmif1', 'HEIC'],
    ['an AVIF', '\0\0\0\x18ftypavif', 'AVIF'],
    ['a film', '\0\0\0\x18ftypisom', 'film'],
    ['a raw photograph in boxes', '\0\0\0\x18ftypcrx ', 'raw photograph'],
    ['a raw photograph', 'II*\0\x10\0\0\0CR\x02', 'raw photograph'],
    ['a TIFF', 'II*\0\x08\0\0\0', 'TIFF or a raw photograph'],
    ['a TIFF the other way round', 'MM\0*\0\0\0\x08', 'TIFF or a raw photograph'],
    ['a GIF', 'GIF89a', 'GIF'],
    ['a BMP', 'BM....', 'BMP'],
    ['a PDF', '%PDF-1.7', 'PDF'],
    ['a file with layers', '8BPS\0\x01', 'layers'],
    ['a JPEG XL', '\xff\x0a\x10', 'JPEG XL'],
    ['an SVG', ' <svg xmlns="http://www.w3.org/2000/svg"/>', 'not a photograph'],
    ['a plan', 'canvas 40 x 30 cm', 'no picture that is known here: JPEG, PNG and WebP can be read'],
  ])('%s is told from it', (_, bytes, words) => {
    expect(reasonFor(latin(bytes))).toContain(words);
    expect(reasonFor(latin(bytes))).toMatch(/^This .*\.$/s);
  });

  it('is told when it ends too early, wherever that is', () => {
    for (const whole of [jpeg, progressive, png, lossy, lossless]) {
      for (const length of [16, Math.round(whole.length / 2), whole.length - 3])
        expect(reasonFor(whole.subarray(0, length))).toContain('ends before the picture does');
    }
  });

  it('is told when it says that it has no pixels', () => {
    const at = jpeg.indexOf(0xc0);
    const empty = Uint8Array.from(jpeg);
    empty.fill(0, at + 4, at + 8);
    expect(reasonFor(empty)).toContain('0 pixels wide or high');
    expect(reasonFor(rawPng({ width: 0, height: 9, bits: 8, type: 2 }, new Uint8Array(9)))).toContain(
      '0 pixels',
    );
  });

  it.each<readonly [string, (frame: number) => readonly (readonly [number, number])[], string]>([
    ['12 bits a channel', () => [[4, 12]], '12 bits a channel'],
    ['inks', () => [[9, 4]], 'CMYK'],
    ['two channels', () => [[9, 2]], '2 channels'],
    ['no lossy frame', () => [[1, 0xc3]], 'a kind that cameras do not make'],
  ])('a JPEG with %s', (_, changes, words) => {
    const frame = jpeg.findIndex((byte, at) => byte === 0xff && jpeg[at + 1] === 0xc0);
    const changed = Uint8Array.from(jpeg);
    for (const [offset, value] of changes(frame)) changed[frame + offset] = value;
    expect(reasonFor(changed)).toContain(words);
  });

  it('is told when it is a film of pictures', () => {
    expect(reasonFor(extendedWebp(lossy, size, { flags: 0x02 }))).toContain('film');
  });
});

describe('a file that lies', () => {
  const sized = (bytes: Uint8Array, width: number, height: number) => {
    const frame = bytes.findIndex(
      (byte, at) => byte === 0xff && (bytes[at + 1] === 0xc0 || bytes[at + 1] === 0xc2),
    );
    const changed = Uint8Array.from(bytes);
    new DataView(changed.buffer).setUint16(frame + 5, height);
    new DataView(changed.buffer).setUint16(frame + 7, width);
    return changed;
  };

  it('about its size is found out before or while it is decoded', async () => {
    expect(await squaredReason(sized(jpeg, 30_000, 3_000))).toContain('holds too little for that');
    for (const bytes of [jpeg, progressive])
      expect(await squaredReason(sized(bytes, 40, 48))).toMatch(/ends before the picture does|is damaged/);
  });

  it('about its size in a PNG is refused before gigabytes are unpacked', async () => {
    const bomb = rawPng({ width: 30_000, height: 30_000, bits: 8, type: 6 }, new Uint8Array(1_000_000));
    expect(bomb.length).toBeLessThan(5_000);
    expect(await squaredReason(bomb)).toMatch(
      /30000 × 30000 pixels, 900 million; 100 million can be measured/,
    );
    const short = rawPng({ width: 200, height: 200, bits: 8, type: 2 }, new Uint8Array(500));
    expect(await squaredReason(short)).toContain('is damaged');
    // More rows than the header says are left where they are.
    const long = rawPng({ width: 20, height: 20, bits: 8, type: 2 }, new Uint8Array(61 * 4000));
    expect(await squaredReason(long)).toBe('it was measured');
  });

  it('or is spoilt anywhere gives a sentence or a picture, and never throws', async () => {
    for (const whole of [jpeg, progressive, png, lossy]) {
      for (let at = 2; at < whole.length; at += Math.ceil(whole.length / 10)) {
        const spoilt = Uint8Array.from(whole);
        spoilt[at] = (spoilt[at] ?? 0) ^ 0xff;
        expect(await squaredReason(spoilt)).toMatch(/\.$|^it was measured$/);
      }
    }
  });
});
