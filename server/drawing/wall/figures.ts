import type { Hex } from '../scene.js';

/** Shares of one kind beside each other, in which plans on the wall are held against each other. */
export interface Strip {
  readonly of: 'value' | 'colour';
  readonly parts: readonly StripPart[];
  /** The figures: `dark 24 %, middle 31 %, light 45 %`. */
  readonly words: string;
}

/** Shares are parts of the picture. */
export interface StripPart {
  readonly name: string;
  readonly share: number;
  /** The tone that most of it is in. */
  readonly hex: Hex;
  readonly target?: number;
  /** False for a share that is out of its budget. */
  readonly within?: boolean;
}

/** How much of each gravity is found in a plan; what is set aside is not counted. */
export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly hints: number;
}
