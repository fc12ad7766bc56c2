import assert from 'node:assert/strict';
import fc from 'fast-check';
import { encode as encodePng } from 'fast-png';
import { reasonInWords } from '../../../grammar/index.js';
import type { Squaring } from '../../../server/measure/photograph/photographs.js';
import { sizeOfPicture } from '../../../server/photograph/size.js';
import { squarePhotograph } from '../../../server/photograph/square.js';
import {
  exif,
  extendedWebp,
  mozJpeg,
  profileChunk,
  quarters,
  rawPng,
  webp,
  withChunks,
  withExif,
  withProfile,
} from '../../photographs/made.js';
import { unfinished } from '../../support/unfinished.js';
import { campaign } from '../campaign.js';

const picture = quarters(40, 24);
const size = { width: 40, height: 24 };
const png = encodePng({ ...picture, channels: 4, depth: 8 });
const profile = Uint8Array.from({ length: 600 }, (_, at) => (at * 7) % 251);

/** One file of each kind that is read, made when it is first wanted. */
const makers = {
  jpeg: () => mozJpeg(picture),
  'jpeg progressive': () => mozJpeg(picture, { progressive: true }),
  'jpeg with exif': async () =>
    withExif(await mozJpeg(picture), { orientation: 6, taken: '2026:03:09 17:20:00' }),
  'jpeg with profile': async () => withProfile(await mozJpeg(picture), profile, 300),
  png: () => png,
  'png of 16 bits': () =>
    encodePng({ ...size, data: Uint16Array.from(picture.data, (one) => one * 257), channels: 4, depth: 16 }),
  'png in grey of one bit': () =>
    rawPng(
      { ...size, bits: 1, type: 0 },
      new Uint8Array(24 * 6).fill(0x5a).map((byte, at) => (at % 6 === 0 ? 0 : byte)),
    ),
  'png with exif': () => withChunks(png, ['eXIf', exif({ orientation: 8 })]),
  'png with profile': () => withChunks(png, profileChunk(profile)),
  webp: () => webp(picture),
  'webp without loss': () => webp(picture, { lossless: 1 }),
  'webp extended': async () =>
    extendedWebp(await webp(picture), size, { exif: exif({ orientation: 3 }), flags: 0x10 }),
} satisfies Record<string, () => Uint8Array | Promise<Uint8Array>>;
type Kind = keyof typeof makers;
const kinds = Object.keys(makers) as Kind[];

const nat = fc.nat(1_000_000);

/** Sizes that a head may claim: none, one, some, more than is read, as many as fit. */
const claims = [0, 1, 7, 41, 9_999, 16_383, 30_000, 65_535];

type Damage =
  | { readonly kind: 'cut'; readonly at: number }
  | { readonly kind: 'flip'; readonly at: number; readonly bit: number }
  | { readonly kind: 'set'; readonly at: number; readonly byte: number; readonly count: number }
  | { readonly kind: 'repeat'; readonly at: number; readonly length: number }
  | { readonly kind: 'claim'; readonly width: number; readonly height: number };

/** Most heads lie near the beginning. */
const at = fc.oneof({ weight: 2, arbitrary: fc.nat(100) }, { weight: 1, arbitrary: nat });
const damage: fc.Arbitrary<Damage> = fc.oneof(
  { weight: 1, arbitrary: nat.map((where) => ({ kind: 'cut' as const, at: where })) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('flip' as const), at, bit: fc.nat(7) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('set' as const),
      at,
      byte: fc.constantFrom(0, 1, 0x7f, 0x80, 0xff),
      count: fc.constantFrom(1, 2, 4),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('repeat' as const), at, length: fc.nat(300) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('claim' as const),
      width: fc.constantFrom(...claims),
      height: fc.constantFrom(...claims),
    }),
  },
);

function damaged(bytes: Uint8Array, kind: Kind, done: Damage): Uint8Array {
  const copy = Uint8Array.from(bytes);
  switch (done.kind) {
    case 'cut':
      return copy.subarray(0, done.at % (copy.length + 1));
    case 'flip': {
      const where = done.at % Math.max(1, copy.length);
      copy[where] = (copy[where] ?? 0) ^ (1 << done.bit);
      return copy;
    }
    case 'set':
      copy.fill(
        done.byte,
        done.at % Math.max(1, copy.length),
        (done.at % Math.max(1, copy.length)) + done.count,
      );
      return copy;
    case 'repeat': {
      const where = done.at % Math.max(1, copy.length);
      const again = copy.subarray(where, where + done.length);
      return Buffer.concat([copy.subarray(0, where), again, copy.subarray(where)]);
    }
    case 'claim':
      claim(copy, kind, done.width, done.height);
      return copy;
  }
}

/** Writes another size into the head, where it is found. */
function claim(bytes: Uint8Array, kind: Kind, width: number, height: number): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (kind.startsWith('png') && bytes.length >= 24) {
    view.setUint32(16, width);
    view.setUint32(20, height);
  }
  if (kind.startsWith('webp') && bytes.length >= 30) {
    view.setUint16(24, width & 0x3fff, true);
    view.setUint16(26, height & 0x3fff, true);
  }
  if (!kind.startsWith('jpeg')) return;
  const frame = bytes.findIndex(
    (byte, where) => byte === 0xff && /^c[02]$/.test((bytes[where + 1] ?? 0).toString(16)),
  );
  if (frame < 0 || frame + 9 > bytes.length) return;
  view.setUint16(frame + 5, height);
  view.setUint16(frame + 7, width);
}

const length = fc.oneof(
  fc.record({ value: fc.constantFrom(0, 0.1, 0.5, 0.9, 1), in: fc.constant('parts' as const) }),
  fc.record({ value: fc.constantFrom(-5, 0, 3, 39, 10_000), in: fc.constant('pixels' as const) }),
);
const place = fc.record({ across: length, down: length });
const squaring: fc.Arbitrary<Squaring> = fc.record(
  {
    path: fc.constant('a.jpg'),
    corners: fc.oneof(fc.constant([]), fc.array(place, { minLength: 4, maxLength: 4 })),
    grey: place,
    proportion: fc.constantFrom(1, 4 / 3, 0.01, 100, 1e-9, 1e9),
  },
  { requiredKeys: ['path', 'corners', 'proportion'] },
);

/** Memory may be short for a picture of more pixels. */
const SMALL_PIXELS = 1_000_000;

/** Damaged photographs of every kind: bits, lengths and sizes that are not what they were. */
export const images = campaign({
  runs: 12,
  cases: fc.record({
    kind: fc.constantFrom(...kinds),
    damages: fc.array(damage, { maxLength: 4 }),
    squaring,
  }),
  hold: async ({ kind, damages, squaring: wanted }) => {
    const bytes = damages.reduce((some, one) => damaged(some, kind, one), await makers[kind]());
    const answer = await squarePhotograph(bytes, wanted);
    const told = sizeOfPicture(bytes);
    if (!told.ok) assert.match(reasonInWords(told.reason), /^[A-Z].*\.$/u);
    if (!answer.ok) {
      assert.match(reasonInWords(answer.reason), /^[A-Z].*\.$/u, 'a sentence to the painter');
      assert.doesNotMatch(reasonInWords(answer.reason), /undefined|NaN|\[object|could not be measured \(/u);
      const isSmall = told.ok && told.width * told.height < SMALL_PIXELS;
      assert(
        !isSmall || !reasonInWords(answer.reason).includes('enough memory'),
        'memory is short for a small picture',
      );
      return;
    }
    assert(told.ok, 'measured, but without a size');
    assert.deepEqual(unfinished(answer.picture), []);
    const { lab, width, height } = answer.picture;
    assert.equal(lab.length, 3 * width * height);
  },
});
