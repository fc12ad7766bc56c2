import type { Finding } from '../findings/finding.js';
import type { Point } from '../plan/geometry/point.js';
import { type Block, stacked } from './captions/block.js';
import type { LegendLine } from './captions/legend.js';
import { lines, titleBlock } from './captions/title.js';
import { viewCaption } from './captions/words.js';
import { pathMark, textMark } from './marks.js';
import { rectanglePath } from './path-data.js';
import { grown } from './picture/boxes.js';
import { hexOf } from './picture/ink.js';
import { mountMarks } from './picture/mount.js';
import { capitalised } from '../plan/problems.js';
import type { BoardView, Box, Mark } from './scene.js';
import type { Reading } from './views/reading.js';

/** What a view lays out that is not the picture at the size of its canvas. */
export interface Board {
  readonly mount: readonly Mark[];
  /** What is clipped, and taken for the picture where only that is shown. */
  readonly picture: Box;
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly names: readonly Mark[];
  /** What marks of findings keep clear of. */
  readonly taken: readonly Box[];
  /** What is written on the board beside the picture. */
  readonly written: readonly Mark[];
  /** What stands outside the board, with the title at its head, and its upper left corner. */
  readonly below: Block;
  readonly belowAt: Point;
  readonly legend: readonly LegendLine[];
  /** What it shows, in sentences without their full stops. */
  readonly described: readonly string[];
  /** Where the mark of a finding belongs. */
  readonly placeOf: (finding: Finding) => Point | undefined;
  /** What marks of findings stay within. */
  readonly marked: Box;
  /** The card on the wall. */
  readonly card: Box;
}

/** Where a board lies on the sheet, and what is laid on it. Canvas units. */
export interface BoardPlace {
  readonly em: number;
  /** Of the board. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** The part of it that is laid on. */
  readonly inner: { readonly x: number; readonly y: number; readonly width: number };
  /** Between its edge and what is laid on it. */
  readonly air: number;
}

const AIR_EMS = 1.1;
/** What is wider is hard to take in. */
const WIDEST_EMS = 64;

/** A board is as wide as mount and captions of the other views, so that its letters are as large. */
export function boardPlace({ layout: { em, mount, column } }: Reading): BoardPlace {
  const right = Math.max(mount.x + mount.width, column.x + column.width);
  const width = Math.min(right - mount.x, WIDEST_EMS * em);
  const air = AIR_EMS * em;
  const { x, y } = mount;
  return { em, x, y, width, air, inner: { x: x + air, y: y + air, width: width - 2 * air } };
}

/** The card that everything lies on, down to where the last of it ends. */
export function cardOf({ x, y, width, air }: BoardPlace, lowest: number): Box {
  return { x, y, width, height: lowest + air - y };
}

export function cardMark(card: Box): Mark {
  return pathMark('mount', rectanglePath(card), { fill: 'mount', stroke: { ink: 'rule', weight: 'hair' } });
}

/** The title and what follows it below a board. */
export function belowBoard(
  { plan }: Reading,
  view: BoardView,
  { em, width }: BoardPlace,
  blocks: readonly Block[],
): Block {
  const title = titleBlock(plan, capitalised(viewCaption(view, plan)), width, em);
  return stacked([title, ...blocks], 1.1 * em);
}

/** The bare ground in its mount, and how to begin, where a plan has nothing for the view. */
export function bareBoard(reading: Reading, view: BoardView, howToBegin: string): Board {
  const { plan, layout, picture, subjects } = reading;
  const { em, mount, column } = layout;
  const hint = lines(
    `${view}:begin`,
    howToBegin,
    6,
    { size: em, leading: 1.4 * em, width: column.width },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
  );
  const title = titleBlock(plan, capitalised(viewCaption(view, plan)), column.width, em);
  return {
    mount: mountMarks(layout, picture),
    picture,
    shapes: [
      pathMark('ground', rectanglePath(picture), {
        fill: hexOf(plan.canvas.ground.colour),
        subject: subjects.all['ground'] === undefined ? undefined : 'ground',
      }),
    ],
    construction: [],
    names: [],
    taken: [],
    written: [],
    below: stacked([title, hint], 0.8 * em),
    belowAt: column,
    legend: [],
    described: [howToBegin],
    placeOf: () => undefined,
    marked: grown(picture, -em),
    card: mount,
  };
}
