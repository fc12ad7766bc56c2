import { t } from '../../../grammar/index.js';
import type { TransferGrid } from '../../measure/transfer/grid.js';
import type { KeyPoint, PiecePoints } from '../../measure/transfer/key-points.js';
import { type Ruler, ruled, rulerFor } from '../../measure/transfer/rulers.js';
import type { Canvas } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';

/**
 * `6 × 4 squares of 10 cm`, with the last column and row where they are narrower; by the ruler of the canvas unless
 * said.
 */
export function gridInWords(grid: TransferGrid, canvas: Canvas, ruler: Ruler = rulerFor(canvas)): string {
  const { uprights, levels, square, lastColumn, lastRow } = grid;
  const told = (length: number) => ruled(length * canvas.millimetresPerUnit, ruler);
  const [columns, rows] = [uprights.length - 1, levels.length - 1];
  const [across, down] = [told(square.width), told(square.height)];
  const side = across === down ? across : t('{0} across and {1} down', across, down);
  const last = [
    ...(lastColumn === undefined ? [] : [t('the last column {0} wide', told(lastColumn))]),
    ...(lastRow === undefined ? [] : [t('the last row {0} high', told(lastRow))]),
  ];
  const squares =
    columns * rows === 1 ? t('1 square of {0}', side) : t('{0} × {1} squares of {2}', columns, rows, side);
  return [squares, ...(last.length === 0 ? [] : [inWords(last)])].join(', ');
}

/** How many whole and narrower squares there are: `6 × 4 squares`. */
export function squareCount({ uprights, levels }: Pick<TransferGrid, 'uprights' | 'levels'>): string {
  return t('{0} × {1} squares', uprights.length - 1, levels.length - 1);
}

/** What a shape is: `circle, radius 3.5 cm`; empty where its points say all. */
export function formInWords(
  { form, radius, axes, turn }: Pick<PiecePoints, 'form' | 'radius' | 'axes' | 'turn'>,
  canvas: Canvas,
  ruler: Ruler,
): string {
  const told = (length: number) => ruled(length * canvas.millimetresPerUnit, ruler);
  if (form === 'circle' && radius !== undefined) return `circle, radius ${told(radius)}`;
  if (form !== 'ellipse' || axes === undefined) return form === 'curve' ? 'curve' : '';
  const turned = plainNumber(Math.abs(turn ?? 0), 0);
  const way =
    turned === '0'
      ? ', lying'
      : turned === '90'
        ? ', upright'
        : `, turned ${turned}° ${(turn ?? 0) > 0 ? 'clockwise' : 'anticlockwise'}`;
  return `ellipse, ${told(axes[0])} by ${told(axes[1])}${way}`;
}

/** `corner`, `crosses the top edge`; with what lies over it said. */
export function pointInWords({
  kind,
  edge,
  isCovered,
}: Pick<KeyPoint, 'kind' | 'edge' | 'isCovered'>): string {
  const what = kind === 'crosses the edge' ? `crosses the ${edge ?? ''} edge` : kind;
  return isCovered ? `${what}, covered` : what;
}
