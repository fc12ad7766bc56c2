import { marked } from '../../../grammar/marked.js';
import { reasonOf } from '../../../grammar/reason.js';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { reflectanceOfLightness } from '../../plan/colour/value.js';
import { latin, viewOf } from '../head/bytes.js';
import { type Curve, gammaCurve } from './curve.js';
import { type Matrix, adaptation, d50, d65, times } from './matrix.js';

/** How the channels of a photograph are to be read. */
export interface ColourSpace {
  /** In words, for the painter. */
  readonly name: string;
  /** For red, green and blue. */
  readonly curves: readonly [Curve, Curve, Curve];
  /** From the linear channels to X, Y and Z under D65: equal channels of 1 are white. */
  readonly toXyz: Matrix;
  /** It is for pictures without colour alone. */
  readonly isGrey: boolean;
}

export type SpaceAnswer = { readonly ok: true; readonly space: ColourSpace } | NoPhotograph;

const NAMELESS = marked('a profile without a name');
const MOST_TAGS = 200;
const LONGEST_NAME = 60;

/**
 * Reads a colour profile (ICC.1:2022, and versions from 2 on) of three curves and a matrix, or of one curve for grey.
 * Refused in words are those of tables of many dimensions, of inks, and broken ones. Never throws, whatever the bytes.
 */
export function readProfile(bytes: Uint8Array): SpaceAnswer {
  try {
    return spaceIn(bytes);
  } catch (error) {
    if (error instanceof RangeError) return broken;
    throw error;
  }
}

const broken: SpaceAnswer = {
  ok: false,
  reason: marked(
    'The colour profile in this photograph is broken. Save the photograph anew in sRGB or Display P3.',
  ),
};

/**
 * The connection space has the white D50, whatever the white of the device was (its tag `chad` says how that was
 * brought there), so what is wanted under D65 is brought from D50 alone.
 */
const fromConnection = adaptation(d50, d65);

function spaceIn(bytes: Uint8Array): SpaceAnswer {
  // Section 7.2: the head of 128 bytes.
  if (bytes.length < 132 || latin(bytes, 36, 4) !== 'acsp') return broken;
  const kind = latin(bytes, 16, 4);
  const connection = latin(bytes, 20, 4);
  const tags = tagsOf(bytes);
  const told = nameIn(tags.get('desc'));
  const name = told ?? NAMELESS;
  if (kind === 'GRAY') return greySpace(name, tags, connection);
  if (kind !== 'RGB ') {
    const reason =
      kind === 'CMYK'
        ? marked(
            'The colour profile in this photograph is for inks of a press (CMYK). Save the photograph anew in sRGB or Display P3.',
          )
        : reasonOf(
            marked(
              'The colour profile in this photograph is for “{0}”. Save the photograph anew in sRGB or Display P3.',
            ),
            plain(kind) ?? '?',
          );
    return { ok: false, reason };
  }
  const columns = ['rXYZ', 'gXYZ', 'bXYZ'].map((tag) => xyzIn(tags.get(tag)));
  const curves = ['rTRC', 'gTRC', 'bTRC'].map((tag) => curveIn(tags.get(tag)));
  const [red, green, blue] = columns;
  const [redCurve, greenCurve, blueCurve] = curves;
  if (!red || !green || !blue || !redCurve || !greenCurve || !blueCurve || connection !== 'XYZ ') {
    if (!tags.has('A2B0')) return broken;
    return {
      ok: false,
      reason: reasonOf(
        marked(
          'The colour profile in this photograph, {0}, is made of tables, which are not read here. Save the photograph anew in sRGB or Display P3.',
        ),
        told ?? reasonOf(NAMELESS),
      ),
    };
  }
  const toConnection: Matrix = [
    [red[0], green[0], blue[0]],
    [red[1], green[1], blue[1]],
    [red[2], green[2], blue[2]],
  ];
  if (!isWhite(toConnection)) return broken;
  return {
    ok: true,
    space: {
      name,
      curves: [redCurve, greenCurve, blueCurve],
      toXyz: times(fromConnection, toConnection),
      isGrey: false,
    },
  };
}

/** All channels together come to something like white; early profiles miss the white D50 by as much as D65 does. */
function isWhite(toConnection: Matrix): boolean {
  return toConnection.every(([red, green, blue]) => {
    const sum = red + green + blue;
    return sum > 0.5 && sum < 1.5;
  });
}

/** Section 8.3.4: one curve from grey to the connection space, to Y or to L*. */
function greySpace(name: string, tags: ReadonlyMap<string, Uint8Array>, connection: string): SpaceAnswer {
  const curve = curveIn(tags.get('kTRC'));
  if (curve === undefined) return broken;
  const toY =
    connection === 'Lab ' ? (encoded: number) => reflectanceOfLightness(100 * curve(encoded)) / 100 : curve;
  // Grey is decoded with its three channels alike, so any three parts that come to white will do.
  const [x, y, z] = d65;
  const third = (whole: number) => [whole / 3, whole / 3, whole / 3] as const;
  return {
    ok: true,
    space: { name, curves: [toY, toY, toY], toXyz: [third(x), third(y), third(z)], isGrey: true },
  };
}

/** Section 7.3. */
function tagsOf(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  const view = viewOf(bytes);
  const tags = new Map<string, Uint8Array>();
  const count = Math.min(MOST_TAGS, view.getUint32(128));
  for (let index = 0; index < count; index++) {
    const at = 132 + 12 * index;
    const [offset, length] = [view.getUint32(at + 4), view.getUint32(at + 8)];
    if (offset + length <= bytes.length)
      tags.set(latin(bytes, at, 4), bytes.subarray(offset, offset + length));
  }
  return tags;
}

function xyzIn(tag: Uint8Array | undefined): readonly [number, number, number] | undefined {
  if (tag === undefined || latin(tag, 0, 4) !== 'XYZ ') return undefined;
  const view = viewOf(tag);
  return [fixed(view, 8), fixed(view, 12), fixed(view, 16)];
}

/** s15Fixed16Number, section 4.6. */
function fixed(view: DataView, at: number): number {
  return view.getInt32(at) / 65_536;
}

function curveIn(tag: Uint8Array | undefined): Curve | undefined {
  if (tag === undefined) return undefined;
  const kind = latin(tag, 0, 4);
  if (kind === 'curv') return sampledCurve(tag);
  return kind === 'para' ? parametricCurve(tag) : undefined;
}

/** Section 10.6: none for a straight line, one for a gamma in 256ths, else levels at even distances. */
function sampledCurve(tag: Uint8Array): Curve | undefined {
  const view = viewOf(tag);
  const count = view.getUint32(8);
  if (count === 0) return gammaCurve(1);
  if (count === 1) return gammaCurve(view.getUint16(12) / 256);
  if (12 + 2 * count > tag.length) return undefined;
  const levels = Float64Array.from({ length: count }, (_, index) => view.getUint16(12 + 2 * index) / 65_535);
  return (encoded) => {
    const place = Math.min(1, Math.max(0, encoded)) * (count - 1);
    const below = Math.min(count - 2, Math.floor(place));
    const [low = 0, high = 0] = [levels[below], levels[below + 1]];
    return low + (high - low) * (place - below);
  };
}

/** Section 10.18, table 68. */
function parametricCurve(tag: Uint8Array): Curve | undefined {
  const view = viewOf(tag);
  const kind = view.getUint16(8);
  const count = [1, 3, 4, 5, 7][kind];
  if (count === undefined) return undefined;
  const [g = 1, a = 1, b = 0, c = 0, d = 0, e = 0, f = 0] = Array.from({ length: count }, (_, index) =>
    fixed(view, 12 + 4 * index),
  );
  const power = (encoded: number) => Math.max(0, a * encoded + b) ** g;
  switch (kind) {
    case 0:
      return gammaCurve(g);
    case 1:
      return (encoded) => (encoded >= -b / a ? power(encoded) : 0);
    case 2:
      return (encoded) => (encoded >= -b / a ? power(encoded) : 0) + c;
    case 3:
      return (encoded) => (encoded >= d ? power(encoded) : c * encoded);
    default:
      return (encoded) => (encoded >= d ? power(encoded) + e : c * encoded + f);
  }
}

/** The first name: of version 2 in ASCII (ICC.1:2001-04, section 6.5.17), later in UTF-16 (section 10.15). */
function nameIn(tag: Uint8Array | undefined): string | undefined {
  if (tag === undefined || tag.length < 12) return undefined;
  const view = viewOf(tag);
  if (latin(tag, 0, 4) === 'desc') {
    const length = Math.min(view.getUint32(8), LONGEST_NAME + 1);
    return plain(latin(tag, 12, length));
  }
  if (latin(tag, 0, 4) !== 'mluc' || tag.length < 28) return undefined;
  const [length, offset] = [Math.min(view.getUint32(20), 2 * LONGEST_NAME), view.getUint32(24)];
  return plain(new TextDecoder('utf-16be').decode(tag.subarray(offset, offset + length)));
}

/** What can stand in a sentence; nothing where nothing is left. */
function plain(text: string): string | undefined {
  const seen = text.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '').trim();
  return seen === '' ? undefined : seen.slice(0, LONGEST_NAME);
}
