import type { Finding } from '../../findings/finding.js';
import { barsBlock, barsEnd } from '../captions/bars.js';
import { type Block, stacked } from '../captions/block.js';
import { type BarRow, colourRows, valueRows } from '../captions/budgets.js';
import { legendBlock } from '../captions/legend.js';
import { divisionLines, focusLine, horizonLine, leadLine } from '../captions/legend-lines.js';
import { scaleBlock } from '../captions/scale.js';
import { andMore } from '../captions/words.js';
import { textMark } from '../marks.js';
import type { Reading } from '../views/reading.js';
import { firstFitting, fittedList } from './fitting.js';
import { nothingFound, setAsideList, standingList } from './findings.js';

/** A scale of eleven steps may have as many groups. */
const MOST_ROWS = 4;

/** The value scale where there is room for it, and the bars of both budgets to one measure. */
export function figuresBlock(reading: Reading, width: number, height: number): Block {
  const { em } = reading.layout;
  const values = valueRows(reading);
  const colours = colourRows(reading);
  const end = barsEnd([...values, ...colours]);
  const bars = [
    cutBars(reading, { key: 'value', heading: 'Values', rows: values, end }, width),
    cutBars(reading, { key: 'colour', heading: 'Colours', rows: colours, end }, width),
  ];
  return firstFitting(
    height,
    stacked([scaleBlock(reading, width), ...bars], 1.1 * em),
    stacked(bars, 1.1 * em),
  );
}

function cutBars(
  reading: Reading,
  bars: {
    readonly key: 'value' | 'colour';
    readonly heading: string;
    readonly rows: readonly BarRow[];
    readonly end: number;
  },
  width: number,
): Block {
  const { em } = reading.layout;
  const shown = barsBlock(reading, { ...bars, rows: bars.rows.slice(0, MOST_ROWS) }, width);
  const more = bars.rows.length - MOST_ROWS;
  if (more <= 0) return shown;
  const rest: Block = {
    height: 1.2 * em,
    marks: (x, y) => [
      textMark(`bars:${bars.key}:more`, andMore(more, 'share', 'shares'), x, y + 0.9 * em, {
        size: 0.82 * em,
        ink: 'quiet',
      }),
    ],
  };
  return stacked([shown, rest], 0);
}

/** What the lines on the drawing are. */
export function signsBlock(reading: Reading, width: number): Block {
  const entries = [
    ...focusLine(reading),
    ...leadLine(reading),
    ...divisionLines(reading),
    ...horizonLine(reading),
  ];
  return legendBlock(entries, width, reading.layout.em);
}

/** The findings that stand, and those set aside with the reasons. */
export function findingsBlocks(
  findings: readonly Finding[],
  { layout }: Reading,
  width: number,
): { readonly standing: (height: number) => Block; readonly aside: (height: number) => Block } {
  const { em } = layout;
  const standing = standingList(findings, width, em);
  const aside = setAsideList(findings, width, em);
  return {
    standing: (height) =>
      standing.entries.length === 0 ? nothingFound(width, em) : fittedList(standing, width, height, em),
    aside: (height) => fittedList(aside, width, height, em),
  };
}
