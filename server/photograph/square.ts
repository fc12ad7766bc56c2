import {
  type NoPhotograph,
  type PhotographTrust,
  type SquaredAnswer,
  type Squaring,
  measuredSide,
  shownSide,
} from '../measure/photograph/photographs.js';
import { marked } from '../../grammar/marked.js';
import { reasonOf } from '../../grammar/reason.js';
import type { Corners } from '../plan/geometry/homography.js';
import { type Point, distance } from '../plan/geometry/point.js';
import { pixelAt } from '../plan/picture-places.js';
import { type SquarePhotograph, type SquaringOptions, stopped } from './answers.js';
import { decode, type Pixels } from './codec/decode.js';
import { encode } from './codec/encode.js';
import { tableOf } from './colour/curve.js';
import type { Matrix, Row } from './colour/matrix.js';
import { type StatedSpace, spaceFor } from './colour/space.js';
import { contentOf, idOf } from './content.js';
import { toLab, toSrgb } from './convert.js';
import { cornersIn, ownCorners } from './corners.js';
import { type CameraFacts, cameraFacts } from './exif.js';
import { type GreyBalance, greyBalance } from './grey.js';
import { headOf } from './head/head.js';
import type { PictureHead } from './head/picture-head.js';
import { refusalOfSize } from './limits.js';
import { type LinearPicture, reduced, turned } from './linear-picture.js';
import { type Size, storedPlace, uprightSize } from './orientation.js';
import { type Tables, resample } from './resample.js';

/**
 * Squares up the canvas in the bytes of a photograph: decoded, turned upright, its colours read by its profile,
 * balanced by its grey patch, and brought between its corners in linear light. Never rejects, whatever the bytes.
 *
 * What is in memory at once is the picture decoded, twice for a moment, and what comes out of it: for the largest that
 * is allowed (see `limits.ts`) about a gigabyte.
 */
export const squarePhotograph: SquarePhotograph = async (bytes, squaring, options = {}) => {
  try {
    return await squared(bytes, squaring, options);
  } catch (error) {
    return { ok: false, reason: failureInWords(error) };
  }
};

/** What is left when everything known has been looked at: above all, memory that is not to be had. */
function failureInWords(error: unknown): NoPhotograph['reason'] {
  if (error instanceof RangeError)
    return marked(
      'There is not enough memory to measure this photograph. Save it smaller: 2000 pixels across are enough.',
    );
  return reasonOf(
    marked('This photograph could not be measured ({0}).'),
    error instanceof Error ? error.message : String(error),
  );
}

async function squared(
  bytes: Uint8Array,
  squaring: Squaring,
  options: SquaringOptions,
): Promise<SquaredAnswer> {
  const { progress, signal } = options;
  const answer = headOf(bytes);
  if (!answer.ok) return answer;
  const { head } = answer;
  const refusal = refusalOfSize(bytes.length, head);
  if (refusal !== undefined) return { ok: false, reason: refusal };
  const facts = cameraFacts(head.exif);
  const stated = await spaceFor(head, facts);
  if (!stated.ok) return stated;
  const size = uprightSize(head, facts.orientation);
  const placed = cornersIn(squaring, size);
  if (!placed.ok) return placed;
  const content = options.content ?? (await contentOf(bytes));

  if (signal?.aborted) return stopped;
  progress?.(0.1);
  const decoded = await decode(bytes, head);
  if (!decoded.ok) return decoded;
  if (signal?.aborted) return stopped;
  progress?.(0.6);

  const canvas = canvasIn(decoded.pixels, { head, facts, stated, squaring, corners: placed.corners });
  const measured = reduced(canvas.picture, sizeFor(measuredSide, squaring.proportion));
  const shown = reduced(canvas.picture, sizeFor(canvas.shownSide, squaring.proportion));
  const lab = toLab(measured, canvas.toXyz);
  if (signal?.aborted) return stopped;
  progress?.(0.8);
  const jpeg = await encode({ ...sizeOf(shown), data: toSrgb(shown, canvas.toXyz) });
  if (signal?.aborted) return stopped;
  return {
    ok: true,
    picture: {
      id: idOf(content, squaring),
      ...sizeOf(measured),
      lab,
      shown: { ...sizeOf(shown), jpeg },
      source: {
        type: head.type,
        ...size,
        profile: stated.space.name,
        profileStated: stated.isStated,
        ...(facts.taken ? { taken: facts.taken } : {}),
      },
      trust: {
        burntShare: canvas.burntShare,
        blackShare: canvas.blackShare,
        ...(canvas.grey ? { grey: trustOf(canvas.grey) } : {}),
        sharpness: Math.sqrt(areaOf(placed.corners) / (measured.width * measured.height)),
      },
    },
  };
}

interface Canvas {
  readonly picture: LinearPicture;
  readonly shownSide: number;
  /** With the balance of the grey patch. */
  readonly toXyz: Matrix;
  readonly burntShare: number;
  readonly blackShare: number;
  readonly grey?: GreyBalance;
}

interface Known {
  readonly head: PictureHead;
  readonly facts: CameraFacts;
  readonly stated: Extract<StatedSpace, { readonly ok: true }>;
  readonly squaring: Squaring;
  /** In the upright photograph. */
  readonly corners: Corners;
}

/** The canvas at the larger of the two sizes that are wanted, in linear light. */
function canvasIn(pixels: Pixels, { head, facts, stated, squaring, corners }: Known): Canvas {
  const { curves, toXyz } = stated.space;
  const levels = head.bits === 16 ? 65536 : 256;
  const [red, green, blue] = curves;
  const redTable = tableOf(red, levels);
  const tables: Tables = [
    redTable,
    green === red ? redTable : tableOf(green, levels),
    blue === red ? redTable : tableOf(blue, levels),
  ];
  const stored = (place: Point) => storedPlace(place, head, facts.orientation);
  const grey =
    squaring.grey &&
    greyBalance(
      pixels,
      tables,
      stored(pixelAt(squaring.grey, uprightSize(head, facts.orientation))),
      toXyz[1],
    );

  const longest = Math.max(
    ...corners.map((corner, index) => distance(corner, corners[(index + 1) % 4] ?? corner)),
  );
  const side = Math.max(1, Math.min(shownSide, Math.round(longest)));
  const out = sizeFor(Math.max(side, measuredSide), squaring.proportion);
  // Resampled as it is stored, row by row, and turned when it is small.
  const turnedOut = uprightSize(out, facts.orientation);
  const resampled = resample(pixels, tables, asStored(corners, head, facts.orientation), turnedOut);
  const picture =
    facts.orientation === 1
      ? resampled.picture
      : turned(resampled.picture, out, (column, row) => {
          const { x, y } = storedPlace({ x: column + 0.5, y: row + 0.5 }, turnedOut, facts.orientation);
          return { x: Math.floor(x), y: Math.floor(y) };
        });
  return {
    ...resampled,
    picture,
    shownSide: side,
    toXyz: grey ? scaled(toXyz, grey.factors) : toXyz,
    ...(grey ? { grey } : {}),
  };
}

const unit: Size = { width: 1, height: 1 };

/**
 * Where the corners of the upright canvas lie in the stored picture, in the order that they have when it is turned as
 * that is.
 */
function asStored(corners: Corners, stored: Size, orientation: number): Corners {
  const found = ownCorners(unit).map((corner) => {
    const index = ownCorners(unit).findIndex((upright) => {
      const { x, y } = storedPlace(upright, unit, orientation);
      return x === corner.x && y === corner.y;
    });
    return storedPlace(corners[index] as Point, stored, orientation);
  });
  return found as unknown as Corners;
}

/** The size of a canvas with its longer side given; no side is less than a pixel. */
function sizeFor(longer: number, proportion: number): Size {
  const shorter = (ratio: number) => Math.max(1, Math.round(longer * ratio));
  return proportion >= 1
    ? { width: longer, height: shorter(1 / proportion) }
    : { width: shorter(proportion), height: longer };
}

function sizeOf({ width, height }: Size): Size {
  return { width, height };
}

function scaled(toXyz: Matrix, factors: Row): Matrix {
  const along = ([red, green, blue]: Row): Row => [red * factors[0], green * factors[1], blue * factors[2]];
  return [along(toXyz[0]), along(toXyz[1]), along(toXyz[2])];
}

function trustOf({ cast, fault }: GreyBalance): NonNullable<PhotographTrust['grey']> {
  return { cast, ...(fault ? { fault } : {}) };
}

function areaOf(corners: Corners): number {
  const twice = corners.reduce((sum, { x, y }, index) => {
    const next = corners[(index + 1) % 4] ?? corners[0];
    return sum + x * next.y - next.x * y;
  }, 0);
  return Math.abs(twice) / 2;
}
