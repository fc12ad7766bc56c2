import type { PictureView } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { barsBlock, barsEnd } from './bars.js';
import { type Block, EMPTY_BLOCK, inColumns, stacked } from './block.js';
import { colourRows, valueRows } from './budgets.js';
import { conceptBlock } from './concept.js';
import { emphasisScaleBlock, meansBlock } from './emphasis-scale.js';
import { type LegendLine, legendBlock } from './legend.js';
import { scaleBlock } from './scale.js';
import { titleBlock } from './title.js';
import { viewCaption } from './words.js';
import { capitalised } from '../../plan/problems.js';

type Columns = readonly [readonly Block[], readonly Block[]];

const COLUMN_GAP_EMS = 2;
const BLOCK_GAP_EMS = 0.9;
/** Narrower than this, bars and scale stand below each other. */
const TWO_COLUMNS_FROM_EMS = 26;

/** What the captions begin with: title, what is shown, and in the drawing the words that say what it is to be. */
export function headBlock(
  { plan, measures, layout }: Pick<Reading, 'plan' | 'measures' | 'layout'>,
  view: PictureView,
): Block {
  const { em, column } = layout;
  const isDrawing = view === 'drawing';
  const caption = isDrawing ? (plan.concept?.value ?? 'Drawing') : capitalised(viewCaption(view, plan));
  const concept = isDrawing ? conceptBlock({ plan, measures, layout }) : EMPTY_BLOCK;
  return stacked([titleBlock(plan, caption, column.width, em), concept], 0.45 * em);
}

/** All that stands beside or below the picture: the head, figures as bars, and what the signs mean. */
export function captionsBlock(
  head: Block,
  reading: Reading,
  view: PictureView,
  legend: readonly LegendLine[],
): Block {
  const { em, column } = reading.layout;
  const gap = BLOCK_GAP_EMS * em;
  const columnGap = COLUMN_GAP_EMS * em;
  const double = column.width >= TWO_COLUMNS_FROM_EMS * em;
  const width = double ? (column.width - columnGap) / 2 : column.width;
  const values = valueRows(reading);
  const colours = colourRows(reading);
  const end = barsEnd([...values, ...colours]);
  const scale = () => scaleBlock(reading, width);
  const valueBars = () => barsBlock(reading, { key: 'value', heading: 'Values', rows: values, end }, width);
  const colourBars = () =>
    barsBlock(reading, { key: 'colour', heading: 'Colours', rows: colours, end }, width);
  // The first half of a long legend stands beside the second.
  const half = Math.ceil(legend.length / 2);
  const signs = () => legendBlock(legend, width, em);
  const [left, right] = ((): Columns => {
    switch (view) {
      case 'drawing':
        return [
          [scale(), valueBars()],
          [colourBars(), signs()],
        ];
      case 'notan':
      case 'values':
        return [[scale(), signs()], [valueBars()]];
      case 'colour':
      case 'mirror':
        return [[colourBars()], [signs()]];
      case 'squint':
        return [[valueBars()], [signs()]];
      case 'path':
      case 'transfer':
        return double
          ? [[legendBlock(legend.slice(0, half), width, em)], [legendBlock(legend.slice(half), width, em)]]
          : [[signs()], []];
      case 'emphasis':
        return [[emphasisScaleBlock(reading, width), meansBlock(reading, width)], [signs()]];
    }
  })();
  const figures = double
    ? inColumns([stacked(left, gap), stacked(right, gap)], width, columnGap)
    : stacked([...left, ...right], gap);
  return stacked([head, figures], 1.1 * em);
}
