import { marked } from '../../../grammar/marked.js';
import { reasonOf } from '../../../grammar/reason.js';
import { latin, viewOf } from './bytes.js';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { endsTooEarly, type HeadAnswer, type PictureHead } from './picture-head.js';

/** Markers of ITU-T T.81, table B.1. */
const marker = {
  frame: 0xc0,
  huffman: 0xc4,
  arithmetic: 0xcc,
  end: 0xd9,
  scan: 0xda,
  lines: 0xdc,
  app1: 0xe1,
  app2: 0xe2,
};

const EXIF = 'Exif\0\0';
const ICC = 'ICC_PROFILE\0';
/** A profile larger than this is not one of a camera or a screen. */
const MOST_PROFILE_BYTES = 4 * 1024 * 1024;

interface Segment {
  readonly marker: number;
  readonly content: Uint8Array;
  readonly end: number;
}

/**
 * ITU-T T.81, annex B: segments, each with its length, up to the first scan, and then whether the file has an end.
 * Exif: CIPA DC-008, section 4.5.4. Profile in numbered pieces: ICC.1:2022, annex B.4.
 */
export function jpegHead(bytes: Uint8Array): HeadAnswer {
  let frame: Segment | undefined;
  let exif: Uint8Array | undefined;
  const pieces: Uint8Array[] = [];
  let at = 2;
  for (;;) {
    const segment = segmentAt(bytes, at);
    if (segment === undefined) return endsTooEarly('JPEG');
    const { marker: kind, content, end } = segment;
    if (kind === marker.end) return endsTooEarly('JPEG');
    if (isFrame(kind)) {
      if (frame !== undefined)
        return refuse(marked('This JPEG has two frames, of which one can’t be right. Save it anew.'));
      frame = segment;
    }
    if (kind === marker.app1 && exif === undefined && latin(content, 0, 6) === EXIF)
      exif = content.subarray(6);
    if (kind === marker.app2 && latin(content, 0, 12) === ICC) pieces.push(content.subarray(12));
    at = end;
    if (kind === marker.scan) break;
  }
  if (frame === undefined) return refuse(marked('This JPEG does not say how large it is. Save it anew.'));
  const refusal = refusalOf(frame);
  if (refusal !== undefined) return refuse(refusal);
  if (!hasEnd(bytes, at)) return endsTooEarly('JPEG');
  const view = viewOf(frame.content);
  const [width, height] = [view.getUint16(3), view.getUint16(1)];
  // A block of 8 x 8 takes two bits at the least: one says its mean, one that there is no more to it.
  if (frame.marker !== 0xc2 && width * height > 8 * 32 * (bytes.length - at)) {
    return refuse(
      reasonOf(
        marked('This JPEG says that it has {0} × {1} pixels and holds too little for that. Save it anew.'),
        width,
        height,
      ),
    );
  }
  const profile = joined(pieces);
  const head: PictureHead = {
    type: 'JPEG',
    width,
    height,
    bits: 8,
    isGrey: view.getUint8(5) === 1,
    hasAlpha: false,
    isProgressive: frame.marker === 0xc2,
    ...(exif ? { exif } : {}),
    ...(profile ? { profile: { bytes: profile, isDeflated: false } } : {}),
  };
  return { ok: true, head };
}

/** The segment that begins at a marker, or `undefined` where there is none. */
function segmentAt(bytes: Uint8Array, from: number): Segment | undefined {
  let at = from;
  if (bytes[at] !== 0xff) return undefined;
  while (bytes[at] === 0xff) at += 1;
  const kind = bytes[at];
  if (kind === undefined || kind === 0) return undefined;
  at += 1;
  // These stand alone.
  if (kind === 0x01 || (kind >= 0xd0 && kind <= 0xd9))
    return { marker: kind, content: bytes.subarray(at, at), end: at };
  const length = viewOf(bytes).getUint16(at);
  if (length < 2 || at + length > bytes.length) return undefined;
  return { marker: kind, content: bytes.subarray(at + 2, at + length), end: at + length };
}

function isFrame(kind: number): boolean {
  return kind >= 0xc0 && kind <= 0xcf && ![marker.huffman, 0xc8, marker.arithmetic].includes(kind);
}

function refusalOf({ marker: kind, content }: Segment): NoPhotograph['reason'] | undefined {
  const [precision, channels] = [content[0], content[5]];
  if (kind > 0xc2)
    return marked(
      'This JPEG is of a kind that cameras do not make (lossless, layered or arithmetic). Save it anew as a usual JPEG.',
    );
  if (precision !== 8)
    return reasonOf(
      marked('This JPEG has {0} bits a channel; those that can be read have 8. Save it anew.'),
      precision ?? 0,
    );
  if (channels === 4)
    return marked(
      'This JPEG is for a press: it holds inks (CMYK) in place of red, green and blue. Save it anew in sRGB.',
    );
  if (channels !== 1 && channels !== 3)
    return reasonOf(
      marked('This JPEG has {0} channels; a photograph has three. Save it anew.'),
      channels ?? 0,
    );
  return undefined;
}

/**
 * Goes through the scans to the end of the picture; what comes behind it, as films and second pictures do, is not
 * looked at.
 */
function hasEnd(bytes: Uint8Array, from: number): boolean {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) return false;
    const next = bytes[at + 1] ?? 0;
    // A byte of the picture, a restart, a byte that fills up.
    if (next === 0 || (next >= 0xd0 && next <= 0xd7)) at += 2;
    else if (next === 0xff) at += 1;
    else if (next === marker.end) return true;
    else {
      const segment = segmentAt(bytes, at);
      if (segment === undefined) return false;
      at = segment.end;
    }
  }
}

/** In the order of their numbers; nothing where a piece is missing. */
function joined(pieces: readonly Uint8Array[]): Uint8Array | undefined {
  const [first] = pieces;
  const total = pieces.reduce((sum, piece) => sum + piece.length - 2, 0);
  if (first === undefined || total > MOST_PROFILE_BYTES || first[1] !== pieces.length) return undefined;
  const ordered = [...pieces].sort((one, other) => (one[0] ?? 0) - (other[0] ?? 0));
  if (ordered.some((piece, index) => piece[0] !== index + 1)) return undefined;
  const whole = new Uint8Array(total);
  let at = 0;
  for (const piece of ordered) {
    whole.set(piece.subarray(2), at);
    at += piece.length - 2;
  }
  return whole;
}

function refuse(reason: NoPhotograph['reason']): HeadAnswer {
  return { ok: false, reason };
}
