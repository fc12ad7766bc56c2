import { counted } from '../../findings/words/words.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { isIn } from '../../plan/based-on/here.js';
import { capitalised, inWords } from '../../plan/problems.js';
import { type Board, bareBoard, belowBoard, boardPlace, cardMark, cardOf } from '../board.js';
import { type Block, inColumns, stacked } from '../captions/block.js';
import { legendBlock } from '../captions/legend.js';
import { lines } from '../captions/title.js';
import { textMark } from '../marks.js';
import type { Reading } from '../views/reading.js';
import { calendarOf } from './calendar.js';
import { coatInWords } from './coats.js';
import { shortDate } from './dates.js';
import { legendLines } from './legend.js';
import { standingAfter } from '../../measure/sittings/standing.js';
import { sittingInWords, stripOf } from './strip.js';

const HOW_TO_BEGIN =
  'No sittings yet. Begin with a line such as ‘sitting "Block in" on 2027-01-13’ and, indented below it, ‘works’ with the objects that you paint that day: the picture after each sitting and the days of drying are shown here.';

const MOST_DESCRIBED = 12;
/** Narrower than this, notes and legend stand below each other. */
const TWO_COLUMNS_FROM_EMS = 26;

/** The picture after each sitting, and below it the calendar of coats and drying. */
export function sittingsBoard(reading: Reading): Board {
  const { plan, measures } = reading;
  const { schedule } = measures;
  if (schedule === undefined || schedule.sittings.length === 0)
    return bareBoard(reading, 'sittings', HOW_TO_BEGIN);
  const place = boardPlace(reading);
  const { em, inner } = place;
  const strip = stripOf(reading, schedule, place);
  const card = cardOf(place, strip.box.y + strip.box.height);
  const looks = standingAfter(
    plan,
    schedule.sittings,
    reading.showsGlazes ? measures.palette?.mixing : undefined,
  );
  const calendar = calendarOf(reading, schedule, looks, place.width);
  const legend = legendLines(reading, schedule);
  const isDouble = place.width >= TWO_COLUMNS_FROM_EMS * em;
  const gap = 2 * em;
  const width = isDouble ? (place.width - gap) / 2 : place.width;
  const notes = notesBlock(notesOf(reading, schedule), width, em);
  const signs = legendBlock(legend, width, em);
  const tail = isDouble ? inColumns([notes, signs], width, gap) : stacked([notes, signs], 0.9 * em);
  const head = belowBoard(reading, 'sittings', place, []);
  const belowAt = { x: place.x, y: card.y + card.height + 1.2 * em };
  const calendarAt = { x: place.x, y: belowAt.y + head.height + 1.1 * em };
  return {
    mount: [cardMark(card)],
    picture: strip.box,
    shapes: strip.shapes,
    construction: strip.construction,
    names: [],
    taken: [],
    written: strip.written,
    below: stacked([head, calendar, tail], 1.1 * em),
    belowAt,
    legend,
    described: described(reading, schedule),
    placeOf: ({ objects, location, from = location }) => {
      const sitting = plan.sittings.findIndex(({ node }) => isIn(node, from));
      return calendar.placeOf(calendarAt, {
        object: objects[0],
        sitting: sitting < 0 ? undefined : sitting,
      });
    },
    marked: { x: inner.x, y: calendarAt.y, width: inner.width, height: Math.max(em, calendar.height) },
    card,
  };
}

function notesBlock(notes: readonly string[], width: number, em: number): Block {
  return stacked(
    notes.map((note, index) =>
      lines(
        `sittings:note:${index}`,
        note,
        5,
        { size: 0.86 * em, leading: 1.25 * em, width },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
      ),
    ),
    0.15 * em,
  );
}

/** What the sittings come to in time, each a sentence without its full stop. */
function notesOf({ plan }: Reading, schedule: ScheduleMeasure): readonly string[] {
  const { due, dryOn, varnishFrom, sittings, neverWorked, isSettled } = schedule;
  const undated = sittings.filter(({ day }) => day === undefined).length;
  const unworked = neverWorked.flatMap((index) => plan.objects[index]?.name ?? []);
  const shown = unworked.slice(0, 6);
  const more = unworked.length - shown.length;
  return [
    ...(due === undefined ? [] : dueNotes(due)),
    ...(dryOn === undefined || due?.readyOn !== undefined
      ? []
      : [`The last layer is dry to the touch on ${shortDate(dryOn)}`]),
    ...(varnishFrom === undefined ? [] : [`A final varnish is safe from ${shortDate(varnishFrom)} on`]),
    ...(undated === 0
      ? []
      : [`${capitalised(counted(undated))} ${undated === 1 ? 'sitting has' : 'sittings have'} no date yet`]),
    ...(shown.length === 0
      ? []
      : [`Never worked on: ${inWords([...shown, ...(more > 0 ? [`${counted(more)} more`] : [])])}`]),
    ...(isSettled ? [] : ['The mixtures are being worked out; until then days of drying are rough']),
  ];
}

function dueNotes({
  day,
  latestStart,
  slack,
  readyOn,
}: NonNullable<ScheduleMeasure['due']>): readonly string[] {
  const days = (count: number) => `${counted(count)} ${count === 1 ? 'day' : 'days'}`;
  const ready =
    readyOn === undefined ? [] : [`Due ${shortDate(day)}, dry to the touch on ${shortDate(readyOn)}`];
  const start =
    latestStart === undefined
      ? []
      : [
          `The first sitting can be on ${shortDate(latestStart)} at the latest${
            slack === undefined || slack === 0
              ? ''
              : slack > 0
                ? `: ${days(slack)} in hand`
                : `: ${days(-slack)} short`
          }`,
        ];
  return ready.length === 0 ? [`Due ${shortDate(day)}`, ...start] : [...ready, ...start];
}

function described(reading: Reading, schedule: ScheduleMeasure): readonly string[] {
  const { sittings, objects } = schedule;
  const more = sittings.length - MOST_DESCRIBED;
  const coats = objects.flatMap(({ coats: laid }, index) => {
    const name = reading.plan.objects[index]?.name;
    return name === undefined || laid.length === 0
      ? []
      : [`${capitalised(name)}: ${laid.map((coat) => coatInWords(reading, coat)).join('; ')}`];
  });
  return [
    `${capitalised(counted(sittings.length))} ${sittings.length === 1 ? 'sitting' : 'sittings'}`,
    ...sittings.slice(0, MOST_DESCRIBED).map(({ sitting }) => capitalised(sittingInWords(reading, sitting))),
    ...(more > 0 ? [`And ${counted(more)} more`] : []),
    ...coats.slice(0, MOST_DESCRIBED),
    ...notesOf(reading, schedule),
  ];
}
