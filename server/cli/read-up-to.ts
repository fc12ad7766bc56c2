import { readSync } from 'node:fs';

/**
 * What a stream holds, or its first `mostBytes` bytes; then it is closed.
 * @throws what the stream ends with when it can't be read
 */
export async function readUpTo(stream: AsyncIterable<Uint8Array>, mostBytes: number): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of stream) {
    pieces.push(piece);
    length += piece.length;
    if (length >= mostBytes) break;
  }
  return Buffer.concat(pieces).subarray(0, mostBytes);
}

/** So much of a file is read at once. */
const PIECE_BYTES = 1024 * 1024;

/**
 * What an open file holds from where it stands, or the first `mostBytes` bytes of that, however large it says to be.
 * @throws what the system answers when it can't be read
 */
export function readUpToAtOnce(handle: number, mostBytes: number): Uint8Array {
  const pieces: Uint8Array[] = [];
  let length = 0;
  while (length < mostBytes) {
    const piece = new Uint8Array(Math.min(PIECE_BYTES, mostBytes - length));
    const read = readSync(handle, piece);
    if (read === 0) break;
    pieces.push(piece.subarray(0, read));
    length += read;
  }
  return Buffer.concat(pieces, length);
}
