import type { Finding } from '../findings/finding.js';
import { dayInWords, daysInWords } from '../findings/words/days.js';
import { shortDate } from '../drawing/sittings/dates.js';
import { dayOf } from '../measure/sittings/days.js';
import { smallestOf } from '../plan/extremes.js';
import { inks, shown, table, type Inks } from './display.js';
import { figure } from './measure-figures.js';
import type { ScheduleDocument } from './schema/schedule.js';
import { findingsText, section } from './sections.js';
import { wrapped } from './wrapped.js';

type Held = ScheduleDocument['sittings'][number];

/** The sittings of a plan in time, for people, in 80 columns; with what is found in them. */
export function scheduleText(
  document: ScheduleDocument,
  findings: readonly Finding[],
  coloured: boolean,
): string {
  const ink = inks(coloured);
  const { sittings, title } = document;
  if (sittings.length === 0)
    return `${ink.strong(shown(title ?? 'Untitled plan'))}\nNo sittings are planned.\n`;
  return [
    `${ink.strong(shown(title ?? 'Untitled plan'))}\n`,
    ...section('Sittings', sittings.map((held) => sittingText(held, ink)).join(''), ink),
    ...section('When', datesText(document), ink),
    ...section('What to look at', findingsText('sittings', findings, ink), ink),
  ].join('\n');
}

/** Behind the day, under each other: title, layer, what is worked on, what is to be done, when it is dry. */
function sittingText(held: Held, ink: Inks): string {
  const { date, title, works, tasks, idle } = held;
  const day = date === undefined ? 'no day' : said(date);
  const gutter = `  ${day.padEnd(DAY_WIDTH)}  `;
  const under = ' '.repeat(gutter.length);
  const rest = [
    laidText(held),
    ...(works.length > 0 ? [`works ${works.map(shown).join(', ')}`] : []),
    ...tasks.map((task) => shown(task)),
    ...(idle ? ['works on nothing'] : []),
    ...(held.taken ? ['on a day that is taken'] : []),
    ...timesText(held),
  ].filter((line) => line !== '');
  const head = wrapped(shown(title), gutter);
  return (
    `${head.slice(0, gutter.length)}${ink.strong(head.slice(gutter.length).trimEnd())}\n` +
    rest.map((line) => wrapped(line, under)).join('')
  );
}

/** As wide as the longest day: `Wed 30 Sep 2027`. */
const DAY_WIDTH = 15;

function said(date: string): string {
  const day = dayOf(date);
  return day === undefined ? date : shortDate(day);
}

function laidText({
  layer,
  layerStated,
  varnish,
  fat,
  fatFrom,
  filmMillimetres,
  filmStated,
  binder,
  works,
}: Held): string {
  if (works.length === 0) return '';
  if (varnish) return varnish === 'retouch' ? 'retouch varnish' : 'varnish';
  const oil = binder === 'oil' || binder === 'alkyd';
  return [
    layerStated ? layer : `${layer} (usual)`,
    ...(binder === 'oil' ? [] : [binder]),
    ...(oil ? [`${figure(fat * 100, 1)} % fat${fatFrom === 'share' ? '' : ' (usual)'}`] : []),
    `${figure(filmMillimetres)} mm${filmStated ? '' : ' (usual)'}`,
  ].join(', ');
}

function timesText({ dryOn, works, latest, slackDays, date, dryingDays }: Held): readonly string[] {
  const dry =
    dryOn !== undefined
      ? [dryOn === date ? 'dry on the same day' : `dry to the touch on ${said(dryOn)}`]
      : works.length > 0 && dryingDays !== undefined
        ? [`dry to the touch after ${daysInWords(dryingDays)}`]
        : [];
  return [...dry, ...(latest === undefined ? [] : [latestText(latest, slackDays)])];
}

function latestText(latest: string, slack: number | undefined): string {
  const day = `on ${said(latest)} at the latest`;
  if (slack === undefined) return day;
  if (slack < 0) return `${day}: ${daysInWords(-slack)} too late`;
  return slack === 0 ? `${day}: no day to spare` : `${day}: ${daysInWords(slack)} to spare`;
}

function datesText({ dryOn, due, varnishFrom, neverWorked, sittings }: ScheduleDocument): string {
  const isVarnished = sittings.some(({ varnish }) => varnish === 'final');
  const slack = sittings.flatMap(({ slackDays }) => slackDays ?? []);
  const rows = [
    ['dry to the touch', dryOn],
    ['must be ready', due?.date],
    ['start at the latest', due?.latestStart],
    ['varnish from', isVarnished ? undefined : varnishFrom],
  ].flatMap(([name = '', date]) => (date === undefined ? [] : [[name, full(date)]]));
  return (
    table(rows, ['left', 'left'], '  ') +
    (slack.length === 0 ? '' : wrapped(slackText(smallestOf(slack)), '  ')) +
    (neverWorked.length === 0 ? '' : wrapped(`never painted: ${neverWorked.map(shown).join(', ')}`, '  '))
  );
}

/** By the sitting that has least time. */
function slackText(days: number): string {
  if (days < 0) return `as planned ${daysInWords(-days)} too late; held by its latest days it is ready`;
  return days === 0 ? 'no day to spare' : `${daysInWords(days)} to spare`;
}

function full(date: string): string {
  const day = dayOf(date);
  return day === undefined ? date : `${shortDate(day).slice(0, 3)} ${dayInWords(day)}`;
}
