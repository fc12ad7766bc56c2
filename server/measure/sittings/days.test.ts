import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayOf,
  FIRST_DAY,
  isoOf,
  LAST_DAY,
  latestMonthsBefore,
  monthsOn,
  TakenDays,
  weekdayOf,
} from './days.js';

const anyDay = fc.integer({ min: FIRST_DAY, max: LAST_DAY });

function on(iso: string): number {
  const day = dayOf(iso);
  if (day === undefined) throw new Error(iso);
  return day;
}

describe('a day', () => {
  it('has a number, counted from the first of 1970', () => {
    // 365 days, then 366 in the leap year 1972.
    expect(['1970-01-01', '1971-01-01', '1973-01-01'].map(on)).toEqual([0, 365, 1096]);
    expect([on('0000-01-01'), on('9999-12-31')]).toEqual([FIRST_DAY, LAST_DAY]);
  });

  it('is there in the calendar, or it is none', () => {
    // 2000 is a leap year, 1900 and 2027 are none.
    expect(['2028-02-29', '2000-02-29'].map((iso) => dayOf(iso) !== undefined)).toEqual([true, true]);
    const none = [
      '2027-02-29',
      '1900-02-29',
      '2027-02-30',
      '2027-13-01',
      '2027-00-10',
      '2027-04-31',
      'soon',
      '',
    ];
    expect(none.map(dayOf)).toEqual(none.map(() => undefined));
  });

  it('is written as it was read', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        expect(dayOf(isoOf(day))).toBe(day);
      }),
    );
  });

  it('follows the day before, over the end of a leap February and where clocks are changed', () => {
    expect(on('2028-03-01') - on('2028-02-28')).toBe(2);
    expect(on('2027-03-01') - on('2027-02-28')).toBe(1);
    // Clocks go forward on 28 March 2027 in Europe, on 14 March in America, and back in autumn.
    expect(on('2027-03-29') - on('2027-03-27')).toBe(2);
    expect(on('2027-03-15') - on('2027-03-13')).toBe(2);
    expect(on('2027-11-01') - on('2027-10-30')).toBe(2);
  });

  it('is the same wherever the clock stands', () => {
    const zone = process.env['TZ'];
    const seen = ['UTC', 'Pacific/Kiritimati', 'America/Anchorage', 'Europe/Athens'].map((name) => {
      process.env['TZ'] = name;
      return [
        on('2027-03-28'),
        isoOf(on('2027-10-31')),
        weekdayOf(on('2027-03-28')),
        monthsOn(on('2027-03-28'), 7),
      ];
    });
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
    expect(new Set(seen.map((each) => JSON.stringify(each))).size).toBe(1);
  });

  it('has its weekday', () => {
    // 1 January 2000 was a Saturday (any calendar).
    expect([weekdayOf(on('2000-01-01')), weekdayOf(on('1970-01-01')), weekdayOf(on('1969-12-28'))]).toEqual([
      6, 4, 0,
    ]);
  });
});

describe('months', () => {
  it('lead to the same day of the month, or to its last', () => {
    const six = (iso: string): string => isoOf(monthsOn(on(iso), 6));
    expect(['2027-01-11', '2026-08-31', '2027-08-31', '2027-12-31'].map(six)).toEqual([
      '2027-07-11',
      '2027-02-28',
      '2028-02-29',
      '2028-06-30',
    ]);
  });

  it('lead back to the last day from which they lead no further', () => {
    // From 28, 29, 30 and 31 August half a year leads to the last of February.
    expect(isoOf(latestMonthsBefore(on('2027-02-28'), 6))).toBe('2026-08-31');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50_000 }), fc.integer({ min: 1, max: 12 }), (day, months) => {
        const latest = latestMonthsBefore(day, months);
        expect(monthsOn(latest, months)).toBeLessThanOrEqual(day);
        expect(monthsOn(latest + 1, months)).toBeGreaterThan(day);
      }),
    );
  });
});

describe('days that are taken', () => {
  const stretches = fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 12 }))
      .map(([from, more]) => ({ from, to: from + more })),
    { maxLength: 12 },
  );

  it('are those that a stretch holds, however they lie in each other', () => {
    fc.assert(
      fc.property(stretches, fc.integer({ min: -5, max: 80 }), (all, day) => {
        const holding = new TakenDays(all).holding(day);
        const holds = all.map(({ from, to }) => from <= day && day <= to);
        expect(holding === undefined).toBe(!holds.includes(true));
        if (holding !== undefined) expect(holds[holding]).toBe(true);
      }),
    );
  });

  it('are gone past to the nearest free day either way', () => {
    fc.assert(
      fc.property(stretches, fc.integer({ min: -5, max: 80 }), (all, day) => {
        const taken = new TakenDays(all);
        const free = (one: number): boolean => !all.some(({ from, to }) => from <= one && one <= to);
        let [after, before] = [day, day];
        while (!free(after)) after++;
        while (!free(before)) before--;
        expect([taken.nextFree(day), taken.previousFree(day)]).toEqual([after, before]);
      }),
    );
  });
});
