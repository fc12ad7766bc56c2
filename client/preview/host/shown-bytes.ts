import { said } from '../../../grammar/localised.js';
import { kindOf } from '../../../server/photograph/head/kind.js';
import type { SketchRead } from '../messages.js';
import { pictureHeader } from '../sketch/sketch-header.js';

/**
 * What the page is given of a file that was read: its bytes, or why they can't be shown, in the language that is
 * spoken.
 */
export function shownBytes(bytes: Uint8Array, as: 'sketch' | 'photograph'): SketchRead {
  // What the server can't read either is told in the same words.
  const kind = as === 'photograph' ? kindOf(bytes) : undefined;
  if (kind?.ok === false) return { ok: false, reason: said(kind.reason) };
  const header = pictureHeader(bytes);
  // What a file system hands out may be part of a larger store, or a Buffer, which a page does not know.
  return header.ok ? { ok: true, bytes: Uint8Array.from(bytes) } : header;
}
