import { type Side, t } from '../../../grammar/index.js';

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

/** Where a border ends on the edge of the canvas: `the left edge`. */
export function edgeWords(side: Side): string {
  switch (side) {
    case 'left':
      return t('the left edge');
    case 'right':
      return t('the right edge');
    case 'top':
      return t('the top edge');
    case 'bottom':
      return t('the bottom edge');
  }
}
