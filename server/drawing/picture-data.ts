import { fromBase64, toBase64 } from './base64.js';
import type { PictureData } from './scene.js';

/** A picture of our own, written out: what it may be, and nothing after it. */
const PICTURE = /^data:image\/(?:jpeg|png);base64,[A-Za-z0-9+/]+={0,2}$/;
/**
 * Characters of the longest one that is shown: a photograph at the size in which it is shown has a twentieth of them.
 */
const LONGEST = 8_000_000;

/** Whether an address is a JPEG or PNG written out, and nothing that leads elsewhere. */
export function isPictureData(href: string): href is PictureData {
  return href.length <= LONGEST && PICTURE.test(href);
}

const jpegs = new WeakMap<Uint8Array, PictureData>();

/** The bytes of a JPEG as an address; the same bytes are written out once. */
export function jpegPicture(bytes: Uint8Array): PictureData {
  const known = jpegs.get(bytes);
  if (known !== undefined) return known;
  const made: PictureData = `data:image/jpeg;base64,${toBase64(bytes)}`;
  jpegs.set(bytes, made);
  return made;
}

/** The bytes of a picture, as it was written out. */
export function bytesOfPicture(picture: PictureData): Uint8Array {
  return fromBase64(picture.slice(picture.indexOf(',') + 1));
}
