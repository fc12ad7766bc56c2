/** From an encoded channel, 0 to 1, to a linear one. */
export type Curve = (encoded: number) => number;

/** ITU-R BT.709-6, item 1.2, turned round. */
export const filmCurve: Curve = (encoded) =>
  encoded < 0.081 ? encoded / 4.5 : ((encoded + 0.099) / 1.099) ** (1 / 0.45);

export function gammaCurve(gamma: number): Curve {
  return gamma === 1 ? (encoded) => encoded : (encoded) => encoded ** gamma;
}

/** The linear channel for each of the levels that a file can say. */
export function tableOf(curve: Curve, levels: 256 | 65536): Float32Array {
  return Float32Array.from({ length: levels }, (_, level) => {
    const linear = curve(level / (levels - 1));
    return Number.isFinite(linear) ? Math.min(8, Math.max(-8, linear)) : 0;
  });
}
