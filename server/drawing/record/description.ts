import { reasonInWords } from '../../../grammar/index.js';
import type { SittingRecord } from '../../measure/photograph/record.js';
import { capitalised, inWords } from '../../plan/problems.js';
import { andMore, percent } from '../captions/words.js';
import type { Reading } from '../views/reading.js';
import { type MeasuredRecord, measuredOf } from './choice.js';
import { doubtsOf, notesOf } from './notes.js';
import { farthestFirst, isTold, tailInWords } from './objects.js';
import { colourShareInWords, valueShareInWords } from './cells.js';
import { differencePictures } from './pictures.js';
import { type Series, colourSeries, valueSeries } from './shares.js';
import { frameInWords } from './strip.js';
import { dateOfSitting, objectInWords, sittingName } from './words.js';

const MOST_TOLD = 12;

/** The record in sentences, for those who do not see it. */
export function describedRecord(
  reading: Reading,
  records: readonly SittingRecord[],
  record: SittingRecord,
): readonly string[] {
  const { plan } = reading;
  const name = `${sittingName(plan, record.sitting)}, ${dateOfSitting(plan, record.sitting)}`;
  const others = plan.sittings.flatMap((_, sitting) =>
    sitting === record.sitting
      ? []
      : [
          frameInWords(
            reading,
            sitting,
            records.find((each) => each.sitting === sitting),
            false,
          ),
        ],
  );
  return [
    `The plan beside the photograph of ${name}`,
    ...(record.is === 'measured' ? measuredSentences(reading, records, record) : []),
    ...(record.is === 'unreadable' ? [reasonInWords(record.reason)] : []),
    ...(record.is === 'on its way' ? ['The photograph is on its way'] : []),
    ...(others.length === 0 ? [] : [`The other sittings: ${limited(others)}`]),
  ];
}

function measuredSentences(
  reading: Reading,
  records: readonly SittingRecord[],
  record: MeasuredRecord,
): readonly string[] {
  const { plan } = reading;
  const { figures, picture } = record;
  const pictures = differencePictures(picture, figures, plan.scale.steps);
  const measured = measuredOf(records);
  const at = measured.indexOf(record);
  const sorted = farthestFirst(figures.objects);
  const off = sorted.filter(isTold);
  const told = off
    .slice(0, MOST_TOLD)
    .map((each) => `${plan.objects[each.object]?.name ?? ''}, ${objectInWords(each)}`);
  const tail = tailInWords(Math.max(0, off.length - MOST_TOLD), sorted.length - off.length);
  const shares = (series: readonly Series[]) =>
    series.map(
      ({ name, planned, shares: all }) => `${name} ${percent(all[at] ?? 0)} (planned ${percent(planned)})`,
    );
  const values = shares(valueSeries(reading, measured));
  const colours = shares(colourSeries(reading, measured));
  return [
    `Values: ${valueShareInWords(pictures.values)}`,
    ...(pictures.colours === undefined
      ? []
      : [`Colours: ${colourShareInWords(pictures.colours)} of CIEDE2000`]),
    ...(values.length === 0 ? [] : [`Shares of values: ${inWords(values)}`]),
    ...(colours.length === 0 ? [] : [`Shares of colours: ${inWords(colours)}`]),
    ...(told.length === 0 ? [] : [`Objects, the farthest from the plan first: ${told.join('; ')}`]),
    ...(tail === '' ? [] : [tail]),
    ...notesOf(reading, record),
    ...doubtsOf(reading, record),
  ].map(capitalised);
}

function limited(sittings: readonly string[]): string {
  const more = sittings.length - MOST_TOLD;
  return [...sittings.slice(0, MOST_TOLD), ...(more > 0 ? [andMore(more, 'sitting', 'sittings')] : [])].join(
    '; ',
  );
}
