import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Point } from '../../plan/geometry/point.js';
import { capitalised } from '../../plan/problems.js';
import { type Block, EMPTY_BLOCK } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { BOLD_WIDTH, fitted, textWidth } from '../captions/text-width.js';
import { andMore } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import type { Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { dayOf } from '../../measure/sittings/days.js';
import { coatInWords, coatMarks } from './coats.js';
import { shortDate, dayAndMonth, ticksBetween } from './dates.js';
import type { Standing } from '../../measure/sittings/standing.js';
import { largestOf, smallestOf } from '../../plan/extremes.js';

/** More rows than these are left to the text. */
const MOST_ROWS = 40;
const ROW_EMS = 1.7;
/** Heading, years, ticks and the numbers of the sittings. */
const HEAD_EMS = 5.3;
const LEAST_TICK_EMS = 4.1;
const LONGEST_NAME_EMS = 8;

export interface Calendar extends Block {
  /** Where an object's coat of a sitting stands, or the sitting itself, once the calendar has its place. */
  readonly placeOf: (
    at: Point,
    place: { readonly object: number | undefined; readonly sitting: number | undefined },
  ) => Point | undefined;
}

/** A row for each object that is worked on: its coats on their days, and until when each dries. */
export function calendarOf(
  reading: Reading,
  schedule: ScheduleMeasure,
  looks: readonly (readonly (Standing | undefined)[])[],
  width: number,
): Calendar {
  const { plan, layout, subjects } = reading;
  const { em } = layout;
  const span = spanOf(reading, schedule);
  const worked = rowsOf(schedule);
  if (span === undefined || worked.length === 0) return { ...EMPTY_BLOCK, placeOf: () => undefined };
  const rows = worked.slice(0, MOST_ROWS);
  const more = worked.length - rows.length;
  const size = 0.82 * em;
  const longest = Math.max(...rows.map((index) => textWidth(plan.objects[index]?.name ?? '', size)));
  const names = Math.min(longest, LONGEST_NAME_EMS * em, 0.3 * width) + 0.7 * em;
  const days = span.to - span.from + 1;
  const across = (width - names) / days;
  const order = new Map(schedule.sittings.map(({ sitting }, index) => [sitting, index]));
  const inConflict = new Set(schedule.conflicts.map(({ object, above }) => `${object}:${above}`));
  const bottom = (HEAD_EMS + ROW_EMS * rows.length) * em;

  const marks = (x: number, y: number): readonly Mark[] => {
    const at = (day: number) => x + names + (day - span.from) * across;
    const top = y + HEAD_EMS * em;
    const low = y + bottom;
    const upright = (day: number, from: number) =>
      linePath([
        { x: at(day), y: from },
        { x: at(day), y: low },
      ]);
    const ticks = ticksBetween(span.from, span.to, (LEAST_TICK_EMS * em) / across);
    const text = (key: string, words: string, left: number, base: number, ink: 'ink' | 'quiet' = 'quiet') =>
      textMark(key, words, left, base, { size, ink });
    return [
      ...headingMarks('calendar', 'Calendar', 'coats, and the days that they dry', { x, y, width, em }),
      ...awayMarks(reading, span, { at, top: y + 3.1 * em, low, across }),
      ...ticks.flatMap(({ day, label, year }, index) => {
        const wide = textWidth(label, size);
        // The last one does not hang over the edge.
        const left = Math.min(at(day), x + width - wide);
        return [
          pathMark(`calendar:tick:${index}`, upright(day, y + 3.1 * em), {
            stroke: { ink: 'rule', weight: 'hair' },
          }),
          text(`calendar:tick:${index}:label`, label, left, y + 2.95 * em),
          ...(year === undefined
            ? []
            : [text(`calendar:tick:${index}:year`, year, left, y + 1.95 * em, 'ink')]),
        ];
      }),
      ...sittingMarks(reading, schedule, order, { at, y: y + 4.2 * em, low, across }),
      ...rows.flatMap((index, row): Mark[] => {
        const object = plan.objects[index];
        const subject = subjects.objects[index];
        if (object === undefined || subject === undefined) return [];
        const high = top + row * ROW_EMS * em;
        const coats = schedule.objects[index]?.coats ?? [];
        return [
          textMark(
            `calendar:${subject}:name`,
            fitted(object.name, size, names - 0.5 * em),
            x,
            high + 0.92 * em,
            {
              size,
              ink: 'ink',
              subject,
              tip: `${capitalised(object.name)}: ${coats.map((coat) => coatInWords(reading, coat)).join('; ')}.`,
            },
          ),
          ...coats.flatMap((coat, nth) =>
            coatMarks(`calendar:${subject}:${nth}`, reading, coat, {
              at,
              across,
              y: high + 0.05 * em,
              to: span.to,
              subject,
              colour: looks[order.get(coat.sitting) ?? -1]?.[index],
              isConflict: inConflict.has(`${index}:${coat.sitting}`),
            }),
          ),
        ];
      }),
      ...dueMarks(reading, schedule, span, { at, y: y + 3.1 * em, low, x, width }),
      ...(more > 0 ? [text('calendar:more', andMore(more, 'object', 'objects'), x, low + 0.95 * em)] : []),
    ];
  };
  return {
    height: bottom + (more > 0 || schedule.due !== undefined || plan.away.length > 0 ? 1.3 * em : 0),
    marks,
    placeOf: (where, { object, sitting }) => {
      const day = schedule.sittings.find((each) => each.sitting === sitting)?.day;
      const row = object === undefined ? -1 : rows.indexOf(object);
      if (day === undefined && row < 0) return undefined;
      return {
        x: day === undefined ? where.x + names : where.x + names + (day - span.from + 0.5) * across,
        y: where.y + (row < 0 ? 3.9 : HEAD_EMS + ROW_EMS * row + 0.55) * em,
      };
    },
  };
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** From the day before the first sitting to the day after the last thing that is drawn. */
function spanOf({ plan }: Reading, { sittings, objects, due }: ScheduleMeasure): Span | undefined {
  const begun = sittings.flatMap(({ day }) => day ?? []);
  if (begun.length === 0) return undefined;
  const first = smallestOf(begun);
  const dried = objects.flatMap(({ coats }) => coats.flatMap(({ dryOn }) => dryOn ?? []));
  const last = largestOf([...begun, ...dried, due?.day ?? first]);
  const away = plan.away.flatMap(({ value }) => dayOf(value.from) ?? []);
  const before = smallestOf([first, ...away.filter((day) => day >= first - 7)]);
  return { from: Math.floor(before) - 1, to: Math.ceil(last) + 1 };
}

/** The objects that are worked on, in the order in which they are begun. */
function rowsOf({ objects }: ScheduleMeasure): readonly number[] {
  const begun = (index: number) =>
    smallestOf((objects[index]?.coats ?? []).map(({ day }) => day ?? Number.POSITIVE_INFINITY));
  return objects
    .flatMap(({ coats }, index) => (coats.some(({ day }) => day !== undefined) ? [index] : []))
    .sort((one, other) => begun(one) - begun(other) || one - other);
}

interface Uprights {
  readonly at: (day: number) => number;
  readonly low: number;
}

/** The number of each sitting over its day; those that are too near to each other share a place. */
function sittingMarks(
  { subjects, layout: { em } }: Reading,
  { sittings }: ScheduleMeasure,
  order: ReadonlyMap<number, number>,
  { at, y, low, across }: Uprights & { readonly y: number; readonly across: number },
): readonly Mark[] {
  const size = 0.86 * em;
  const groups: { x: number; right: number; text: string; subject: string | undefined }[] = [];
  for (const { sitting, day } of sittings) {
    if (day === undefined) continue;
    const x = at(day) + Math.min(across, 0.4 * em) / 2;
    const text = String((order.get(sitting) ?? 0) + 1);
    const last = groups.at(-1);
    if (last !== undefined && x < last.right + 0.25 * em) {
      last.text = `${last.text.split('–')[0]}–${text}`;
      last.right = last.x + BOLD_WIDTH * textWidth(last.text, size);
      continue;
    }
    groups.push({
      x,
      right: x + BOLD_WIDTH * textWidth(text, size),
      text,
      subject: subjects.sittings[sitting],
    });
  }
  return [
    ...sittings.flatMap(({ sitting, day }) =>
      day === undefined
        ? []
        : [
            pathMark(
              `calendar:sitting:${sitting}`,
              linePath([
                { x: at(day), y: y + 0.3 * em },
                { x: at(day), y: low },
              ]),
              {
                stroke: { ink: 'quiet', weight: 'hair', dash: 'dotted' },
                subject: subjects.sittings[sitting],
              },
            ),
          ],
    ),
    ...groups.map(({ x, text, subject }, index) =>
      textMark(`calendar:sitting:number:${index}`, text, x, y + 0.05 * em, {
        size,
        ink: 'ink',
        face: 'strong',
        anchor: 'start',
        subject,
      }),
    ),
  ];
}

/** Days that the painter says are taken. */
function awayMarks(
  { plan, measures, layout: { em } }: Reading,
  { from, to }: Span,
  { at, top, low, across }: Uprights & { readonly top: number; readonly across: number },
): readonly Mark[] {
  const size = 0.78 * em;
  const due = measures.schedule?.due?.day;
  const isAtDue = (x: number) => due !== undefined && Math.abs(x - at(due + 1)) < 5 * em;
  return plan.away.flatMap(({ value }, index): Mark[] => {
    const first = dayOf(value.from);
    const last = dayOf(value.to);
    if (first === undefined || last === undefined || last < from || first > to) return [];
    const left = at(Math.max(from, first));
    const width = at(Math.min(to, last) + 1) - left;
    const tip = `Away from ${shortDate(first)} to ${shortDate(last)}.`;
    return [
      pathMark(
        `calendar:away:${index}`,
        rectanglePath({ x: left, y: top, width: Math.max(width, 0.3 * across), height: low - top }),
        { fill: 'track', stroke: { ink: 'rule', weight: 'hair', dash: 'dotted' }, tip },
      ),
      // Below the rows, where nothing else stands but the due date.
      ...(textWidth('away', size) <= width + 1.6 * em && !isAtDue(left + width / 2)
        ? [
            textMark(`calendar:away:${index}:label`, 'away', left + width / 2, low + 1.1 * em, {
              size,
              ink: 'quiet',
              face: 'note',
              anchor: 'middle',
            }),
          ]
        : []),
    ];
  });
}

/** The day on which the work is to be ready, as a line through all rows. */
function dueMarks(
  { layout: { em } }: Reading,
  { due }: ScheduleMeasure,
  { from, to }: Span,
  { at, y, low, x, width }: Uprights & { readonly y: number; readonly x: number; readonly width: number },
): readonly Mark[] {
  if (due === undefined || due.day < from || due.day > to) return [];
  const size = 0.82 * em;
  const label = `due ${dayAndMonth(due.day)}`;
  const wide = BOLD_WIDTH * textWidth(label, size);
  return [
    pathMark(
      'calendar:due',
      linePath([
        { x: at(due.day + 1), y },
        { x: at(due.day + 1), y: low + 0.3 * em },
      ]),
      {
        stroke: { ink: 'wanted', weight: 'heavy' },
        tip: `Due on ${shortDate(due.day)}.`,
      },
    ),
    textMark(
      'calendar:due:label',
      label,
      Math.max(x, Math.min(x + width - wide, at(due.day + 1) - wide / 2)),
      low + 1.1 * em,
      { size, ink: 'ink', face: 'strong' },
    ),
  ];
}
