import type { Point } from '../plan/geometry/point.js';

/** The picture in two or three flat tones, one to each group of the value scale. */
export interface NotanMeasure {
  /** In the order of the groups. */
  readonly tones: readonly Tone[];
}

export interface Tone {
  readonly key: string;
  readonly name: string;
  /** Part of the picture. */
  readonly share: number;
  /** Its separate pieces, largest first. */
  readonly pieces: readonly TonePiece[];
  /** Of the largest piece, part of its tone; 0 for a tone that is not there. */
  readonly largestOfTone: number;
}

/** What hangs together in one tone. */
export interface TonePiece {
  /** Part of the picture. */
  readonly share: number;
  /** A place inside it, as far from its border as any. */
  readonly at: Point;
  /** Objects seen in it, most first; `GROUND` for the bare ground. */
  readonly areas: readonly number[];
}
