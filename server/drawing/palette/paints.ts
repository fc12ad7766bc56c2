import { amountInWords } from '../../findings/words/paints.js';
import { counted } from '../../findings/words/words.js';
import type { PaintMeasure, PaletteMeasure } from '../../measure/mixing/mixing.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Paint } from '../../plan/plan.js';
import { capitalised, inWords } from '../../plan/problems.js';
import { type Block, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { BOLD_WIDTH, fitted, textWidth, wrapped } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import { hexOf } from '../picture/ink.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';

/** More tubes than a palette has room for. */
const MOST_PAINTS = 36;

/** The heading over the paints. */
export function paintsHeading(width: number, em: number): Block {
  return {
    height: 1.5 * em,
    marks: (x, y) => headingMarks('paints', 'Paints', 'full tone, 1 in 10 of white', { x, y, width, em }),
  };
}

/** Each paint with its full tone, a tint of it, and what is known of it. */
export function paintEntries(reading: Reading, palette: PaletteMeasure, width: number): readonly Block[] {
  return palette.paints
    .slice(0, MOST_PAINTS)
    .flatMap((_, index) => paintEntry(reading, palette, index, width) ?? []);
}

function paintEntry(
  { plan, subjects, layout: { em } }: Reading,
  palette: PaletteMeasure,
  index: number,
  width: number,
): Block | undefined {
  const paint = plan.palette?.paints[index];
  const measure = palette.paints[index];
  const subject = subjects.paints[index];
  if (paint === undefined || measure === undefined || subject === undefined) return undefined;
  const amount = palette.mixing?.amounts[index];
  const figure = amount === undefined || amount.millilitres <= 0 ? '' : amountInWords(amount);
  const isMother = plan.palette?.mother?.value.trim().toLowerCase() === paint.name.toLowerCase();
  const facts = paintFacts(paint, measure, isMother);
  const size = 0.82 * em;
  const indent = 4.6 * em;
  const room = width - indent;
  const told = wrapped(facts.join(', '), size, room, 4);
  const figureWidth = figure === '' ? 0 : textWidth(figure, size) + 1.1 * em;
  // A long amount has a line of its own.
  const isBeside = BOLD_WIDTH * textWidth(paint.name, 0.95 * em) + figureWidth <= room;
  const lines = [...(isBeside || figure === '' ? [] : [figure]), ...told];
  const tip = `${capitalised(paint.name)}: ${[...facts, ...(figure === '' ? [] : [figure])].join(', ')}.`;
  return {
    height: Math.max(2.5 * em, (1.35 + 1.12 * lines.length) * em),
    marks: (x, y) => [
      ...tone(subject, measure.full, { x, y: y + 0.1 * em, width: 2.4 * em, height: 2.1 * em }, subject, tip),
      ...tone(
        `${subject}:tint`,
        measure.tint,
        { x: x + 2.4 * em, y: y + 0.1 * em, width: 1.5 * em, height: 2.1 * em },
        subject,
      ),
      textMark(
        `${subject}:name`,
        fitted(paint.name, 0.95 * em, (isBeside ? room - figureWidth : room) / BOLD_WIDTH),
        x + indent,
        y + 0.92 * em,
        { size: 0.95 * em, ink: 'ink', face: 'strong', subject },
      ),
      ...(isBeside && figure !== ''
        ? [
            textMark(`${subject}:amount`, figure, x + width, y + 0.92 * em, {
              size,
              ink: 'ink',
              anchor: 'end',
              subject,
            }),
          ]
        : []),
      ...lines.map((line, each) =>
        textMark(`${subject}:line:${each}`, line, x + indent, y + (2.08 + 1.12 * each) * em, {
          size,
          ink: 'quiet',
          subject,
        }),
      ),
    ],
  };
}

/** `PB29`, `ultramarine blue`, `warm`, `transparent`, `mother of all mixtures` */
function paintFacts(
  { index, temperature }: Paint,
  { basis, pigment, side, strengthGuessed }: PaintMeasure,
  isMother: boolean,
): readonly string[] {
  const leaning = temperature ?? side;
  return [
    ...(index === undefined ? [] : [index]),
    ...(pigment === undefined ? [] : [pigment.name]),
    ...(leaning === undefined ? [] : [leaning]),
    ...(pigment === undefined ? [] : [pigment.transparency]),
    ...(isMother ? ['mother of all mixtures'] : []),
    ...basisInWords(basis),
    ...(strengthGuessed === true ? ['its strength guessed'] : []),
  ];
}

function basisInWords(basis: PaintMeasure['basis']): readonly string[] {
  switch (basis) {
    case 'measured':
      return [];
    case 'estimated':
      return ['estimated'];
    case 'unknown':
      return ['not in the mixtures'];
  }
}

/** A tone, or a box that is struck through where it is not known. */
function tone(
  key: string,
  colour: Colour | undefined,
  box: Box,
  subject: string,
  tip?: string,
): readonly Mark[] {
  const frame = rectanglePath(box);
  if (colour !== undefined)
    return [
      pathMark(key, frame, {
        fill: hexOf(colour),
        stroke: { ink: 'quiet', weight: 'hair' },
        subject,
        tip,
      }),
    ];
  return [
    pathMark(key, frame, { stroke: { ink: 'quiet', weight: 'hair' }, subject, tip }),
    pathMark(
      `${key}:unknown`,
      linePath([
        { x: box.x, y: box.y + box.height },
        { x: box.x + box.width, y: box.y },
      ]),
      { stroke: { ink: 'quiet', weight: 'hair' }, subject },
    ),
  ];
}

/** What is said of the palette as a whole, each a line of its own. */
export function paletteNotes({ plan }: Reading, palette: PaletteMeasure): readonly string[] {
  const { tubes, primaries, mixing } = palette;
  const nameOf = (paint: number) => plan.palette?.paints[paint]?.name ?? '';
  const lacking = primaries.flatMap(({ primary, lacks, undecided }) => {
    if (lacks.length === 0) return [];
    const open =
      undecided.length === 0 ? '' : `; nothing says which way ${inWords(undecided.map(nameOf))} leans`;
    const lack =
      lacks.length === 1
        ? `no ${lacks[0]} one`
        : undecided.length === 0
          ? 'none'
          : 'neither a warm nor a cool one';
    return [`${primary}: ${lack}${open}`];
  });
  const unknown = palette.paints.flatMap(({ basis }, index) => (basis === 'unknown' ? [nameOf(index)] : []));
  const over = palette.paints.length - MOST_PAINTS;
  return [
    `${capitalised(counted(tubes))} ${tubes === 1 ? 'tube' : 'tubes'}`,
    ...(over > 0 ? [`${counted(over)} paints are not shown`] : []),
    ...(lacking.length === 0 ? ['A warm and a cool one of each primary'] : lacking.map(capitalised)),
    ...(unknown.length === 0
      ? []
      : [`Not in the mixtures: ${inWords(unknown)}. Give the full tone and a tint, as painted out`]),
    ...(mixing === undefined ? ['The mixtures are being worked out.'] : []),
  ];
}

/** Entries in columns that are filled one after the other, each as high as they have to be. */
export function flowed(
  entries: readonly Block[],
  columns: number,
  width: number,
  gap: number,
  row: number,
): Block {
  const whole = entries.reduce((sum, { height }) => sum + height + row, 0);
  const filled: Block[][] = [[]];
  let used = 0;
  for (const entry of entries) {
    const column = filled.at(-1) ?? [];
    // A column ends where the next entry would stand more below the mean than above it.
    if (filled.length < columns && column.length > 0 && used + entry.height / 2 > whole / columns) {
      filled.push([entry]);
      used = entry.height + row;
      continue;
    }
    column.push(entry);
    used += entry.height + row;
  }
  const blocks = filled.map((column) => stacked(column, row));
  return {
    height: Math.max(0, ...blocks.map(({ height }) => height)),
    marks: (x, y) => blocks.flatMap((block, index) => block.marks(x + index * (width + gap), y)),
  };
}
