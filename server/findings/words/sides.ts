import { marked, said, type Side, t } from '../../../grammar/index.js';

export type Corner = 'upper left' | 'upper right' | 'lower right' | 'lower left';

/** A corner of the canvas, said between an article and its noun: `the upper left corner`. */
export function cornerWords(corner: Corner): string {
  switch (corner) {
    case 'upper left':
      return t('upper left');
    case 'upper right':
      return t('upper right');
    case 'lower right':
      return t('lower right');
    case 'lower left':
      return t('lower left');
  }
}

const AT_CORNERS = {
  'upper left': marked('at the upper left corner'),
  'upper right': marked('at the upper right corner'),
  'lower right': marked('at the lower right corner'),
  'lower left': marked('at the lower left corner'),
} as const satisfies Readonly<Record<Corner, string>>;

export function atCorner(corner: Corner): string {
  return said(AT_CORNERS[corner]);
}

const AT_EDGES = {
  left: marked('at the left edge'),
  right: marked('at the right edge'),
  top: marked('at the top edge'),
  bottom: marked('at the bottom edge'),
} as const satisfies Readonly<Record<Side, string>>;

export function atEdge(side: Side): string {
  return said(AT_EDGES[side]);
}
