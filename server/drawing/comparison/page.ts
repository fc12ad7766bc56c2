import type { Change } from '../../findings/comparison/change.js';
import type { Comparison } from '../../findings/comparison/compare.js';
import { capitalised, inWords } from '../../plan/problems.js';
import { type Block, EMPTY_BLOCK, inColumns, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { lines } from '../captions/title.js';
import { andMore, canvasSize, inQuotes, planTitle } from '../captions/words.js';
import { SERIF_WIDTH, fitted } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import type { Page, PlacedDrawing } from '../page.js';
import { paperSizes } from '../paper.js';
import { rectanglePath } from '../path-data.js';
import type { Box, Mark, ComparedView } from '../scene.js';
import { fittedList, type List } from '../plan-sheet/fitting.js';
import { usualPaper } from '../plan-sheet/sheet.js';
import { comparedScenes } from './scenes.js';

/** Millimetres on the page, which is A4 across, or Letter for canvases in inches. */
const EM = 2.75;
const MARGIN = 14;
const GAP = 10;
/** The part of the height that the pictures have at most. */
const MOST_PICTURE = 0.56;

/** What each picture is called, such as the name of its file or a revision. */
export interface ComparedNames {
  readonly earlier: string;
  readonly later: string;
}

/**
 * Two plans side by side on one page, the earlier at the left, both to one scale, with what moved marked and the
 * changes listed below. What there is no room for is counted. A pure function.
 */
export function comparisonPage(
  comparison: Comparison,
  names: ComparedNames,
  noChange: string,
  view: ComparedView = 'drawing',
): Page {
  const { earlier, later, changes, remark } = comparison;
  const paper = paperSizes[usualPaper(later.plan)];
  const page = { width: paper.height, height: paper.width };
  const width = (page.width - 2 * MARGIN - GAP) / 2;
  const title = planTitle(later.plan);
  const heading = lines(
    'title',
    title,
    1,
    { size: 2 * EM, leading: 2.5 * EM, width: (page.width - 2 * MARGIN) / SERIF_WIDTH },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'title' }),
  );
  const top = MARGIN + heading.height + 0.6 * EM;
  const pictureTop = top + 3 * EM;
  const boxes = pictureBoxes(comparison, {
    x: MARGIN,
    y: pictureTop,
    width,
    height: MOST_PICTURE * page.height,
  });
  const scenes = comparedScenes(comparison, view, {
    earlier: (EM * earlier.plan.canvas.width) / boxes.earlier.width,
    later: (EM * later.plan.canvas.width) / boxes.later.width,
  });
  const listTop = pictureTop + Math.max(boxes.earlier.height, boxes.later.height) + 1.6 * EM;
  const legend = legendBlock(comparison);
  const listed = changeList(changes, remark, noChange, {
    width: page.width - 2 * MARGIN,
    height: page.height - MARGIN - listTop - legend.height,
  });
  const placed = (key: keyof ComparedNames): PlacedDrawing => ({
    key,
    scene: scenes[key],
    part: 'picture',
    at: boxes[key],
  });
  return {
    ...page,
    title: `${title}: compared`,
    description: inWords([`${names.earlier} at the left`, `${names.later} at the right`]).concat(
      '. ',
      changes.length === 0 ? noChange : changes.map(({ message }) => inQuotes(message)).join(' '),
    ),
    ...(later.plan.by === undefined ? {} : { by: later.plan.by }),
    em: EM,
    marks: [
      pathMark('paper', rectanglePath({ x: 0, y: 0, ...page }), { fill: 'mount' }),
      ...heading.marks(MARGIN, MARGIN),
      ...nameMarks('earlier', names.earlier, canvasSize(earlier.plan.canvas), { x: MARGIN, y: top, width }),
      ...nameMarks('later', names.later, canvasSize(later.plan.canvas), {
        x: MARGIN + width + GAP,
        y: top,
        width,
      }),
      ...(['earlier', 'later'] as const).map((key) =>
        pathMark(`${key}:edge`, rectanglePath(boxes[key]), { stroke: { ink: 'bevel', weight: 'fine' } }),
      ),
      ...legend.marks(MARGIN + width + GAP, listTop - 0.9 * EM),
      ...listed.marks(MARGIN, listTop + legend.height),
    ],
    drawings: [placed('earlier'), placed('later')],
  };
}

/** Both to one scale, as large as the room allows. */
function pictureBoxes(
  { earlier, later }: Comparison,
  room: Box,
): { readonly earlier: Box; readonly later: Box } {
  const canvases = [earlier.plan.canvas, later.plan.canvas];
  const scale = Math.min(
    ...canvases.flatMap(({ width, height, millimetresPerUnit }) => [
      room.width / (width * millimetresPerUnit),
      room.height / (height * millimetresPerUnit),
    ]),
  );
  const boxOf = ({ plan: { canvas } }: Comparison['earlier'], x: number): Box => ({
    x,
    y: room.y,
    width: canvas.width * canvas.millimetresPerUnit * scale,
    height: canvas.height * canvas.millimetresPerUnit * scale,
  });
  return { earlier: boxOf(earlier, room.x), later: boxOf(later, room.x + room.width + GAP) };
}

function nameMarks(
  key: string,
  name: string,
  size: string,
  { x, y, width }: Pick<Box, 'x' | 'y' | 'width'>,
): readonly Mark[] {
  return headingMarks(`name:${key}`, fitted(name, 0.95 * EM, 0.75 * width), size, { x, y, width, em: EM });
}

/** What the lines over the pictures are, where there are any. */
function legendBlock({ objects, changes }: Comparison): Block {
  const isMoved = changes.some(({ kind, topic }) =>
    topic === 'objects'
      ? kind === 'moved' || kind === 'turned' || kind === 'sized' || kind === 'reshaped'
      : topic === 'centre of interest' && kind === 'moved',
  );
  const told = [
    ...(objects.gone.length === 0 ? [] : ['dashed at the left: gone']),
    ...(isMoved ? ['dashed at the right: where it was'] : []),
    ...(objects.come.length === 0 ? [] : ['drawn round at the right: new']),
  ];
  if (told.length === 0) return EMPTY_BLOCK;
  return {
    height: 0.9 * EM,
    marks: (x, y) => [
      textMark('legend', capitalised(told.join('; ')), x, y + 0.8 * EM, { size: 0.82 * EM, ink: 'quiet' }),
    ],
  };
}

function changeList(
  changes: readonly Change[],
  remark: string | undefined,
  noChange: string,
  { width, height }: Pick<Box, 'width' | 'height'>,
): Block {
  const column = (width - GAP) / 2;
  const entry = (key: string, text: string): Block =>
    lines(
      key,
      inQuotes(text),
      4,
      { size: 0.95 * EM, leading: 1.3 * EM, width: column },
      (name, line, x, y, size) => textMark(name, line, x, y, { size, ink: 'ink' }),
    );
  const entries =
    changes.length === 0
      ? [entry('same', noChange)]
      : changes.map(({ message }, index) => entry(`change:${index}`, message));
  const list = (some: readonly Block[], key: string): List => ({
    key,
    heading: 'What changed',
    remark: '',
    entries: some,
    more: (count) => andMore(count, 'change', 'changes'),
  });
  const remarks = remark === undefined ? EMPTY_BLOCK : entry('remark', remark);
  const room = height - remarks.height;
  const whole = fittedList(list(entries, 'changes'), column, room, EM);
  const fitting = fittingCount(entries, room);
  if (fitting >= entries.length) return stacked([remarks, whole], 0.5 * EM);
  // The rest of a long list goes on in a second column, beside the words of its first.
  const first = stacked(
    [
      {
        height: 1.35 * EM,
        marks: (x, y) => headingMarks('changes', 'What changed', '', { x, y, width: column, em: EM }),
      },
      ...entries.slice(0, fitting),
    ],
    0.35 * EM,
  );
  const second = fittedList({ ...list(entries.slice(fitting), 'more'), heading: '' }, column, room, EM);
  return stacked([remarks, inColumns([first, second], column, GAP)], 0.5 * EM);
}

/** How many entries a column holds under its heading. */
function fittingCount(entries: readonly Block[], height: number): number {
  let used = 1.35 * EM;
  let count = 0;
  for (const entry of entries) {
    used += entry.height + 0.35 * EM;
    if (used > height) break;
    count += 1;
  }
  return count;
}
