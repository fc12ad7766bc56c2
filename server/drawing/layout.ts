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
/** Body text is this part of the sheet's width: 8.5 px where a sheet is shown 300 px wide. */
const EM_OF_WIDTH = 0.0285;
/** On a sheet for a narrow page: 9 px where it is shown 200 px wide. */
const EM_OF_NARROW_WIDTH = 0.046;
/** On a long, low panorama letters of that size would be as high as the picture. */
const MOST_EM_OF_HEIGHT = 0.12;

/**
 * The mount round a picture and the room for captions. A mount is a little deeper below than above, as framers cut
 * it, because one of equal sides looks as if the picture had slipped. On a narrow sheet letters are larger beside the
 * picture, and captions always stand below it.
 */
export function layOut(width: number, height: number, isNarrow = false): Layout {
  const side = 0.055 * Math.sqrt(width * height) + 0.008 * Math.max(width, height);
  const wall = 0.6 * side;
  const mount: Box = { x: -side, y: -side, width: width + 2 * side, height: height + 2.3 * side };
  if (isNarrow || height <= TALL * width) {
    const sheetWidth = mount.width + 2 * wall;
    const part = isNarrow ? EM_OF_NARROW_WIDTH : EM_OF_WIDTH;
    const em = Math.min(part * sheetWidth, MOST_EM_OF_HEIGHT * height);
    const column = { x: mount.x, y: mount.y + mount.height + 1.2 * em, width: mount.width };
    return { em, mount, captions: 'below', column, wall };
  }
  const gap = 1.3 * wall;
  const columnWidth = Math.max(0.85 * width, 0.42 * height);
  const sheetWidth = mount.width + 2 * wall + gap + columnWidth;
  const em = 0.93 * EM_OF_WIDTH * sheetWidth;
  const column = { x: mount.x + mount.width + gap, y: mount.y, width: columnWidth };
  return { em, mount, captions: 'beside', column, wall };
}

/** Where what goes over the whole width below picture and captions begins, and how wide it is. */
export function footOf({ mount, column, em }: Layout, captionHeight: number): Layout['column'] {
  const right = Math.max(mount.x + mount.width, column.x + column.width);
  const under = Math.max(mount.y + mount.height, column.y + captionHeight);
  return { x: mount.x, y: under + 1.1 * em, width: right - mount.x };
}

/** The whole sheet, down to the lowest thing on it. */
export function sheetOf({ mount, column, wall, em }: Layout, lowest: number): Box {
  const right = Math.max(mount.x + mount.width, column.x + column.width) + wall;
  const bottom = Math.max(mount.y + mount.height, lowest + 0.5 * em) + wall;
  const x = mount.x - wall;
  const y = mount.y - wall;
  return { x, y, width: right - x, height: bottom - y };
}
