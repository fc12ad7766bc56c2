import type { Part } from './parts.js';
import type { Box, Mark, Scene } from './scene.js';

/** Something to be printed: plain data, as a scene is. All places and lengths are in millimetres on the paper. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** One line, for the window and the properties of a document. */
  readonly title: string;
  /** What is on it, in sentences. */
  readonly description: string;
  readonly by?: string;
  /** Height of the body text; stroke weights are parts of it. */
  readonly em: number;
  /** What stands on the paper itself, back to front; the drawings lie over it. */
  readonly marks: readonly Mark[];
  readonly drawings: readonly PlacedDrawing[];
}

/** A scene on the page: the part of it that is shown fills `at`, in whose proportion it is. */
export interface PlacedDrawing {
  /** Unique on the page. */
  readonly key: string;
  readonly scene: Scene;
  readonly part: Exclude<Part, 'plain'>;
  readonly at: Box;
}
