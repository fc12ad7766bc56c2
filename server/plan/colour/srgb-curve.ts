/** The part of the light that a channel of sRGB stands for, both 0 to 1. IEC 61966-2-1, section 5.2. */
export function linearChannel(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/** The channel of sRGB for a part of the light: the inverse of `linearChannel`. */
export function encodedChannel(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}
