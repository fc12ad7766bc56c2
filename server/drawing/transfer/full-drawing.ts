import { type GridLines, transferGridOf } from '../../measure/transfer/grid.js';
import { mirroredGrid } from '../../measure/transfer/mirrored.js';
import type { Measures } from '../../measure/measures.js';
import type { Matrix } from '../../plan/geometry/matrix.js';
import { transform } from '../../plan/geometry/outline.js';
import type { Plan } from '../../plan/plan.js';
import { planTitle } from '../captions/words.js';
import { pathMark } from '../marks.js';
import { linePath } from '../path-data.js';
import { divisionDash } from '../picture/construction.js';
import type { Mark } from '../scene.js';
import { type DrawnObject, isPartlyCovered } from './line-drawing.js';

/** Inks on white paper: a pencil, a blue one for the grid, and a faint one for what is rubbed out. */
export const inks = { paper: '#ffffff', line: '#1c1a18', grid: '#3f6f94', faint: '#8b867d' } as const;
/** Height of the body text on sheets, millimetres; a line of middle weight is a third of a millimetre. */
export const SHEET_EM = 3;

/** All that is drawn, in millimetres on the canvas. */
export interface FullDrawing {
  readonly title: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly objects: readonly (DrawnObject & { readonly isPartlyCovered: boolean })[];
  readonly grid: GridLines;
  readonly light: readonly Mark[];
  readonly isMirrored: boolean;
  readonly millimetres: number;
}

/** The line drawing of a plan in millimetres, left and right changed over where that is wanted. */
export function fullDrawing(plan: Plan, measures: Measures, isMirrored: boolean): FullDrawing {
  const { canvas } = plan;
  const millimetres = canvas.millimetresPerUnit;
  const matrix: Matrix = isMirrored
    ? { a: -millimetres, b: 0, c: 0, d: millimetres, e: canvas.width * millimetres, f: 0 }
    : { a: millimetres, b: 0, c: 0, d: millimetres, e: 0, f: 0 };
  const grid = isMirrored ? mirroredGrid(transferGridOf(plan), canvas) : transferGridOf(plan);
  const full = (lines: readonly number[]) => lines.map((line) => line * millimetres);
  const size = { width: canvas.width * millimetres, height: canvas.height * millimetres };
  const over = (x: number) => (isMirrored ? size.width - x * millimetres : x * millimetres);
  return {
    title: planTitle(plan),
    size,
    isMirrored,
    millimetres,
    grid: { ...grid, uprights: full(grid.uprights), levels: full(grid.levels) },
    objects: plan.coveringOrder.flatMap((index) => {
      const object = plan.objects[index];
      const measure = measures.objects[index];
      if (object === undefined || measure === undefined || object.outline.path.length === 0) return [];
      return [
        {
          object,
          outline: transform(object.outline, matrix),
          key: `object-${index}`,
          isPartlyCovered: isPartlyCovered(measure),
        },
      ];
    }),
    light: [
      ...plan.divisions.map(({ lines }, index) =>
        pathMark(
          `division-${index}`,
          lines
            .map(({ from, to }) =>
              linePath([
                { x: over(from.x), y: from.y * millimetres },
                { x: over(to.x), y: to.y * millimetres },
              ]),
            )
            .join(''),
          { stroke: { ink: inks.faint, weight: 'hair', dash: divisionDash(index) } },
        ),
      ),
      ...(plan.horizon === undefined
        ? []
        : [
            pathMark(
              'horizon',
              linePath([
                { x: 0, y: plan.horizon.value * millimetres },
                { x: size.width, y: plan.horizon.value * millimetres },
              ]),
              { stroke: { ink: inks.faint, weight: 'fine' } },
            ),
          ]),
    ],
  };
}
