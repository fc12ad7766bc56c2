import { encode } from 'jpeg-js';
import type { SquaredPicture } from '../../server/measure/photograph/photographs.js';
import { randomFrom } from '../../server/measure/photograph/test-support.js';
import { type Corners, fromUnitSquare, project } from '../../server/plan/geometry/homography.js';
import { labToRgb } from '../../server/plan/colour/srgb.js';
import { curve, inverse, linear } from '../support/taken-photographs.js';

/** How a painting that never was is photographed, so that the file is like one that a painter takes. */
export interface Taking {
  /** Of the photograph, pixels. */
  readonly width: number;
  readonly height: number;
  /** Where the corners of the canvas lie in it. */
  readonly corners: Corners;
  /** The middle of a grey card that stands beside it. */
  readonly card: { readonly x: number; readonly y: number };
  /** What the light does to red, green and blue. */
  readonly light: readonly [number, number, number];
  /** How much darker it is at the lower right of the photograph than at its upper left. */
  readonly falloff: number;
  /** Of the JPEG, 1 to 100. */
  readonly quality: number;
  readonly seed: number;
}

type Light = readonly [number, number, number];

/** Linear sRGB of the wall behind the easel, of the edge of the panel, and of a grey card that reflects 18 %. */
const WALL: Light = [0.075, 0.066, 0.058];
const EDGE: Light = [0.3, 0.25, 0.19];
const CARD: Light = [0.18, 0.18, 0.18];
const CARD_HALF = { across: 24, down: 34 } as const;

/**
 * A painting as pixels, leaning in a photograph under coloured light that falls off, with brush marks and some grain.
 */
export function taken(
  painting: Pick<SquaredPicture, 'width' | 'height' | 'lab'>,
  taking: Taking,
): Uint8Array {
  const { width, height, corners, card, light, falloff, quality } = taking;
  const onto = fromUnitSquare(corners);
  if (onto === undefined) throw new Error('The corners go round no canvas.');
  const inCanvas = inverse(onto);
  const random = randomFrom(taking.seed);
  const data = Buffer.alloc(4 * width * height, 255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = project(inCanvas, { x: x + 0.5, y: y + 0.5 });
      const shade = 1 - falloff * (0.5 * (x / width) + 0.5 * (y / height));
      const lit = surface(painting, at, { x: x - card.x, y: y - card.y }).map(
        (channel, index) => channel * (light[index] ?? 1) * shade,
      );
      const grain = 1 + 0.012 * (random() - 0.5);
      lit.forEach((channel, index) => {
        data[4 * (y * width + x) + index] = Math.round(255 * curve(Math.min(1, channel * grain)));
      });
    }
  }
  return Uint8Array.from(encode({ width, height, data }, quality).data);
}

/** What stands at a place: the painting, its edge, the grey card or the wall. */
function surface(
  painting: Pick<SquaredPicture, 'width' | 'height' | 'lab'>,
  at: { readonly x: number; readonly y: number },
  fromCard: { readonly x: number; readonly y: number },
): Light {
  if (Math.abs(fromCard.x) < CARD_HALF.across && Math.abs(fromCard.y) < CARD_HALF.down) return CARD;
  const beside = Math.max(-at.x, at.x - 1, -at.y, at.y - 1);
  if (beside > 0.012) return WALL;
  if (beside > 0) return EDGE;
  const painted = smooth(painting, at.x, at.y);
  // Strokes that run a little downhill, as a hand that leans on a stick makes them.
  const stroke =
    Math.sin(90 * (at.y + 0.22 * at.x) + 3 * Math.sin(23 * at.x)) * Math.sin(31 * at.x + 9 * at.y);
  return painted.map((channel) => channel * (1 + 0.022 * stroke)) as unknown as Light;
}

/** Between the four pixels round a place, in linear light. */
function smooth(
  { width, height, lab }: Pick<SquaredPicture, 'width' | 'height' | 'lab'>,
  across: number,
  down: number,
): Light {
  const x = Math.min(width - 1.001, Math.max(0, across * width - 0.5));
  const y = Math.min(height - 1.001, Math.max(0, down * height - 0.5));
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const mixed = [0, 0, 0];
  for (const [column, row, weight] of [
    [left, top, (1 - x + left) * (1 - y + top)],
    [left + 1, top, (x - left) * (1 - y + top)],
    [left, top + 1, (1 - x + left) * (y - top)],
    [left + 1, top + 1, (x - left) * (y - top)],
  ] as const) {
    const from = 3 * (Math.min(height - 1, row) * width + Math.min(width - 1, column));
    const [l = 0, a = 0, b = 0] = lab.subarray(from, from + 3);
    labToRgb([l, a, b]).forEach((channel, index) => {
      mixed[index] = (mixed[index] ?? 0) + weight * linear(Math.min(1, Math.max(0, channel)));
    });
  }
  return mixed as unknown as Light;
}
