import { millimetresPer } from '../../plan/lengths.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { SERIF_WIDTH, wrapped } from '../captions/text-width.js';
import { canvasSize } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import type { Page } from '../page.js';
import { linePath, rectanglePath } from '../path-data.js';
import type { Box, Mark, Scene } from '../scene.js';
import { type FullDrawing, SHEET_EM, inks } from './full-drawing.js';
import { sheetNumbers } from './sheet-map.js';
import type { SheetLayout } from './sheets.js';

const TITLE = 6;
const LEADING = 1.45 * SHEET_EM;
/** Above the map: title and size; below it: the rules and what is to be done. */
const HEAD = 18;
const RULES = 24;
const INCH = millimetresPer('in');

/** The first page: what is printed, how the sheets lie, and rules by which a printer is found out that shrinks them. */
export function coverPage(plan: Plan, drawing: FullDrawing, layout: SheetLayout, scene: Scene): Page {
  const { page, margin, whole } = layout;
  const inset = margin + 4;
  const width = page.width - 2 * inset;
  const told = instructions(drawing, layout).flatMap((text) => wrapped(text, SHEET_EM, width, 3));
  const words = told.length * LEADING;
  const room: Box = {
    x: inset,
    y: inset + HEAD,
    width,
    height: page.height - 2 * inset - HEAD - RULES - words - 4,
  };
  const scale = Math.min(room.width / whole.width, room.height / whole.height);
  const at: Box = { x: room.x, y: room.y, width: whole.width * scale, height: whole.height * scale };
  const below = at.y + at.height + 8;
  return {
    ...page,
    title: `${drawing.title}: full-size pages`,
    description: `${drawing.title}, ${canvasSize(plan.canvas)}, as a line drawing at full size on ${sheetCount(layout)}${drawing.isMirrored ? ', left and right changed over' : ''}.`,
    ...(plan.by === undefined ? {} : { by: plan.by }),
    em: SHEET_EM,
    marks: [
      pathMark('paper', rectanglePath({ x: 0, y: 0, ...page }), { fill: inks.paper }),
      ...wrapped(drawing.title, TITLE, width / SERIF_WIDTH, 1).map((text) =>
        textMark('title', text, inset, inset + TITLE, { size: TITLE, ink: inks.line, face: 'title' }),
      ),
      textMark('about', aboutLine(plan, drawing, layout), inset, inset + TITLE + 6, {
        size: 1.1 * SHEET_EM,
        ink: inks.line,
      }),
      ...rules(inset, below),
      ...told.map((text, index) =>
        textMark(`told:${index}`, text, inset, below + RULES + index * LEADING, {
          size: SHEET_EM,
          ink: inks.line,
        }),
      ),
    ],
    drawings: [{ key: 'map', part: 'picture', at, scene: mapScene(scene, layout, scale) }],
  };
}

/** The whole drawing, small, with the sheets on it. */
function mapScene(scene: Scene, layout: SheetLayout, scale: number): Scene {
  const d = layout.sheets.map(({ window }) => rectanglePath(window)).join('');
  return {
    ...scene,
    em: (0.8 * SHEET_EM) / scale,
    layers: [
      ...scene.layers.filter(({ name }) => name !== 'names'),
      {
        name: 'names',
        marks: [
          pathMark('sheets', d, { stroke: { ink: inks.grid, weight: 'medium' } }),
          ...sheetNumbers(layout, Math.min(6 / scale, 0.3 * (layout.sheets[0]?.window.height ?? 1))),
        ],
      },
    ],
  };
}

function aboutLine(plan: Plan, { isMirrored }: FullDrawing, layout: SheetLayout): string {
  const over = isMirrored ? ', left and right changed over' : '';
  return `${canvasSize(plan.canvas)} at full size, on ${sheetCount(layout)}${over}`;
}

function sheetCount({ sheets, paper, columns, rows }: SheetLayout): string {
  if (sheets.length === 1) return `one sheet of ${paper}`;
  return `${sheets.length} sheets of ${paper} in ${rows === 1 ? 'one row' : `${rows} rows`} of ${columns}`;
}

function instructions({ isMirrored }: FullDrawing, { sheets, overlap }: SheetLayout): readonly string[] {
  return [
    'Measure both rules before you use the sheets. Print at 100 %, without “fit to page”; where a rule comes out short or long, the printer has changed the size.',
    ...(sheets.length === 1
      ? []
      : [
          `Each sheet shows ${plainNumber(overlap, 1)} mm of its neighbours. Cut a sheet along the edge of its drawing at the left and at the top where it has a neighbour there, lay the cut edge on the broken line of that neighbour, mark on mark, and paste.`,
        ]),
    isMirrored
      ? 'Left and right are changed over: it is seen from the back, for tracing paper laid face down, for a monotype or a plate. Squares keep their names.'
      : 'The thin blue lines are the transfer grid, the broken grey ones the division; dotted lines are covered by what is in front.',
  ];
}

/** A rule of 100 mm and one of 4 inches, with marks at centimetres and at quarters of an inch. */
function rules(x: number, y: number): readonly Mark[] {
  const marks = (length: number, step: number, top: number) =>
    Array.from({ length: Math.round(length / step) + 1 }, (_, index) =>
      linePath([
        { x: x + index * step, y: top },
        { x: x + index * step, y: top + (index * step === 0 || index * step === length ? 5 : 3) },
      ]),
    ).join('');
  const rule = (key: string, text: string, length: number, step: number, top: number): readonly Mark[] => [
    pathMark(
      `rule:${key}`,
      `${linePath([
        { x, y: top },
        { x: x + length, y: top },
      ])}${marks(length, step, top)}`,
      { stroke: { ink: inks.line, weight: 'fine' } },
    ),
    textMark(`rule:${key}:told`, text, x + length + 3, top + 3, { size: SHEET_EM, ink: inks.line }),
  ];
  return [
    ...rule('metric', 'This rule is 100 mm long.', 100, 10, y),
    ...rule('inches', 'This rule is 4 inches long.', 4 * INCH, INCH / 4, y + 9),
  ];
}
