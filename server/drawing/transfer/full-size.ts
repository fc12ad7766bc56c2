import { marked, type Reason, reasonOf } from '../../../grammar/index.js';
import { type GridLines, columnNames } from '../../measure/transfer/grid.js';
import type { Measures } from '../../measure/measures.js';
import type { Outline } from '../../plan/geometry/outline.js';
import { pointsOf, subpathsOf } from '../../plan/geometry/path.js';
import { type Point, boxOfPoints, boxesOverlap } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { pathMark, textMark } from '../marks.js';
import type { Page } from '../page.js';
import { rectanglePath } from '../path-data.js';
import type { Box, Mark, Scene } from '../scene.js';
import { coverPage } from './cover.js';
import { type FullDrawing, SHEET_EM, fullDrawing, inks } from './full-drawing.js';
import { gridLines } from './grid-marks.js';
import { coveredLines, visibleLines } from './line-drawing.js';
import { sheetFoot } from './sheet-foot.js';
import { edgeMarks, fittingMarks, fittingPlaces } from './sheet-marks.js';
import {
  MOST_SHEETS,
  type Sheet,
  type SheetLayout,
  type SheetOptions,
  countSheets,
  sheetsOf,
} from './sheets.js';

export interface FullSizeOptions extends SheetOptions {
  /** Left and right changed over, to be carried over from the back. */
  readonly isMirrored?: boolean | undefined;
}

export type FullSize =
  | { readonly ok: true; readonly pages: readonly Page[]; readonly layout: SheetLayout }
  /** A sentence to the painter. */
  | { readonly ok: false; readonly reason: Reason };

/** Squares smaller than this have no room for their names, millimetres. */
const LEAST_NAMED_SQUARE = 12;

/**
 * The line drawing at the size of the canvas, cut up into sheets that any printer takes: a first page with the map of
 * all and a rule to measure, then each sheet with its part of the drawing 1 : 1, what its neighbours show too, and
 * marks by which the sheets are laid over each other. A pure function, as `compose`.
 */
export function fullSizePages(plan: Plan, measures: Measures, options: FullSizeOptions): FullSize {
  const drawing = fullDrawing(plan, measures, options.isMirrored ?? false);
  const layout = sheetsOf(drawing.size, options);
  if (layout === undefined) return { ok: false, reason: tooMany(drawing, options) };
  const places = fittingPlaces(layout);
  return {
    ok: true,
    layout,
    pages: [
      coverPage(plan, drawing, layout, sceneOf(drawing, layout.whole, 'cover', [])),
      ...layout.sheets.map((sheet) => sheetPage(plan, drawing, layout, sheet, places)),
    ],
  };
}

function tooMany({ size }: FullDrawing, options: FullSizeOptions): Reason {
  const count = countSheets(size, options);
  if (!Number.isFinite(count))
    return reasonOf(marked('Overlap and margins leave no room for the drawing on this paper.'));
  return reasonOf(
    options.paper === 'A3'
      ? marked(
          'The drawing at full size takes {0} sheets of {1}, and at most {2} are made: have the view transfer printed at its true size.',
        )
      : marked(
          'The drawing at full size takes {0} sheets of {1}, and at most {2} are made: take larger paper, such as A3, or have the view transfer printed at its true size.',
        ),
    count,
    options.paper,
    MOST_SHEETS,
  );
}

function sheetPage(
  plan: Plan,
  drawing: FullDrawing,
  layout: SheetLayout,
  sheet: Sheet,
  places: readonly Point[],
): Page {
  const { page, margin } = layout;
  const { window } = sheet;
  const scene = sceneOf(drawing, window, `sheet-${sheet.number}`, [
    ...edgeMarks(sheet, layout, inks.faint),
    ...fittingMarks(places, layout.overlap, sheet, inks.line),
  ]);
  const at: Box = { x: margin, y: margin, width: window.width, height: window.height };
  return {
    ...page,
    title: `${drawing.title}: full-size pages`,
    description: 'A part of the drawing at full size.',
    ...(plan.by === undefined ? {} : { by: plan.by }),
    em: SHEET_EM,
    marks: [
      pathMark('paper', rectanglePath({ x: 0, y: 0, ...page }), { fill: inks.paper }),
      pathMark('window', rectanglePath(at), { stroke: { ink: inks.faint, weight: 'hair' } }),
      ...sheetFoot(plan, drawing, layout, sheet),
    ],
    drawings: [{ key: `sheet-${sheet.number}`, scene, part: 'picture', at }],
  };
}

/** What is drawn within a window, as a scene in millimetres. */
function sceneOf(drawing: FullDrawing, window: Box, key: string, more: readonly Mark[]): Scene {
  const { objects, grid, size, light, title } = drawing;
  const pencil = { paper: inks.paper, line: inks.line };
  const within = objects.flatMap((each) => {
    const outline = nearWindow(each.outline, window);
    return outline === undefined ? [] : [{ ...each, outline }];
  });
  const canvas = { x: 0, y: 0, ...size };
  return {
    view: 'transfer',
    sheet: window,
    picture: window,
    em: SHEET_EM,
    title,
    description: key,
    layers: [
      {
        name: 'picture',
        marks: [
          ...visibleLines(within, pencil),
          ...coveredLines(
            within.filter(({ isPartlyCovered }) => isPartlyCovered),
            pencil,
          ),
          ...outside(canvas, window),
        ],
      },
      {
        name: 'construction',
        marks: [
          ...light,
          ...gridLines(grid, size, { ink: inks.grid }),
          pathMark('edge', rectanglePath(canvas), { stroke: { ink: inks.line, weight: 'medium' } }),
        ],
      },
      { name: 'names', marks: [...squareNames(grid, window), ...more] },
    ],
    subjects: {},
    budgets: [],
    legend: [],
  };
}

/** Paper over what lies off the canvas, which is not painted. */
function outside(canvas: Box, window: Box): readonly Mark[] {
  const grown = { x: window.x - 1, y: window.y - 1, width: window.width + 2, height: window.height + 2 };
  return [
    pathMark('off-canvas', `${rectanglePath(grown)}${rectanglePath(canvas)}`, {
      fill: inks.paper,
      fillRule: 'evenodd',
    }),
  ];
}

/** Without the closed shapes that are nowhere near a window: what is left looks the same there. */
function nearWindow(outline: Outline, window: Box): Outline | undefined {
  const near = 2 * SHEET_EM;
  const room = {
    left: window.x - near,
    top: window.y - near,
    right: window.x + window.width + near,
    bottom: window.y + window.height + near,
  };
  const path = subpathsOf(outline.path).filter((commands) =>
    boxesOverlap(boxOfPoints(pointsOf(commands)), room),
  );
  return path.length === 0 ? undefined : { ...outline, path: path.flat() };
}

/** In the upper left corner of each square, where squares have room for it. */
function squareNames(grid: GridLines, window: Box): readonly Mark[] {
  const { uprights, levels } = grid;
  const names = columnNames(grid);
  const size = 0.85 * SHEET_EM;
  return names.flatMap((name, column) => {
    const left = uprights[column] ?? 0;
    const width = (uprights[column + 1] ?? 0) - left;
    if (width < LEAST_NAMED_SQUARE || left + width < window.x || left > window.x + window.width) return [];
    return levels.slice(0, -1).flatMap((top, row): readonly Mark[] => {
      const height = (levels[row + 1] ?? 0) - top;
      if (height < LEAST_NAMED_SQUARE || top + height < window.y || top > window.y + window.height) return [];
      return [
        textMark(`square-${name}${row + 1}`, `${name}${row + 1}`, left + 0.4 * size, top + 1.1 * size, {
          size,
          ink: inks.grid,
        }),
      ];
    });
  });
}
