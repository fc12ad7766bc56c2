import { partsInWords } from '../../findings/words/paints.js';
import { counted } from '../../findings/words/words.js';
import type { PaletteMeasure } from '../../measure/mixing/mixing.js';
import { capitalised, inWords, plainNumber } from '../../plan/problems.js';
import { type Board, bareBoard, belowBoard, boardPlace, cardMark, cardOf } from '../board.js';
import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { type LegendLine, legendBlock } from '../captions/legend.js';
import { lines } from '../captions/title.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath, polygonPath, rectanglePath } from '../path-data.js';
import { triangle } from '../picture/signs.js';
import type { Box } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { mixturesBlock } from './mixtures.js';
import { flowed, paintEntries, paintsHeading, paletteNotes } from './paints.js';
import { type Columns, glazesBlock, stringsBlock } from './strings.js';
import { drawWheel } from './wheel.js';
import { predictedInWords, swatchNames } from './words.js';

const HOW_TO_BEGIN =
  'No palette yet. Begin one with a line ‘palette’ and, indented below it, a line for each tube, such as ‘paint white PW6’ and ‘paint ultra PB29, warm’: the mixtures of your colours are worked out of them.';

/** From this width on, paints stand beside the wheel. */
const BESIDE_FROM_EMS = 40;
const COLUMN_EMS = 14;
const WIDEST_WHEEL_EMS = 22;
const GAP_EMS = 2;

/** The paints beside the wheel of hue and chroma, and below them what is mixed of them. */
export function paletteBoard(reading: Reading): Board {
  const palette = reading.measures.palette;
  if (palette === undefined || palette.paints.length === 0)
    return bareBoard(reading, 'palette', HOW_TO_BEGIN);
  const place = boardPlace(reading);
  const { em, inner } = place;
  const gap = GAP_EMS * em;
  const isBeside = inner.width >= BESIDE_FROM_EMS * em;
  const side = Math.min(WIDEST_WHEEL_EMS * em, inner.width);
  const wheelBox: Box = {
    x: isBeside ? inner.x : inner.x + (inner.width - side) / 2,
    y: inner.y,
    width: side,
    height: side,
  };
  const wheel = drawWheel(reading, palette, wheelBox);
  const legend = legendLines(palette, wheel);
  const columns = columnsIn(inner.width, em);
  const wheelBottom = wheelBox.y + side + 1.1 * em;
  // Beside a wheel paints fill what is left; below it they stand beside the notes, where there is room for two columns.
  const paintsAt = isBeside
    ? { x: inner.x + side + gap, y: inner.y, width: inner.width - side - gap }
    : { x: inner.x + (columns.count > 1 ? columns.width + gap : 0), y: wheelBottom, width: columns.width };
  const paintColumns = columnsIn(paintsAt.width, em);
  const paints = stacked(
    [
      paintsHeading(paintsAt.width, em),
      flowed(
        paintEntries(reading, palette, paintColumns.width),
        paintColumns.count,
        paintColumns.width,
        paintColumns.gap,
        0.55 * em,
      ),
    ],
    0.2 * em,
  );
  const underWidth = isBeside ? side : columns.width;
  const under = stacked(
    [notesBlock(reading, palette, underWidth), legendBlock(legend, underWidth, em)],
    0.7 * em,
  );
  const underTop = isBeside || columns.count > 1 ? wheelBottom : paintsAt.y + paints.height + 0.9 * em;
  const card = cardOf(place, Math.max(underTop + under.height, paintsAt.y + paints.height));

  const wide = columnsIn(place.width, em);
  const { mixing } = palette;
  const blocks: readonly Block[] =
    mixing === undefined
      ? [
          lines(
            'mixtures:waiting',
            WAITING,
            2,
            { size: em, leading: 1.4 * em, width: place.width },
            (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
          ),
        ]
      : [
          mixturesBlock(reading, mixing, wide),
          stringsBlock(reading, mixing, wide),
          glazesBlock(reading, mixing, wide),
        ];
  return {
    mount: [cardMark(card)],
    picture: wheelBox,
    shapes: wheel.shapes,
    construction: wheel.construction,
    names: wheel.names,
    taken: wheel.taken,
    written: [...paints.marks(paintsAt.x, paintsAt.y), ...under.marks(inner.x, underTop)],
    below: belowBoard(reading, 'palette', place, blocks),
    belowAt: { x: place.x, y: card.y + card.height + 1.2 * em },
    legend,
    described: described(reading, palette),
    placeOf: ({ objects }) => objects.flatMap((index) => wheel.placeOf(index) ?? [])[0],
    marked: wheelBox,
    card,
  };
}

const WAITING = 'The mixtures are being worked out.';

/** Columns of readable width side by side. */
function columnsIn(width: number, em: number): Columns {
  const gap = GAP_EMS * em;
  const count = Math.max(1, Math.floor((width + gap) / (COLUMN_EMS * em + gap)));
  return { count, gap, width: (width - (count - 1) * gap) / count };
}

function notesBlock(reading: Reading, palette: PaletteMeasure, width: number): Block {
  const { em } = reading.layout;
  const notes = [...paletteNotes(reading, palette), ...additionNote(reading, palette)];
  if (notes.length === 0) return EMPTY_BLOCK;
  return stacked(
    notes.map((note, index) =>
      lines(
        `palette:note:${index}`,
        note,
        5,
        { size: 0.86 * em, leading: 1.25 * em, width },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
      ),
    ),
    0.1 * em,
  );
}

/** Which paint would bring what is out of reach nearest. */
function additionNote({ plan }: Reading, { mixing }: PaletteMeasure): readonly string[] {
  if (mixing === undefined) return [];
  const names = swatchNames(mixing.swatches, plan);
  const { addition, beyond } = mixing;
  if (addition === undefined)
    return beyond.length === 0 ? [] : [`Out of reach: ${inWords(beyond.map((index) => names[index] ?? ''))}`];
  const { pigment, differences } = addition;
  const nearer = differences.map(
    ({ swatch, difference }) => `${names[swatch] ?? ''} (${plainNumber(difference, 1)} off)`,
  );
  return [`${capitalised(pigment.name)} ${pigment.index} added would bring nearer ${inWords(nearer)}`];
}

function legendLines(
  { mixing, paints }: PaletteMeasure,
  { leftOut, ringStep }: { readonly leftOut: number; readonly ringStep: number },
): readonly LegendLine[] {
  const middle = (x: number, y: number, side: number) => ({ x: x + side / 2, y: y + side / 2 });
  return [
    {
      key: 'paint',
      text: 'a paint, as it comes from the tube',
      sign: (x, y, side) => [
        pathMark(
          'legend:paint',
          rectanglePath({ x: x + 0.16 * side, y: y + 0.16 * side, width: 0.68 * side, height: 0.68 * side }),
          { stroke: { ink: 'ink', weight: 'medium' } },
        ),
      ],
    },
    ...(mixing === undefined
      ? []
      : [
          {
            key: 'wanted',
            text: 'a colour of the picture',
            sign: (x: number, y: number, side: number) => [
              pathMark('legend:wanted', circlePath(middle(x, y, side), 0.32 * side), {
                stroke: { ink: 'ink', weight: 'fine' },
              }),
            ],
          },
          {
            key: 'reach',
            text: 'all that can be mixed, whatever its value',
            sign: (x: number, y: number, side: number) => [
              pathMark(
                'legend:reach',
                polygonPath([
                  { x: x + 0.1 * side, y: y + 0.6 * side },
                  { x: x + 0.45 * side, y: y + 0.12 * side },
                  { x: x + 0.95 * side, y: y + 0.35 * side },
                  { x: x + 0.7 * side, y: y + 0.88 * side },
                ]),
                { fill: 'track', stroke: { ink: 'ink', weight: 'fine' } },
              ),
            ],
          },
        ]),
    ...(mixing === undefined || mixing.beyond.length === 0
      ? []
      : [
          {
            key: 'beyond',
            text: 'a colour beyond the palette, with the nearest that can be mixed',
            sign: (x: number, y: number, side: number) => [
              pathMark(
                'legend:beyond:line',
                linePath([middle(x, y, side), { x: x + side, y: y + 0.2 * side }]),
                {
                  stroke: { ink: 'ink', weight: 'fine', dash: 'dashed' },
                },
              ),
              pathMark('legend:beyond', triangle({ x: x + 0.4 * side, y: y + 0.55 * side }, 0.4 * side), {
                fill: 'mount',
                stroke: { ink: 'ink', weight: 'medium' },
              }),
            ],
          },
        ]),
    {
      key: 'rings',
      text: `rings: ${ringStep} apart in chroma (CIELAB C*ab), greys in the middle`,
    },
    ...(paints.some(({ basis }) => basis === 'estimated')
      ? [
          {
            key: 'estimate',
            text: '‘estimated’ and ‘about’: of a paint in it no spectrum is measured, only tones are known',
          },
        ]
      : []),
    ...(paints.some(({ full }) => full === undefined)
      ? [{ key: 'unknown', text: 'a paint of which no colour is known is not on the wheel' }]
      : []),
    ...(leftOut === 0
      ? []
      : [
          {
            key: 'left out',
            text:
              leftOut === 1 ? 'one has no room for its name' : `${counted(leftOut)} have no room for a name`,
          },
        ]),
  ];
}

const MOST_DESCRIBED = 12;

function described(reading: Reading, palette: PaletteMeasure): readonly string[] {
  const { plan } = reading;
  const { mixing } = palette;
  const paints = (plan.palette?.paints ?? []).map(({ name, index }) =>
    index === undefined ? name : `${name} ${index}`,
  );
  const named = paints.slice(0, MOST_DESCRIBED);
  const more = paints.length - named.length;
  const names = swatchNames(mixing?.swatches ?? [], plan);
  const beyond = new Set(mixing?.beyond ?? []);
  return [
    `Paints: ${inWords([...named, ...(more > 0 ? [`${counted(more)} more`] : [])])}`,
    ...paletteNotes(reading, palette),
    ...(mixing?.swatches ?? []).slice(0, MOST_DESCRIBED).map(({ mixture, difference }, index) => {
      const name = capitalised(names[index] ?? '');
      if (mixture === undefined) return `${name}: no mixture`;
      const off = difference === undefined ? '' : `, ${predictedInWords(difference, mixture)}`;
      const out = beyond.has(index) ? ', beyond the palette' : '';
      return `${name}: ${partsInWords(mixture.parts, plan).replaceAll('\u00A0', ' ')}${off}${out}`;
    }),
    ...additionNote(reading, palette),
  ];
}
