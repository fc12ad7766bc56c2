import { expect, it } from 'vitest';
import { dayOf } from '../../measure/sittings/days.js';
import { shortDate, dayAndMonth, ticksBetween } from './dates.js';

const day = (iso: string) => dayOf(iso) ?? Number.NaN;

it.each([
  // Weekdays from a printed calendar: 1 January 2000 was a Saturday, 29 February 2024 a Thursday.
  ['2000-01-01', 'Sat 1 Jan 2000'],
  ['2024-02-29', 'Thu 29 Feb 2024'],
  ['1969-12-31', 'Wed 31 Dec 1969'],
])('%s is said as %s', (iso, words) => {
  expect(shortDate(day(iso))).toBe(words);
});

it('has weeks begin on Mondays', () => {
  const ticks = ticksBetween(day('2027-01-07'), day('2027-02-03'), 5);
  expect(ticks.map(({ label }) => label)).toEqual(['11 Jan', '18 Jan', '25 Jan', '1 Feb']);
  for (const tick of ticks) expect(shortDate(tick.day)).toMatch(/^Mon /);
});

it('names the year where it begins', () => {
  const ticks = ticksBetween(day('2026-11-15'), day('2027-03-15'), 20);
  expect(ticks.map(({ label, year }) => [label, year])).toEqual([
    ['Dec', '2026'],
    ['Jan', '2027'],
    ['Feb', undefined],
    ['Mar', undefined],
  ]);
});

it.each([
  ['2027-01-01', '2027-01-10', 1],
  ['2027-01-01', '2027-06-10', 20],
  ['2020-01-01', '2099-06-10', 900],
  ['0001-01-01', '9999-12-31', 300_000],
])('has ticks from %s to %s that keep %d days apart', (from, to, least) => {
  const ticks = ticksBetween(day(from), day(to), least);
  expect(ticks.length).toBeGreaterThan(1);
  ticks.slice(1).forEach((tick, index) => {
    // The shortest month has 28 days where 30.4 are reckoned with.
    expect(tick.day - (ticks[index]?.day ?? 0)).toBeGreaterThanOrEqual(0.9 * least);
  });
  for (const tick of ticks) expect(tick.day).toBeLessThanOrEqual(day(to));
});

it('says a day without its year where the year is plain', () => {
  expect(dayAndMonth(day('2027-03-01'))).toBe('1 Mar');
});
