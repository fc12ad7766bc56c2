import { latin, viewOf } from './bytes.js';
import { endsTooEarly, type HeadAnswer, type SpokenColours } from './picture-head.js';

/** PNG (third edition, W3C 2025), section 11.2.1: bits of the colour type. */
const colourType = { palette: 1, colour: 2, alpha: 4 } as const;

/** PNG, sections 5.3 and 11: chunks, each with its length, up to `IEND`. */
export function pngHead(bytes: Uint8Array): HeadAnswer {
  const chunks = chunksOf(bytes);
  const header = chunks.get('IHDR');
  if (header === undefined || !chunks.has('IEND') || !chunks.has('IDAT')) return endsTooEarly('PNG');
  const view = viewOf(header);
  const type = view.getUint8(9);
  const exif = chunks.get('eXIf');
  const profile = profileIn(chunks.get('iCCP'));
  return {
    ok: true,
    head: {
      type: 'PNG',
      width: view.getUint32(0),
      height: view.getUint32(4),
      bits: view.getUint8(8) === 16 ? 16 : 8,
      isGrey: (type & colourType.colour) === 0,
      hasAlpha: (type & colourType.alpha) !== 0 || chunks.has('tRNS'),
      // Interlaced.
      isProgressive: view.getUint8(12) === 1,
      ...(exif ? { exif } : {}),
      ...(profile ? { profile: { bytes: profile, isDeflated: true } } : {}),
      spoken: spokenIn(chunks),
    },
  };
}

/** The first chunk of each name. What ends too early has no `IEND`. */
function chunksOf(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  const chunks = new Map<string, Uint8Array>();
  const view = viewOf(bytes);
  for (let at = 8; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    if (at + 12 + length > bytes.length) break;
    const name = latin(bytes, at + 4, 4);
    if (!chunks.has(name)) chunks.set(name, bytes.subarray(at + 8, at + 8 + length));
    if (name === 'IEND') break;
    at += 12 + length;
  }
  return chunks;
}

/** Section 11.3.2.3: a name of up to 79 characters, a nought, the method of packing, and what is packed. */
function profileIn(chunk: Uint8Array | undefined): Uint8Array | undefined {
  const end = chunk?.indexOf(0) ?? -1;
  return end >= 0 && end < 80 && chunk?.[end + 1] === 0 ? chunk.subarray(end + 2) : undefined;
}

function spokenIn(chunks: ReadonlyMap<string, Uint8Array>): SpokenColours {
  const [cicp, gamma, chromaticities] = [chunks.get('cICP'), chunks.get('gAMA'), chunks.get('cHRM')];
  return {
    isSrgb: chunks.has('sRGB'),
    ...(cicp && cicp.length >= 4
      ? { cicp: { primaries: cicp[0] ?? 0, transfer: cicp[1] ?? 0, isRgb: cicp[2] === 0 && cicp[3] === 1 } }
      : {}),
    ...(gamma && gamma.length >= 4 ? { gamma: viewOf(gamma).getUint32(0) / 100_000 } : {}),
    ...(chromaticities && chromaticities.length >= 32
      ? { chromaticities: [0, 8, 16, 24].map((at) => placeAt(chromaticities, at)) }
      : {}),
  };
}

function placeAt(chunk: Uint8Array, at: number): readonly [number, number] {
  const view = viewOf(chunk);
  return [view.getUint32(at) / 100_000, view.getUint32(at + 4) / 100_000];
}
