/** Three rows of three. */
export type Matrix = readonly [Row, Row, Row];
export type Row = readonly [number, number, number];

/** A place in the chromaticity diagram of CIE 1931. */
export type Chromaticity = readonly [x: number, y: number];

/** White of D65 as CSS and sRGB have it, Y = 1: the same as that of every colour of a plan. */
export const d65 = whiteOf([0.3127, 0.329]);
/** White of the profile connection space (ICC.1:2022, section 6.3.4.3). */
export const d50: Row = [0.9642, 1, 0.8249];

/** X, Y and Z of a white with Y = 1. */
export function whiteOf([x, y]: Chromaticity): Row {
  return [x / y, 1, (1 - x - y) / y];
}

/** The matrix product: does `second` first. */
export function times(first: Matrix, second: Matrix): Matrix {
  const row = ([a, b, c]: Row): Row => [
    a * second[0][0] + b * second[1][0] + c * second[2][0],
    a * second[0][1] + b * second[1][1] + c * second[2][1],
    a * second[0][2] + b * second[1][2] + c * second[2][2],
  ];
  return [row(first[0]), row(first[1]), row(first[2])];
}

export function apply([one, two, three]: Matrix, [x, y, z]: Row): Row {
  const along = ([a, b, c]: Row) => a * x + b * y + c * z;
  return [along(one), along(two), along(three)];
}

/** By cofactors; `undefined` where rows lie so nearly in one plane that there is none. */
export function inverse(matrix: Matrix): Matrix | undefined {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix;
  const whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(Math.abs(whole) > 1e-9)) return undefined;
  return [
    [(e * i - f * h) / whole, (c * h - b * i) / whole, (b * f - c * e) / whole],
    [(f * g - d * i) / whole, (a * i - c * g) / whole, (c * d - a * f) / whole],
    [(d * h - e * g) / whole, (b * g - a * h) / whole, (a * e - b * d) / whole],
  ];
}

/**
 * From linear red, green and blue to X, Y and Z under their own white: SMPTE RP 177 (1993), section 3. `undefined`
 * where the primaries lie in a line.
 */
export function fromPrimaries(
  primaries: readonly [Chromaticity, Chromaticity, Chromaticity],
  white: Row,
): Matrix | undefined {
  if (primaries.some(([, y]) => !(y > 1e-6))) return undefined;
  const [red, green, blue] = [whiteOf(primaries[0]), whiteOf(primaries[1]), whiteOf(primaries[2])];
  const columns: Matrix = [
    [red[0], green[0], blue[0]],
    [red[1], green[1], blue[1]],
    [red[2], green[2], blue[2]],
  ];
  const back = inverse(columns);
  if (back === undefined) return undefined;
  const [r, g, b] = apply(back, white);
  const scaled = ([x, y, z]: Row): Row => [x * r, y * g, z * b];
  return [scaled(columns[0]), scaled(columns[1]), scaled(columns[2])];
}

/** The cone responses of Bradford, as ICC.1:2022 gives them in annex E.3. */
const bradford: Matrix = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];

/** Turns colours as they look under one white into those that look so under another: linear Bradford. */
export function adaptation(from: Row, to: Row): Matrix {
  const [before, after] = [apply(bradford, from), apply(bradford, to)];
  const scales: Matrix = [
    [after[0] / before[0], 0, 0],
    [0, after[1] / before[1], 0],
    [0, 0, after[2] / before[2]],
  ];
  const back = inverse(bradford);
  if (back === undefined) throw new Error('Bradford has an inverse.');
  return times(back, times(scales, bradford));
}
