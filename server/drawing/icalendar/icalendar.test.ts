import fc from 'fast-check';
import ICAL from 'ical.js';
import { afterEach, describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import { dayOf, FIRST_DAY, LAST_DAY } from '../../measure/sittings/days.js';
import { calendarEvents } from './events.js';
import { type CalendarEvent, iCalendar } from './write.js';

const now = new Date('2026-11-30T08:05:09.123Z');
const PLAN = `plan    "Quinces; pan, cloth"
canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle upper left corner to lower right corner
  value   4
object  jug
  shape   circle 10 at (20, 20)
  value   2
sitting "Lay in" on 2027-03-27
  works   wall, jug
  layer   block-in, lean
  fat     5%
  medium  turpentine
  task    "two values only"
  task    "keep the ground; no white"
sitting "Body" on 2028-02-29
  works   jug
sitting "Body" on 2028-03-20
  works   jug
sitting "Some day"
  task    "frame"
due     2028-04-01
`;

function calendarOf(text: string, file = 'quinces.mahl'): string {
  const { plan, measures } = checked(text);
  const { schedule } = measures;
  if (!schedule) throw new Error('no sittings');
  return iCalendar(calendarEvents(plan, schedule, file), { name: plan.title?.value ?? file, now });
}

/** As an independent reader sees it. */
function read(calendar: string): readonly ICAL.Event[] {
  const component = new ICAL.Component(ICAL.parse(calendar) as unknown[]);
  return component.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}

const zone = process.env['TZ'];

afterEach(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

describe('the calendar of a plan', () => {
  it('has its sittings, when it is dry, when it must be ready and when it may be varnished', () => {
    const events = read(calendarOf(PLAN));
    // Body colour takes 5 days: 25 March. Half a year after 20 March 2028: 20 September.
    expect(events.map(({ startDate, summary }) => [startDate.toString(), summary])).toEqual([
      ['2027-03-27', 'Quinces; pan, cloth: Lay in'],
      ['2028-02-29', 'Quinces; pan, cloth: Body'],
      ['2028-03-20', 'Quinces; pan, cloth: Body'],
      ['2028-03-25', 'Quinces; pan, cloth: dry to the touch'],
      ['2028-04-01', 'Quinces; pan, cloth: must be ready'],
      ['2028-09-20', 'Quinces; pan, cloth: may be varnished from today'],
    ]);
    expect(events.map(({ component }) => component.getFirstPropertyValue('transp'))).toEqual([
      'OPAQUE',
      'OPAQUE',
      'OPAQUE',
      'TRANSPARENT',
      'TRANSPARENT',
      'TRANSPARENT',
    ]);
  });

  it('says what is to be done', () => {
    // Worked back from 1 April 2028: body colour by 27 March, then by the 22nd, the block-in 3 days before that.
    expect(read(calendarOf(PLAN))[0]?.description.split('\n')).toEqual([
      '- two values only',
      '- keep the ground; no white',
      'Layer: block-in, lean, 5 % added oil or medium',
      'Medium: turpentine',
      'Works on: everything',
      'Dry to the touch on 30 March 2027.',
      'Can be held until 19 March 2028.',
    ]);
  });

  it('leaves out when it may be varnished where a sitting does that', () => {
    const varnished = `${PLAN}sitting "Varnish" on 2028-10-01\n  layer   varnish\n`;
    expect(calendarOf(varnished)).not.toContain('may be varnished');
    expect(calendarOf(varnished.replace('"Varnish"', '"Retouch varnish"'))).toContain('may be varnished');
  });

  it('has one event for each sitting, which stays the same when it is moved and when others are', () => {
    const ids = (text: string) => read(calendarOf(text)).map(({ uid }) => uid);
    const usual = ids(PLAN);
    expect(new Set(usual).size).toBe(6);
    expect(ids(PLAN.replace('2027-03-27', '2027-03-28').replace('2028-02-29', '2028-03-01'))).toEqual(usual);
    expect(ids(PLAN.replace('"Lay in"', '"Lay it in"'))[0]).not.toBe(usual[0]);
    expect(ids(PLAN.replace('"Quinces; pan, cloth"', '"Quinces"'))[0]).not.toBe(usual[0]);
  });

  it('goes by the file where the plan has no title', () => {
    const [first] = read(calendarOf(PLAN.replace(/^plan.*\n/u, ''), 'still life.mahl'));
    expect(first?.summary).toBe('still life.mahl: Lay in');
  });

  it.each([
    'UTC',
    'Pacific/Kiritimati',
    'Pacific/Pago_Pago',
    'Europe/Athens',
    'America/New_York',
    'Asia/Kolkata',
  ])('has whole days in %s, also when clocks are changed', (name) => {
    process.env['TZ'] = name;
    // Clocks are changed on 28 March 2027 in Europe, on 14 March in America.
    const text = PLAN.replace('2028-02-29', '2027-03-28').replace('2028-03-20', '2027-03-14');
    const events = read(calendarOf(text));
    expect(events.slice(0, 3).map(({ startDate }) => startDate.toString())).toEqual([
      '2027-03-14',
      '2027-03-27',
      '2027-03-28',
    ]);
    for (const { startDate, endDate } of events) {
      expect([startDate.isDate, endDate.isDate]).toEqual([true, true]);
      expect(endDate.subtractDate(startDate).toSeconds()).toBe(86_400);
      const local = startDate.toJSDate();
      expect([local.getFullYear(), local.getMonth() + 1, local.getDate(), local.getHours()]).toEqual([
        startDate.year,
        startDate.month,
        startDate.day,
        0,
      ]);
    }
    expect(events[0]?.component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-11-30T08:05:09Z');
  });
});

describe('iCalendar', () => {
  const event: fc.Arbitrary<CalendarEvent> = fc.record({
    identity: fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1, maxLength: 3 }),
    day: fc.integer({ min: FIRST_DAY, max: LAST_DAY }),
    summary: fc.string({ unit: 'grapheme', maxLength: 200 }),
    description: fc.string({ unit: 'grapheme', maxLength: 400 }),
    isBusy: fc.boolean(),
  });
  /** iCalendar has one break between lines (RFC 5545, section 3.3.11), whatever sign of Unicode it was. */
  const inLines = (text: string) => text.replaceAll(/[\u2028\u2029]/gu, '\n');

  it('is read back as it was meant, whatever the words', () => {
    const aBreak: CalendarEvent = {
      identity: ['a'],
      day: FIRST_DAY,
      summary: 'one\u2028two',
      description: '\u2029',
      isBusy: true,
    };
    fc.assert(
      fc.property(fc.array(event, { maxLength: 4 }), (events) => {
        const calendar = iCalendar(events, { name: 'Any; name, of\nlines', now });
        const back = read(calendar);
        expect(back.map(({ summary }) => summary)).toEqual(events.map(({ summary }) => inLines(summary)));
        expect(back.map(({ description }) => description ?? '')).toEqual(
          events.map((one) => inLines(one.description)),
        );
        expect(back.map(({ startDate }) => dayOf(isoFrom(startDate)))).toEqual(events.map(({ day }) => day));
        expect(back.map(({ uid }) => /^[0-9a-f]{16}@mahlstick$/u.test(uid))).toEqual(events.map(() => true));
      }),
      { examples: [[[aBreak]]] },
    );
  });

  it('has lines of at most 75 octets that end in CR LF, and breaks no character', () => {
    fc.assert(
      fc.property(fc.array(event, { maxLength: 4 }), (events) => {
        const calendar = iCalendar(events, { name: 'Käse, 日本の絵, 🎨'.repeat(20), now });
        expect(calendar.endsWith('\r\n')).toBe(true);
        const lines = calendar.slice(0, -2).split('\r\n');
        for (const line of lines) {
          expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/u);
          expect(Buffer.from(line).toString()).toBe(line);
        }
      }),
    );
  });

  it('keeps controls and half characters out, and line ends as such', () => {
    const [back] = read(
      iCalendar(
        [
          {
            identity: ['a'],
            day: 0,
            summary: 'a\u0000b\u001b[31m',
            description: 'one\r\ntwo\rthree\ud800',
            isBusy: true,
          },
        ],
        { name: 'x', now },
      ),
    );
    expect([back?.summary, back?.description]).toEqual(['ab[31m', 'one\ntwo\nthree\ufffd']);
  });

  it('names an event by what stays the same, everywhere alike', () => {
    // FNV-1a, 64 bits, of ["a"] in UTF-8, worked out by hand from offset basis and prime (FNV, Fowler, Noll and Vo).
    let hash = 0xcbf29ce484222325n;
    for (const octet of Buffer.from('["a"]')) hash = ((hash ^ BigInt(octet)) * 1099511628211n) % 2n ** 64n;
    const calendar = iCalendar([{ identity: ['a'], day: 0, summary: '', description: '', isBusy: true }], {
      name: 'x',
      now,
    });
    expect(calendar).toContain(`UID:${hash.toString(16).padStart(16, '0')}@mahlstick\r\n`);
  });
});

function isoFrom({ year, month, day }: ICAL.Time): string {
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
}

function two(count: number): string {
  return String(count).padStart(2, '0');
}
