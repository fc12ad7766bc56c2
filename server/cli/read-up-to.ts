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
