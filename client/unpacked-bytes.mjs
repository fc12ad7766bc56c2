// @ts-check
import { inflateSync } from 'fflate';

/**
 * What `packedBytes` has packed, wherever the bundle runs.
 * @param {string} packed in base64
 * @param {number} length of what was packed
 * @returns {Uint8Array}
 */
export function unpacked(packed, length) {
  const letters = atob(packed);
  const bytes = new Uint8Array(letters.length);
  for (let at = 0; at < bytes.length; at += 1) bytes[at] = letters.charCodeAt(at);
  return inflateSync(bytes, { out: new Uint8Array(length) });
}
