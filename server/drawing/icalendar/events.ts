import { dayInWords } from '../../findings/words/days.js';
import type { ScheduledSitting, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import type { CalendarEvent } from './write.js';

/**
 * What of a plan a painter wants in a calendar, in the order of the days: each sitting with what is to be done, when
 * the picture is dry to the touch, when it must be ready, and from when on it may be varnished when no sitting does.
 * Sittings take the day; the other events leave it free. Sittings without a day are left out.
 *
 * @param file the name of the plan's file, by which a plan without a title is known
 */
export function calendarEvents(
  plan: Plan,
  schedule: ScheduleMeasure,
  file: string,
): readonly CalendarEvent[] {
  const title = plan.title?.value.trim();
  const picture = title === undefined || title === '' ? file : title;
  const told = new Map<string, number>();
  const sittings = schedule.sittings.flatMap((scheduled): readonly CalendarEvent[] => {
    const sitting = plan.sittings[scheduled.sitting];
    if (!sitting || scheduled.day === undefined) return [];
    const summary = `${picture}: ${sitting.title.trim()}`;
    // Of several sittings under one title each keeps its own event.
    const times = (told.get(summary) ?? 0) + 1;
    told.set(summary, times);
    return [
      {
        identity: ['sitting', picture, sitting.title.trim(), String(times)],
        day: scheduled.day,
        summary,
        description: description(plan, scheduled),
        isBusy: true,
      },
    ];
  });
  return [...sittings, ...milestones(plan, schedule, picture)].toSorted((one, other) => one.day - other.day);
}

function milestones(plan: Plan, schedule: ScheduleMeasure, picture: string): readonly CalendarEvent[] {
  const { dryOn, due, varnishFrom, sittings } = schedule;
  const event = (kind: string, day: number, words: string, ...lines: readonly string[]): CalendarEvent => ({
    identity: [kind, picture],
    day,
    summary: `${picture}: ${words}`,
    description: lines.join('\n'),
    isBusy: false,
  });
  const isVarnished = sittings.some(({ varnish }) => varnish === 'final');
  return [
    ...(dryOn === undefined ? [] : [event('dry', dryOn, 'dry to the touch')]),
    ...(due ? [event('due', due.day, 'must be ready', ...dueLines(due))] : []),
    ...(varnishFrom === undefined || isVarnished
      ? []
      : [
          event(
            'varnish',
            varnishFrom,
            'may be varnished from today',
            'Six months after the last oil paint, or when other paint is dry: common practice.',
          ),
        ]),
  ];
}

function dueLines({ day, readyOn }: NonNullable<ScheduleMeasure['due']>): readonly string[] {
  if (readyOn === undefined) return [];
  return readyOn <= day
    ? [`Dry to the touch by ${dayInWords(readyOn)}.`]
    : [`As planned it is dry to the touch only on ${dayInWords(readyOn)}.`];
}

function description({ objects, sittings }: Plan, scheduled: ScheduledSitting): string {
  const { layer, layerStated, fat, fatFrom, works, dryOn, latest, slack, sitting: index } = scheduled;
  const { tasks = [], notes = [], medium, body } = sittings[index] ?? {};
  const share = fatFrom === 'share' ? `, ${plainNumber(fat * 100, 1)} % added oil or medium` : '';
  const names = works.map((object) => objects[object]?.name ?? '');
  return [
    ...tasks.map(({ value }) => `- ${value}`),
    ...(layerStated ? [`Layer: ${layer}${body === undefined ? '' : `, ${body}`}${share}`] : []),
    ...(medium ? [`Medium: ${medium.value}`] : []),
    ...(names.length === 0
      ? []
      : [`Works on: ${names.length === objects.length ? 'everything' : names.join(', ')}`]),
    ...notes.map(({ value }) => value),
    ...(dryOn === undefined ? [] : [`Dry to the touch on ${dayInWords(dryOn)}.`]),
    ...(latest === undefined || (slack ?? -1) < 0 ? [] : [`Can be held until ${dayInWords(latest)}.`]),
  ].join('\n');
}
