import { dayOf } from '../../measure/sittings/days.js';
import type { Plan, Sitting } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { dayInWords, daysInWords } from '../words/days.js';
import { quoted } from '../words/words.js';
import {
  type Change,
  type Compared,
  byKey,
  calledIn,
  changeOf,
  comeAndGone,
  nowCalled,
  places,
} from './change.js';
import { said } from './wording.js';

/** What differs in the sittings, the due date and the days that are taken. */
export function sittingChanges({ earlier, later, objects }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  const sittings = byKey(before.sittings, now.sittings, ({ title }) => title.trim());
  return [
    ...comeAndGone('sittings', sittings, {
      new: ({ title, date }) => `The sitting ${said(title)} is new${onDay(date)}.`,
      gone: ({ title }) => `The sitting ${said(title)} is gone.`,
    }),
    ...sittings.both.flatMap(([old, sitting]) => [
      ...heldChanges(old, sitting),
      ...workChanges(old, sitting, { earlier, later, objects }),
    ]),
    ...dayChange('The picture is due', before.due, now.due),
    ...changeOf(
      'sittings',
      [away(before), away(now)],
      {
        new: (days) => `Days are taken now: ${days}.`,
        gone: (days) => `No days are taken any more; they were ${days}.`,
        changed: (days, old) => `Days are taken: ${days}, no longer ${old}.`,
      },
      places(before.away[0]?.location, now.away[0]?.location),
    ),
  ];
}

function heldChanges(before: Sitting, now: Sitting): readonly Change[] {
  const name = `The sitting ${said(now.title)}`;
  const where = places(before.location, now.location);
  const changed = (
    of: (sitting: Sitting) => string | undefined,
    is: (text: string) => string,
    none: string,
  ): readonly Change[] =>
    changeOf(
      'sittings',
      [of(before), of(now)],
      {
        new: (text) => `${name} ${is(text)} now.`,
        gone: () => `${name} ${none}.`,
        changed: (text, old) => `${name} ${is(text)} instead of ${old}.`,
      },
      where,
    );
  return [
    ...dayChange(
      `${name} is`,
      before.date === undefined ? undefined : { value: before.date, location: before.location },
      now.date === undefined ? undefined : { value: now.date, location: now.location },
    ),
    ...changed(
      ({ layer, body }) => (layer || body ? [layer?.value, body].filter(Boolean).join(', ') : undefined),
      (text) => `lays ${text}`,
      'no longer says its layer',
    ),
    ...changed(
      ({ fatShare }) => fatShare && `${plainNumber(fatShare.value * 100, 1)} % fat`,
      (text) => `has ${text}`,
      'no longer says how fat it is',
    ),
    ...changed(
      ({ filmThickness }) => filmThickness && `${plainNumber(filmThickness.value, 3)} mm`,
      (text) => `lays a film of ${text}`,
      'lays the usual film again',
    ),
    ...changed(
      ({ medium }) => medium?.value,
      (text) => `uses ${text}`,
      'uses the medium of the canvas again',
    ),
    ...changed(
      ({ tasks }) => (tasks.length === 0 ? undefined : inWords(tasks.map(({ value }) => said(value)))),
      (text) => `has to do: ${text}`,
      'has no task any more',
    ),
  ];
}

/** Which objects a sitting works on besides, and on which no longer. */
function workChanges(
  before: Sitting,
  now: Sitting,
  compared: Pick<Compared, 'earlier' | 'later' | 'objects'>,
): readonly Change[] {
  const [was, is] = [before.works.map(nowCalled(compared)), now.works.map(calledIn(compared.later.plan))];
  const more = is.filter((name) => !was.includes(name)).map(quoted);
  const less = was.filter((name) => !is.includes(name)).map(quoted);
  const told = [
    ...(more.length === 0 ? [] : [`works on ${inWords(more)} too`]),
    ...(less.length === 0 ? [] : [`no longer works on ${inWords(less)}`]),
  ];
  if (told.length === 0) return [];
  const message = `The sitting ${said(now.title)} ${inWords(told)}.`;
  return [{ topic: 'sittings', kind: 'changed', message, ...places(before.location, now.location) }];
}

/** `The picture is due 5 days later: on 3 March 2027.` */
function dayChange(what: string, before: Plan['due'], now: Plan['due']): readonly Change[] {
  const where = places(before?.location, now?.location);
  const [from, to] = [before && dayOf(before.value), now && dayOf(now.value)];
  if (from !== undefined && to !== undefined && from !== to) {
    const message = `${what} ${daysInWords(Math.abs(to - from))} ${to > from ? 'later' : 'sooner'}: on ${dayInWords(to)} instead of ${dayInWords(from)}.`;
    return [{ topic: 'sittings', kind: 'moved', message, ...where }];
  }
  return changeOf(
    'sittings',
    [before?.value, now?.value],
    {
      new: (day) => `${what}${onDay(day)}, which is new.`,
      gone: (day) => `${what} no longer${onDay(day)}.`,
      changed: (day, old) => `${what}${onDay(day)} instead of ${old}.`,
    },
    where,
  );
}

function onDay(date: string | undefined): string {
  const day = date === undefined ? undefined : dayOf(date);
  return day === undefined ? '' : ` on ${dayInWords(day)}`;
}

function away({ away: stretches }: Plan): string | undefined {
  return stretches.length === 0
    ? undefined
    : inWords(stretches.map(({ value: { from, to } }) => (from === to ? from : `${from} to ${to}`)));
}
