import type { Box, LayerName, Scene } from './scene.js';

/**
 * How much of a scene is drawn. `sheet`: everything. `picture`: the picture with what is drawn on it, without mount and
 * captions. `plain`: the flat shapes alone, cut to the picture, without lines and text.
 */
export type Part = 'sheet' | 'picture' | 'plain';

/** The layers that end at the edge of the picture. */
export const CLIPPED: ReadonlySet<LayerName> = new Set(['picture', 'construction']);
const ON_PICTURE: ReadonlySet<LayerName> = new Set(['picture', 'construction', 'names', 'findings']);

/** The part of the plane that a drawing shows, canvas units. */
export function shownBox(scene: Scene, part: Part = 'sheet'): Box {
  return part === 'sheet' ? scene.sheet : scene.picture;
}

export function isShown(name: LayerName, part: Part = 'sheet'): boolean {
  switch (part) {
    case 'sheet':
      return true;
    case 'picture':
      return ON_PICTURE.has(name);
    case 'plain':
      return name === 'picture';
  }
}
