/** Sizes and intervals of the principal objects, dominant and secondary. Shares are parts of the canvas. */
export interface SpacingMeasure {
  readonly principals: readonly { readonly object: number; readonly share: number }[];
  /** Pairs whose visible areas differ by less than the limit asked for, part of the larger; alike first. */
  readonly sizePairs: readonly {
    readonly one: number;
    readonly other: number;
    readonly difference: number;
  }[];
  /** Clear space between neighbours, beside each other or over each other. */
  readonly gaps: readonly Gap[];
}

export interface Gap {
  readonly along: 'across' | 'down';
  /** Left to right, or top to bottom. */
  readonly between: readonly [number, number];
  /** Canvas units. */
  readonly size: number;
  readonly shareOfDiagonal: number;
}
