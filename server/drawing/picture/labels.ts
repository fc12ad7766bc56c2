import type { Colour } from '../../plan/colour/colour.js';
import type { Point } from '../../plan/geometry/point.js';
import type { PlanObject } from '../../plan/plan.js';
import type { Box, Face, Mark } from '../scene.js';
import { textMark } from '../marks.js';
import { BOLD_WIDTH, textWidth } from '../captions/text-width.js';
import type { Reading } from '../views/reading.js';
import { boxAround, grown, isWithin, overlap } from './boxes.js';
import { hexOf, lineOn } from './ink.js';
import { ownerAt } from './region.js';

const DIRECTIONS = 16;

export interface LabelStyle {
  readonly size: number;
  readonly face?: Face;
  /** Tried in their order. */
  readonly places: readonly Point[];
  /** How far from a place the label may stand, the nearest first; at 0 it stands on it. */
  readonly reaches: readonly number[];
  /** Covered only when there is no other place. */
  readonly spared?: readonly Box[];
  readonly subject?: string | undefined;
}

/** Writes on a picture where there is room, and keeps what it has written clear. */
export class Labels {
  readonly #reading: Reading;
  readonly #toneOf: (object: PlanObject | undefined) => Colour;
  readonly #taken: Box[];

  /** @param toneOf what is seen at an object or of the bare ground, so that letters can stand out from it */
  constructor(reading: Reading, toneOf: (object: PlanObject | undefined) => Colour, taken: readonly Box[]) {
    this.#reading = reading;
    this.#toneOf = toneOf;
    this.#taken = [...taken];
  }

  /** What is covered now. */
  get taken(): readonly Box[] {
    return this.#taken;
  }

  /** The middle of a free square of this side at a place or near it; the place itself when there is none. */
  standing(at: Point, side: number, reaches: readonly number[], spared: readonly Box[] = []): Point {
    const extent = { width: side, height: side };
    const { picture } = this.#reading;
    const box =
      placeLabel(extent, [at], reaches, [...this.#taken, ...spared], picture) ??
      placeLabel(extent, [at], reaches, this.#taken, picture) ??
      boxAround(at, extent);
    this.#taken.push(box);
    return { x: box.x + side / 2, y: box.y + side / 2 };
  }

  /** A line of text, or nothing where there is no room for it. */
  write(key: string, text: string, style: LabelStyle): readonly Mark[] {
    const { size, face = 'text', places, reaches, spared = [], subject } = style;
    const { picture, cells, plan } = this.#reading;
    const width = textWidth(text, size) * (face === 'strong' ? BOLD_WIDTH : 1) + 0.2 * size;
    const extent = { width, height: 1.15 * size };
    const box =
      placeLabel(extent, places, reaches, [...this.#taken, ...spared], picture) ??
      placeLabel(extent, places, reaches, this.#taken, picture);
    if (box === undefined) return [];
    this.#taken.push(grown(box, 0.12 * size));
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const owner = ownerAt(cells, middle);
    const under = this.#toneOf(owner === undefined ? undefined : plan.objects[owner]);
    return [
      textMark(key, text, middle.x, middle.y + 0.35 * size, {
        size,
        ink: hexOf(lineOn(under)),
        halo: hexOf(under),
        face,
        anchor: 'middle',
        subject,
      }),
    ];
  }
}

/** The first free box near one of the places, above and to the right of each sooner than elsewhere. */
export function placeLabel(
  extent: Pick<Box, 'width' | 'height'>,
  places: readonly Point[],
  reaches: readonly number[],
  avoided: readonly Box[],
  picture: Box,
): Box | undefined {
  for (const reach of reaches) {
    for (const place of places) {
      for (const box of boxesRound(place, reach, extent)) {
        if (isWithin(box, picture) && !avoided.some((other) => overlap(box, other))) return box;
      }
    }
  }
  return undefined;
}

function boxesRound(place: Point, reach: number, extent: Pick<Box, 'width' | 'height'>): readonly Box[] {
  if (reach === 0) return [boxAround(place, extent)];
  return Array.from({ length: DIRECTIONS }, (_, direction) => {
    const turn = direction % 2 === 0 ? direction / 2 : -(direction + 1) / 2;
    const angle = (2 * Math.PI * turn) / DIRECTIONS - Math.PI / 4;
    const middle = {
      x: place.x + Math.cos(angle) * (reach + extent.width / 2),
      y: place.y + Math.sin(angle) * (reach + extent.height / 2),
    };
    return boxAround(middle, extent);
  });
}
