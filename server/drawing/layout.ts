import type { Box } from './scene.js';

/** Where things stand on the sheet. Canvas units. */
export interface Layout {
  readonly em: number;
  readonly mount: Box;
  /** Captions stand below the picture, or beside one that is much taller than wide. */
  readonly captions: 'below' | 'beside';
  /** Upper left corner of the captions, and their width. */
  readonly column: { readonly x: number; readonly y: number; readonly width: number };
  /** Between the mount and the edge of the sheet. */
  readonly wall: number;
}

/** Taller than this, a picture leaves more room beside it than below. */
const TALL = 1.45;
/** Body text is this part of the sheet's width: 9 px where a sheet is shown 300 px wide. */
const EM_OF_WIDTH = 0.03;
/** On a long, low panorama letters of that size would be as high as the picture. */
const MOST_EM_OF_HEIGHT = 0.1;

/**
 * The mount round a picture and the room for captions. A mount is a little deeper below than above, as framers cut
 * it, because one of equal sides looks as if the picture had slipped.
 */
export function layOut(width: number, height: number): Layout {
  const side = 0.055 * Math.sqrt(width * height) + 0.008 * Math.max(width, height);
  const wall = 0.6 * side;
  const mount: Box = { x: -side, y: -side, width: width + 2 * side, height: height + 2.3 * side };
  if (height <= TALL * width) {
    const sheetWidth = mount.width + 2 * wall;
    const em = Math.min(EM_OF_WIDTH * sheetWidth, MOST_EM_OF_HEIGHT * height);
    const column = { x: mount.x, y: mount.y + mount.height + 1.2 * em, width: mount.width };
    return { em, mount, captions: 'below', column, wall };
  }
  const columnWidth = Math.max(0.85 * width, 0.42 * height);
  const sheetWidth = mount.width + 2.8 * wall + columnWidth;
  const em = EM_OF_WIDTH * sheetWidth;
  const column = { x: mount.x + mount.width + 0.8 * wall, y: mount.y, width: columnWidth };
  return { em, mount, captions: 'beside', column, wall };
}

/** The whole sheet, once the height of the captions is known. */
export function sheetOf({ mount, captions, column, wall, em }: Layout, captionHeight: number): Box {
  const right = Math.max(mount.x + mount.width, column.x + column.width) + wall;
  const under = captions === 'below' ? column.y + captionHeight + 0.6 * em : column.y + captionHeight;
  const bottom = Math.max(mount.y + mount.height, under) + wall;
  const x = mount.x - wall;
  const y = mount.y - wall;
  return { x, y, width: right - x, height: bottom - y };
}
