import { dayInWords, daysInWords, weekdayAndDay } from '../../findings/words/days.js';
import { objectsNamed, restsOn } from '../../findings/words/layers.js';
import { percent } from '../../findings/words/words.js';
import type { Coat, DueMeasure, ScheduledSitting, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';

/** The sitting whose block a line of the plan's own text is in, by its index; -1 for none. */
export function sittingOn({ sittings }: Plan, line: number): number {
  return sittings.findIndex(({ lines }) => lines && lines.first <= line && line <= lines.last);
}

/** Day, layer, what it works on, when it is dry, and how late it can be held. */
export function sittingFigures({ plan, measures }: Snapshot, line: number, style: Style): Paragraphs {
  const { schedule } = measures;
  const at = sittingOn(plan, line);
  const scheduled = schedule?.sittings.find(({ sitting }) => sitting === at);
  if (schedule === undefined || scheduled === undefined) return [];
  const { day, works } = scheduled;
  return [
    ...(day === undefined ? [] : [`${weekdayAndDay(day)}.`]),
    laidInWords(scheduled),
    ...(works.length === 0 ? ['It works on nothing.'] : [`It works on ${objectsNamed(plan, works)}.`]),
    ...dryInWords(scheduled),
    ...slowestLayer(plan, schedule, scheduled),
    ...latestInWords(scheduled),
  ].map((words) => style.text(words.replaceAll('`', '')));
}

/** `Block-in, lean: about 5 % of medium, in a film of 0.1 mm.` */
function laidInWords({ layer, fat, film, fatFrom, filmStated }: ScheduledSitting): string {
  const usual = fatFrom === 'share' && filmStated ? '' : ', by what is usual where the plan says nothing';
  return `${capitalised(layer)}: ${percent(fat)} of oil or medium added, in a film of ${plainNumber(film)} mm${usual}.`;
}

function dryInWords({ dryingDays, dryOn }: ScheduledSitting): readonly string[] {
  if (dryingDays === undefined) return ['When it is dry waits for the mixtures, which are being worked out.'];
  if (dryingDays === 0) return ['What it lays is dry the same day.'];
  return [
    dryOn === undefined
      ? `What it lays is dry to the touch after ${daysInWords(dryingDays)}.`
      : `All of it is dry to the touch on ${weekdayAndDay(dryOn)}, after ${daysInWords(dryingDays)}.`,
  ];
}

/** What the longest of its layers to dry rests on. */
function slowestLayer(
  plan: Plan,
  schedule: ScheduleMeasure,
  { sitting }: ScheduledSitting,
): readonly string[] {
  let slowest: Coat | undefined;
  for (const { coats } of schedule.objects)
    for (const coat of coats)
      if (coat.sitting === sitting && (coat.days ?? 0) > (slowest?.days ?? 0)) slowest = coat;
  return slowest === undefined ? [] : [restsOn(plan, slowest)];
}

function latestInWords({ latest, slack }: ScheduledSitting): readonly string[] {
  if (latest === undefined || slack === undefined) return [];
  const until = weekdayAndDay(latest);
  return [
    slack < 0
      ? `To be ready on the due date it ought to have been held by ${until}, ${daysInWords(-slack)} earlier.`
      : slack === 0
        ? 'It can be held no later: the due date is met to the day.'
        : `It can be put off until ${until}, by ${daysInWords(slack)}, and the due date is met.`,
  ];
}

/** The day the picture is to be ready, and what it leaves. */
export function dueFigures({ measures: { schedule } }: Snapshot, style: Style): Paragraphs {
  const due = schedule?.due;
  return due === undefined ? [] : dueInWords(due).map((words) => style.text(words));
}

function dueInWords({ day, readyOn, latestStart, slack }: DueMeasure): readonly string[] {
  return [
    `${weekdayAndDay(day)}.`,
    ...(readyOn === undefined ? [] : [`The picture is dry to the touch on ${dayInWords(readyOn)}.`]),
    ...(latestStart === undefined || slack === undefined
      ? []
      : [
          slack < 0
            ? `The first sitting ought to have been on ${dayInWords(latestStart)}: ${daysInWords(-slack)} are missing.`
            : `The first sitting can be on ${dayInWords(latestStart)} at the latest: ${slack === 0 ? 'no day' : daysInWords(slack)} to spare.`,
        ]),
  ];
}
