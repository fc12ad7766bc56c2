import type { Finding } from '../../findings/finding.js';
import { type Block, stacked } from '../captions/block.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { figuresBlock, findingsBlocks, signsBlock } from './blocks.js';
import { coloursList } from './colours.js';
import { fittedList } from './fitting.js';
import { feelingBlock, headBlock } from './head.js';
import { workRow } from './work.js';
import { type Picture, fittedBox, headedBy, headedPicture, pictureIn } from './pictures.js';

/** What stands on a sheet. */
export interface Arranged {
  readonly marks: readonly Mark[];
  readonly pictures: readonly Picture[];
}

/** Room between columns and between rows, in ems. */
const COLUMN_GAP = 2.9;
const ROW_GAP = 2.2;
const ANY_HEIGHT = Number.POSITIVE_INFINITY;
/** The part of the page's height that paints, sittings and cautions have at most. */
const MOST_WORK = 0.2;
/** The least of it that the drawing is to have beside them, and what it is left with where cautions take more. */
const LEAST_DRAWING = 0.26;
const SMALLEST_DRAWING = 0.16;
const MOST_WORK_ACROSS = 0.32;

/**
 * Upright, for a picture that is wider than high: title and feeling above, the drawing over the whole width, below it
 * three columns. The drawing has the first claim to the height; what does not fit below it is counted.
 */
export function arrangeUpright(reading: Reading, findings: readonly Finding[], content: Box): Arranged {
  const { plan, layout } = reading;
  const { em } = layout;
  const gap = COLUMN_GAP * em;
  const row = ROW_GAP * em;
  const width = (content.width - 2 * gap) / 3;
  const column = (index: number) => content.x + index * (width + gap);

  const head = headBlock(reading, 2 * width + gap);
  const feeling = feelingBlock(reading, width);
  const headHeight = Math.max(head.height, feeling.height);
  const signs = signsBlock(reading, width);
  const { standing, aside } = findingsBlocks(findings, reading, width);
  const colours = coloursList(reading, width);
  const bars = figuresBlock(reading, width, 0).height;
  const middleNatural = Math.max(
    bars,
    Math.min(fittedList(colours, width, ANY_HEIGHT, em).height, 0.34 * content.height),
  );
  const lowNatural = Math.max(signs.height, standing(ANY_HEIGHT).height, aside(ANY_HEIGHT).height);
  const lowLeast = Math.min(lowNatural, 0.1 * content.height);
  const free = content.height - headHeight - 3 * row;
  // What is done at the easel stands at the foot of the page; cautions are never cut.
  const work = workRow(reading, () => content.width, gap);
  const besideDrawing = free - row - bars - lowLeast - LEAST_DRAWING * content.height;
  const workBlock = work.within(
    Math.min(work.natural, Math.max(work.least, Math.min(MOST_WORK * content.height, besideDrawing))),
  );
  const taken = workBlock.height > 0 ? workBlock.height + row : 0;
  const left = free - taken;
  const wanted = fittedBox(plan, {
    ...content,
    height:
      taken > 0
        ? Math.max(SMALLEST_DRAWING * content.height, Math.min(0.46 * content.height, left - bars - lowLeast))
        : 0.46 * content.height,
  });
  const rest = left - wanted.height;
  const lowHeight = Math.min(lowNatural, Math.max(0.1 * content.height, rest - middleNatural));
  const middleHeight = rest - lowHeight;

  const drawn: Box = {
    ...wanted,
    x: content.x + (content.width - wanted.width) / 2,
    y: content.y + headHeight + row,
  };
  const middleTop = drawn.y + drawn.height + row;
  const source = { plan, measures: reading.measures, em };
  const smallHeight = (middleHeight - 0.9 * em) / 2;
  const small = { x: column(0), y: middleTop, width, height: smallHeight };
  const notan = headedPicture('notan', small, source);
  const { at } = notan.drawing;
  const values = headedPicture('values', { ...small, y: at.y + at.height + 0.9 * em }, source);
  const figures = figuresBlock(reading, width, middleHeight);
  const palette = fittedList(colours, width, middleHeight, em);
  const middleBottom = Math.max(
    values.drawing.at.y + values.drawing.at.height,
    middleTop + figures.height,
    middleTop + palette.height,
  );
  const lowTop = Math.min(middleBottom + row, content.y + content.height - taken - lowHeight);
  const workTop = content.y + content.height - workBlock.height;
  return {
    marks: [
      ...head.marks(column(0), content.y),
      ...feeling.marks(column(2), content.y + 0.75 * em),
      ...figures.marks(column(1), middleTop),
      ...palette.marks(column(2), middleTop),
      ...signs.marks(column(0), lowTop),
      ...standing(lowHeight).marks(column(1), lowTop),
      ...aside(lowHeight).marks(column(2), lowTop),
      ...workBlock.marks(content.x, workTop),
    ],
    pictures: [pictureIn('drawing', drawn, source), notan, values],
  };
}

/** Across, for a picture that is as high as wide or higher: the drawing at the left, two columns at the right. */
export function arrangeAcross(reading: Reading, findings: readonly Finding[], content: Box): Arranged {
  const { plan, layout } = reading;
  const { em } = layout;
  const gap = COLUMN_GAP * em;
  const row = 0.8 * ROW_GAP * em;
  const source = { plan, measures: reading.measures, em };
  const leftWidth = 0.54 * content.width;
  const widthOfWork = (count: number) => (count === 1 ? 0.4 : 0.54) * content.width;
  const work = workRow(reading, widthOfWork, gap);
  const workBlock = work.within(
    Math.min(work.natural, Math.max(MOST_WORK_ACROSS * content.height, work.least)),
  );
  const taken = workBlock.height > 0 ? workBlock.height + row : 0;
  const drawn = fittedBox(plan, { ...content, width: leftWidth, height: content.height - taken });
  const left = content.x + Math.max(drawn.width, taken > 0 ? widthOfWork(work.count) : 0) + 1.2 * gap;
  const room = content.x + content.width - left;
  const width = (room - gap) / 2;
  const right = left + width + gap;

  const head = stacked([headBlock(reading, room), feelingBlock(reading, room)], 0.8 * em);
  const top = content.y + head.height + row;
  const height = content.y + content.height - top;

  const pairGap = 0.5 * gap;
  const small = { x: left, y: top, width: (width - pairGap) / 2, height: 0.4 * height + headedBy(em) };
  const notan = headedPicture('notan', small, source);
  const values = headedPicture('values', { ...small, x: left + small.width + pairGap }, source);
  const figuresTop = notan.drawing.at.y + notan.drawing.at.height + row;
  const figures = figuresBlock(reading, width, content.y + content.height - figuresTop);

  const signs = signsBlock(reading, width);
  const { standing, aside } = findingsBlocks(findings, reading, width);
  // Below a drawing that is not as high as the page there is room for what its lines mean.
  const below = content.height - drawn.height - row - taken;
  const isBelow = signs.height <= below;
  const inColumn = isBelow ? height : height - signs.height - row;
  const asideNatural = aside(ANY_HEIGHT).height;
  const spare = inColumn - standing(ANY_HEIGHT).height - asideNatural - 2 * row;
  const colours = fittedList(coloursList(reading, width), width, Math.max(0.45 * inColumn, spare), em);
  const found = inColumn - colours.height - row;
  const told = standing(asideNatural === 0 ? found : Math.max(0.5 * found, found - asideNatural - row));
  const kept = aside(found - told.height - row);
  const column: readonly Block[] = [colours, ...(isBelow ? [] : [signs]), told, kept];
  return {
    marks: [
      ...head.marks(left, content.y),
      ...figures.marks(left, figuresTop),
      ...stacked(column, row).marks(right, top),
      ...(isBelow ? signs.marks(content.x, content.y + drawn.height + row) : []),
      ...workBlock.marks(content.x, content.y + content.height - workBlock.height),
    ],
    pictures: [pictureIn('drawing', drawn, source), notan, values],
  };
}
