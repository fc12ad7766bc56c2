/** In pieces, because a function takes only so many arguments. */
export function toBase64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let from = 0; from < bytes.length; from += 8192)
    pieces.push(String.fromCharCode(...bytes.subarray(from, from + 8192)));
  return btoa(pieces.join(''));
}

/** @throws for what is no base64 */
export function fromBase64(text: string): Uint8Array {
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let at = 0; at < bytes.length; at++) bytes[at] = characters.charCodeAt(at);
  return bytes;
}
