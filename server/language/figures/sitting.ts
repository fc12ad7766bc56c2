import { t } from '../../../grammar/index.js';
import { dayInWords, daysInWords, weekdayAndDay } from '../../findings/words/days.js';
import { layerWords, objectsNamed, restsOn } from '../../findings/words/layers.js';
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
    ...(works.length === 0
      ? [t('It works on nothing.')]
      : [t('It works on {0}.', objectsNamed(plan, works))]),
    ...dryInWords(scheduled),
    ...slowestLayer(plan, schedule, scheduled),
    ...latestInWords(scheduled),
  ].map((words) => style.text(words.replaceAll('`', '')));
}

/** `Block-in, lean: about 5 % of medium, in a film of 0.1 mm.` */
function laidInWords({ layer, fat, film, fatFrom, filmStated }: ScheduledSitting): string {
  const told = [capitalised(layerWords(layer)), percent(fat), plainNumber(film)] as const;
  return fatFrom === 'share' && filmStated
    ? t('{0}: {1} of oil or medium added, in a film of {2} mm.', ...told)
    : t(
        '{0}: {1} of oil or medium added, in a film of {2} mm, by what is usual where the plan says nothing.',
        ...told,
      );
}

function dryInWords({ dryingDays, dryOn }: ScheduledSitting): readonly string[] {
  if (dryingDays === undefined)
    return [t('When it is dry waits for the mixtures, which are being worked out.')];
  if (dryingDays === 0) return [t('What it lays is dry the same day.')];
  return [
    dryOn === undefined
      ? t('What it lays is dry to the touch after {0}.', daysInWords(dryingDays))
      : t('All of it is dry to the touch on {0}, after {1}.', weekdayAndDay(dryOn), daysInWords(dryingDays)),
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
      ? t(
          'To be ready on the due date it ought to have been held by {0}, {1} earlier.',
          until,
          daysInWords(-slack),
        )
      : slack === 0
        ? t('It can be held no later: the due date is met to the day.')
        : t('It can be put off until {0}, by {1}, and the due date is met.', until, daysInWords(slack)),
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
    ...(readyOn === undefined ? [] : [t('The picture is dry to the touch on {0}.', dayInWords(readyOn))]),
    ...(latestStart === undefined || slack === undefined
      ? []
      : [
          slack < 0
            ? t(
                'The first sitting ought to have been on {0}: {1} are missing.',
                dayInWords(latestStart),
                daysInWords(-slack),
              )
            : slack === 0
              ? t('The first sitting can be on {0} at the latest: no day to spare.', dayInWords(latestStart))
              : t(
                  'The first sitting can be on {0} at the latest: {1} to spare.',
                  dayInWords(latestStart),
                  daysInWords(slack),
                ),
        ]),
  ];
}
