/** Colour profiles made for tests, as ICC.1:2022 lays them out. */

export type CurveTag =
  | { readonly gamma: number }
  | { readonly levels: readonly number[] }
  | { readonly kind: 0 | 1 | 2 | 3 | 4; readonly numbers: readonly number[] };

export interface MadeProfile {
  readonly space?: string;
  readonly connection?: string;
  readonly version?: 2 | 4;
  readonly name?: string;
  /** X, Y and Z under D50 of red, green and blue. */
  readonly columns?: readonly (readonly [number, number, number])[];
  /** For red, green and blue, or one for grey. */
  readonly curves: readonly CurveTag[];
  readonly tags?: readonly (readonly [name: string, content: Uint8Array])[];
}

/** Primaries of sRGB under D50, as the profiles of the ICC have them. */
export const srgbColumns = [
  [0.43607, 0.22249, 0.01392],
  [0.38515, 0.71687, 0.09708],
  [0.14307, 0.06061, 0.7141],
] as const;

/** Adobe RGB (1998) Color Image Encoding, section 4.3.1.1, brought to D50. */
export const adobeColumns = [
  [0.60974, 0.31111, 0.01947],
  [0.20528, 0.62567, 0.06087],
  [0.14919, 0.06322, 0.74457],
] as const;

export const srgbParameters = [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045] as const;

export function makeProfile({
  space = 'RGB ',
  connection = 'XYZ ',
  version = 4,
  name = 'Made for a test',
  columns = srgbColumns,
  curves,
  tags = [],
}: MadeProfile): Uint8Array<ArrayBuffer> {
  const isGrey = space === 'GRAY';
  const all: (readonly [string, Uint8Array])[] = [
    ['desc', version === 4 ? multiLingual(name) : description(name)],
    ['cprt', version === 4 ? multiLingual('none') : textTag('none')],
    ['wtpt', xyzTag([0.9642, 1, 0.8249])],
    ...(isGrey ? [] : columns.map((column, index) => [`${'rgb'[index]}XYZ`, xyzTag(column)] as const)),
    ...curves.map((curve, index) => [isGrey ? 'kTRC' : `${'rgb'[index]}TRC`, curveTag(curve)] as const),
    ...tags,
  ];
  const head = 132 + 12 * all.length;
  const total = all.reduce((sum, [, content]) => sum + padded(content.length), head);
  const bytes = new Uint8Array(total);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, total);
  bytes[8] = version;
  write(bytes, 12, 'mntr');
  write(bytes, 16, space);
  write(bytes, 20, connection);
  write(bytes, 36, 'acsp');
  [0.9642, 1, 0.8249].forEach((value, index) => view.setInt32(68 + 4 * index, Math.round(value * 65536)));
  view.setUint32(128, all.length);
  let at = head;
  all.forEach(([tag, content], index) => {
    write(bytes, 132 + 12 * index, tag);
    view.setUint32(136 + 12 * index, at);
    view.setUint32(140 + 12 * index, content.length);
    bytes.set(content, at);
    at += padded(content.length);
  });
  return bytes;
}

function padded(length: number): number {
  return 4 * Math.ceil(length / 4);
}

function write(bytes: Uint8Array, at: number, text: string): void {
  for (let index = 0; index < text.length; index++) bytes[at + index] = text.charCodeAt(index);
}

function tagOf(kind: string, length: number): readonly [Uint8Array, DataView] {
  const bytes = new Uint8Array(length);
  write(bytes, 0, kind);
  return [bytes, new DataView(bytes.buffer)];
}

function xyzTag(xyz: readonly [number, number, number]): Uint8Array {
  const [bytes, view] = tagOf('XYZ ', 20);
  xyz.forEach((value, index) => view.setInt32(8 + 4 * index, Math.round(value * 65536)));
  return bytes;
}

function curveTag(curve: CurveTag): Uint8Array {
  if ('kind' in curve) {
    const [bytes, view] = tagOf('para', 12 + 4 * curve.numbers.length);
    view.setUint16(8, curve.kind);
    curve.numbers.forEach((number, index) => view.setInt32(12 + 4 * index, Math.round(number * 65536)));
    return bytes;
  }
  const levels = 'gamma' in curve ? [curve.gamma * 256] : curve.levels.map((level) => level * 65535);
  const [bytes, view] = tagOf('curv', 12 + 2 * levels.length);
  view.setUint32(8, levels.length);
  levels.forEach((level, index) => view.setUint16(12 + 2 * index, Math.round(level)));
  return bytes;
}

function multiLingual(text: string): Uint8Array {
  const [bytes, view] = tagOf('mluc', 28 + 2 * text.length);
  view.setUint32(8, 1);
  view.setUint32(12, 12);
  write(bytes, 16, 'enUS');
  view.setUint32(20, 2 * text.length);
  view.setUint32(24, 28);
  for (let index = 0; index < text.length; index++) view.setUint16(28 + 2 * index, text.charCodeAt(index));
  return bytes;
}

function description(text: string): Uint8Array {
  const [bytes, view] = tagOf('desc', 12 + text.length + 1 + 78);
  view.setUint32(8, text.length + 1);
  write(bytes, 12, text);
  return bytes;
}

function textTag(text: string): Uint8Array {
  const [bytes] = tagOf('text', 8 + text.length + 1);
  write(bytes, 8, text);
  return bytes;
}
