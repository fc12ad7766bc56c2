import type { Finding } from '../../findings/finding.js';
import { isIn } from '../../plan/based-on/here.js';
import type { Point } from '../../plan/geometry/point.js';
import { capitalised } from '../../plan/problems.js';
import { type Board, bareBoard, belowBoard, boardPlace, cardMark, cardOf } from '../board.js';
import { type Block, EMPTY_BLOCK, inColumns, stacked } from '../captions/block.js';
import { legendBlock } from '../captions/legend.js';
import { lines } from '../captions/title.js';
import { textMark } from '../marks.js';
import { regionOf } from '../picture/region.js';
import type { Reading } from '../views/reading.js';
import { chosenRecord, measuredOf, recordsOf } from './choice.js';
import { describedRecord } from './description.js';
import { recordLegend } from './legend.js';
import { doubtsOf, notesOf } from './notes.js';
import { objectsBlock } from './objects.js';
import { panelsOf } from './panels.js';
import { type Series, colourSeries, sharesBlock, valueSeries } from './shares.js';
import { recordStrip } from './strip.js';

const HOW_TO_BEGIN =
  'No photograph yet. Photograph the canvas after a sitting and write, indented below that sitting, a line such as ‘photo "record/01.jpg"’, with the file beside the plan: it is squared up, measured and held to the plan here.';

/** Narrower than this, notes and charts stand below each other. */
const TWO_COLUMNS_FROM_EMS = 26;

/** The photograph after a sitting beside the plan, what is between them, and how it went from sitting to sitting. */
export function recordBoard(reading: Reading): Board {
  const records = recordsOf(reading);
  const record = chosenRecord(records, reading.sitting);
  if (record === undefined) return bareBoard(reading, 'record', HOW_TO_BEGIN);
  const place = boardPlace(reading);
  const { em, inner } = place;
  const panels = panelsOf(reading, record, place);
  const stripTop = inner.y + panels.height + 1.6 * em;
  const strip = recordStrip(reading, records, record.sitting, place, stripTop);
  const lowest = stripTop + strip.height;
  const card = cardOf(place, lowest);
  const legend = recordLegend(reading, record);
  const isDouble = place.width >= TWO_COLUMNS_FROM_EMS * em;
  const gap = 2 * em;
  const width = isDouble ? (place.width - gap) / 2 : place.width;
  const measured = measuredOf(records);
  const chart = (key: string, heading: string, series: readonly Series[]) =>
    sharesBlock(reading, measured, record.sitting, { key, heading, series }, width);
  const objects =
    record.is === 'measured' ? objectsBlock(reading, record.figures.objects, place.width) : undefined;
  const notes = sentencesBlock('note', 'This sitting', notesOf(reading, record), width, em);
  const doubts = sentencesBlock('doubt', 'What can’t be trusted', doubtsOf(reading, record), width, em);
  const signs = legendBlock(legend, width, em);
  const left = [
    chart('shares:values', 'Values over the sittings', valueSeries(reading, measured)),
    chart('shares:colours', 'Colours over the sittings', colourSeries(reading, measured)),
  ];
  const right = [notes, doubts, signs];
  const tail = isDouble
    ? inColumns([stacked(left, 0.9 * em), stacked(right, 0.9 * em)], width, gap)
    : stacked([notes, doubts, ...left, signs], 0.9 * em);
  const belowAt = { x: place.x, y: card.y + card.height + 1.2 * em };
  return {
    mount: [cardMark(card)],
    picture: {
      x: inner.x - 0.5 * em,
      y: inner.y - 0.5 * em,
      width: inner.width + em,
      height: lowest - inner.y + em,
    },
    shapes: [...panels.shapes, ...strip.shapes],
    construction: [...panels.construction, ...strip.construction],
    names: [],
    taken: [],
    written: [...panels.written, ...strip.written],
    below: belowBoard(reading, 'record', place, [...(objects === undefined ? [] : [objects]), tail]),
    belowAt,
    legend,
    described: describedRecord(reading, records, record),
    placeOf: (finding) => {
      const at = placeInPicture(reading, record.sitting, finding);
      return at === undefined ? undefined : panels.inPhotograph(at);
    },
    marked: { x: inner.x, y: inner.y, width: inner.width, height: Math.max(em, panels.height) },
    card,
  };
}

/** Where in the picture lies what is found of the sitting that is shown; nothing for what is found of another. */
function placeInPicture(
  { plan, cells }: Reading,
  sitting: number,
  { at, objects, location, from = location }: Finding,
): Point | undefined {
  const node = plan.sittings[sitting]?.node;
  if (node === undefined || !isIn(node, from)) return undefined;
  const [object] = objects;
  return at ?? (object === undefined ? undefined : regionOf(cells, object)?.heart);
}

function sentencesBlock(
  key: string,
  heading: string,
  sentences: readonly string[],
  width: number,
  em: number,
): Block {
  if (sentences.length === 0) return EMPTY_BLOCK;
  const head = lines(
    `record:${key}:heading`,
    heading,
    1,
    { size: 0.95 * em, leading: 1.5 * em, width },
    (lineKey, text, x, y, size) => textMark(lineKey, text, x, y, { size, ink: 'ink', face: 'strong' }),
  );
  return stacked(
    [
      head,
      ...sentences.map((sentence, index) =>
        lines(
          `record:${key}:${index}`,
          capitalised(sentence),
          5,
          { size: 0.86 * em, leading: 1.25 * em, width },
          (lineKey, text, x, y, size) => textMark(lineKey, text, x, y, { size, ink: 'ink' }),
        ),
      ),
    ],
    0.15 * em,
  );
}
