import { reasonInWords } from '../../../grammar/index.js';
import type { SittingRecord } from '../../measure/photograph/record.js';
import type { BoardPlace } from '../board.js';
import { type Block, stacked } from '../captions/block.js';
import { lines } from '../captions/title.js';
import { BOLD_WIDTH, textWidth } from '../captions/text-width.js';
import { imageMark, pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { grown } from '../picture/boxes.js';
import { MOST_FRAMES, type RowsOf, laidInRows, rowsFor } from '../rows.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { smallPicture } from './pictures.js';
import { dateOfSitting, sittingName } from './words.js';

const rows: RowsOf = { leastCell: 6.4, mostCell: 11, mostColumns: 8, mostHeight: 9, gap: 1, below: 0.5 };

export interface RecordStrip {
  /** From the top of the first picture to the last word below one. */
  readonly height: number;
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly written: readonly Mark[];
}

/** A small picture for each sitting, in the order of the text, with the chosen one marked. */
export function recordStrip(
  reading: Reading,
  records: readonly SittingRecord[],
  chosen: number,
  place: BoardPlace,
  top: number,
): RecordStrip {
  const { plan } = reading;
  const { width, height } = plan.canvas;
  const shown = framesOf(plan.sittings.length, chosen);
  const fitted = rowsFor(shown.length, plan.canvas, place, rows);
  const size = { width: width * fitted.scale, height: height * fitted.scale };
  const bySitting = new Map(records.map((record) => [record.sitting, record]));
  const { bottom, ...marks } = laidInRows(
    shown.map((sitting) => {
      const record = bySitting.get(sitting);
      const isChosen = sitting === chosen;
      return {
        words: wordsUnder(reading, sitting, record, isChosen, fitted.cell),
        draw: (at) => frameMarks(reading, sitting, record, isChosen, { ...at, ...size }),
      };
    }),
    fitted,
    plan.canvas,
    place,
    rows,
    top,
    { key: 'record:more', count: plan.sittings.length - shown.length },
  );
  return { height: bottom - top, ...marks };
}

/** The first sittings, or those up to the chosen one where it would be left out. */
function framesOf(count: number, chosen: number): readonly number[] {
  const from = Math.max(0, Math.min(count - MOST_FRAMES, chosen - MOST_FRAMES + 1));
  return Array.from({ length: Math.min(count, MOST_FRAMES) }, (_, index) => from + index);
}

function frameMarks(
  { plan, subjects, layout: { em } }: Reading,
  sitting: number,
  record: SittingRecord | undefined,
  isChosen: boolean,
  box: Box,
): { readonly shapes: readonly Mark[]; readonly edge: readonly Mark[] } {
  const subject = subjects.sittings[sitting] ?? `sitting:${sitting}`;
  const key = `record:strip:${sitting}`;
  const sign = signIn(record);
  const size = 0.82 * em;
  const isRoomy = textWidth(sign, size) <= box.width - 0.4 * em;
  return {
    shapes: [
      pathMark(`${key}:bed`, rectanglePath(box), { fill: 'track', subject }),
      ...(record?.is === 'measured' ? [imageMark(key, smallPicture(record.picture), box, { subject })] : []),
    ],
    edge: [
      ...(sign === '' || !isRoomy
        ? []
        : [
            textMark(`${key}:sign`, sign, box.x + box.width / 2, box.y + box.height / 2 + 0.3 * em, {
              size,
              ink: 'ink',
              face: 'note',
              anchor: 'middle',
              subject,
            }),
          ]),
      pathMark(`${key}:edge`, rectanglePath(box), {
        stroke: {
          ink: record === undefined ? 'quiet' : 'bevel',
          weight: record === undefined ? 'hair' : 'fine',
          ...(record === undefined ? { dash: 'dashed' as const } : {}),
        },
        subject,
        tip: `${frameInWords({ plan }, sitting, record, isChosen)}.`,
      }),
      ...(isChosen
        ? [
            pathMark(`${key}:chosen:edge`, rectanglePath(grown(box, 0.28 * em)), {
              stroke: { ink: 'wanted', weight: 'heavy' },
              subject,
            }),
          ]
        : []),
    ],
  };
}

/** What stands in a frame without a picture. */
function signIn(record: SittingRecord | undefined): string {
  switch (record?.is) {
    case undefined:
      return 'no photograph';
    case 'on its way':
      return 'on its way';
    case 'unreadable':
      return 'can’t be read';
    case 'measured':
      return '';
  }
}

/** `2 Colour, Mon 11 Jan 2027, shown above` */
export function frameInWords(
  { plan }: Pick<Reading, 'plan'>,
  sitting: number,
  record: SittingRecord | undefined,
  isChosen: boolean,
): string {
  const state =
    record?.is === 'unreadable' ? reasonInWords(record.reason).replace(/\.$/, '') : signIn(record);
  return [
    sittingName(plan, sitting),
    dateOfSitting(plan, sitting),
    ...(state === '' ? [] : [state]),
    ...(isChosen ? ['shown above'] : []),
  ].join(', ');
}

function wordsUnder(
  { plan, subjects, layout: { em } }: Reading,
  sitting: number,
  record: SittingRecord | undefined,
  isChosen: boolean,
  width: number,
): Block {
  const subject = subjects.sittings[sitting];
  const key = `record:strip:${sitting}`;
  const quiet = (name: string, text: string, most: number) =>
    lines(
      `${key}:${name}`,
      text,
      most,
      { size: 0.8 * em, leading: 1.12 * em, width },
      (lineKey, line, x, y, size) => textMark(lineKey, line, x, y, { size, ink: 'quiet', subject }),
    );
  return stacked(
    [
      lines(
        `${key}:title`,
        sittingName(plan, sitting),
        2,
        { size: 0.88 * em, leading: 1.2 * em, width: width / BOLD_WIDTH },
        (lineKey, text, x, y, size) =>
          textMark(lineKey, text, x, y, { size, ink: 'ink', face: isChosen ? 'strong' : 'text', subject }),
      ),
      quiet('date', dateOfSitting(plan, sitting), 2),
      ...(record?.is === 'unreadable' ? [quiet('why', reasonInWords(record.reason), 4)] : []),
      ...(record?.is === 'on its way' ? [quiet('why', 'on its way', 1)] : []),
      ...(isChosen ? [quiet('chosen', 'shown above', 1)] : []),
    ],
    0,
  );
}
