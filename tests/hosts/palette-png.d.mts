/**
 * The same picture as an indexed PNG with at most 256 colours; takes a PNG with 8 bits for each of red, green and blue.
 */
export function withPalette(png: Uint8Array): Uint8Array;
