import { isUtf8 } from 'node:buffer';

export type Decoded =
  | {
      readonly ok: true;
      readonly text: string;
      /** The text began with a byte order mark. */ readonly marked: boolean;
    }
  | {
      readonly ok: false;
      readonly reason: string;
      /** Where the first byte stands that cannot be read, both counted from 1. */
      readonly line: number;
      readonly byte: number;
    };

const LINE_FEED = 0x0a;

/** The text that bytes hold in UTF-8, without a byte order mark; or where they stop being UTF-8. */
export function decodeUtf8(bytes: Uint8Array): Decoded {
  if (isUtf8(bytes)) {
    const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
    return { ok: true, text: new TextDecoder('utf-8').decode(bytes), marked };
  }
  const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const place = wide ? { line: 1, byte: 1 } : firstUnreadable(bytes);
  const found = wide
    ? 'it seems to be UTF-16'
    : `byte ${place.byte} of line ${place.line} belongs to another encoding`;
  return { ok: false, reason: `is no text in UTF-8: ${found}; save it as UTF-8`, ...place };
}

/**
 * The first line that is no UTF-8, and the byte in it at which reading stops. A line feed is never part of another
 * character.
 */
function firstUnreadable(bytes: Uint8Array): { readonly line: number; readonly byte: number } {
  let line = 1;
  let start = 0;
  for (;;) {
    const feed = bytes.indexOf(LINE_FEED, start);
    const end = feed < 0 ? bytes.length : feed;
    const row = bytes.subarray(start, end);
    if (feed < 0 || !isUtf8(row)) return { line, byte: readableBytes(row) + 1 };
    line++;
    start = feed + 1;
  }
}

/** How many bytes at the beginning are UTF-8: whole characters only. */
function readableBytes(bytes: Uint8Array): number {
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (beginsReadable(bytes.subarray(0, middle))) low = middle;
    else high = middle - 1;
  }
  while (low > 0 && !isUtf8(bytes.subarray(0, low))) low--;
  return low;
}

/** True while nothing is wrong yet, even if the last character is still incomplete. */
function beginsReadable(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
