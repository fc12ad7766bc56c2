import { transferGridOf } from '../../measure/transfer/grid.js';
import type { Hex, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { gridLines, gridNames } from './grid-marks.js';
import { gridInWords } from './words.js';

/** The lines of the grid that a plan states, to lie over its drawing; none where it states none. */
export function statedGridLines({ plan, picture }: Reading, ink: Hex): readonly Mark[] {
  if (plan.transferGrid === undefined) return [];
  const grid = transferGridOf(plan);
  const tip = `Transfer grid: ${gridInWords(grid, plan.canvas)}.`;
  return gridLines(grid, picture, { ink, subject: 'grid', tip });
}

/** The letters and numbers of its squares, beside the picture. */
export function statedGridNames({ plan, layout }: Reading): readonly Mark[] {
  if (plan.transferGrid === undefined) return [];
  return gridNames(transferGridOf(plan), layout.em, { ink: 'quiet', subject: 'grid' });
}
