import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';
import { cells } from './display.js';
import { scheduleSchema } from './schema/schedule.js';

const PLAN = `plan    "Two pears"
canvas  40 x 30 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (40, 30)
  value   4
object  pears, dominant
  shape   circle 9 at (28, 18)
  value   2
object  stalk
  shape   rectangle 1 x 3 at (28, 12)
  value   1
sitting "Lay in" on 2027-03-01
  works   wall, pears
  layer   block-in, lean
  task    "leave the lights"
sitting "Body colour" on 2027-03-03
  works   pears
  film    0.3 mm
sitting "Look"
due     2027-03-20
away    2027-03-04 to 2027-03-05
`;

describe('mahlstick schedule', () => {
  it('tells the sittings in a painter’s words', async () => {
    const { code, output, complaints } = await session(['schedule', '-'], PLAN);
    // A block-in of 0.09 mm takes 3 days, so until the 4th, and the next free day is the 6th; a film of 0.3 mm takes
    // 10: the 13th. Worked back from the 20th: the 10th, and 3 days before that the 7th.
    expect(output).toBe(`Two pears

Sittings
  Mon 1 Mar 2027   Lay in
                   block-in, 5 % fat (usual), 0.09 mm (usual)
                   works wall, pears
                   leave the lights
                   dry to the touch on Thu 4 Mar 2027
                   on Sun 7 Mar 2027 at the latest: six days to spare
  Wed 3 Mar 2027   Body colour
                   body colour (usual), 10 % fat (usual), 0.3 mm
                   works pears
                   dry to the touch on Sat 13 Mar 2027
                   on Wed 10 Mar 2027 at the latest: seven days to spare
  no day           Look
                   works on nothing
                   on Sat 20 Mar 2027 at the latest

When
  dry to the touch     Sat 13 March 2027
  must be ready        Sat 20 March 2027
  start at the latest  Sun 7 March 2027
  varnish from         Fri 3 September 2027
  six days to spare
  never painted: stalk

What to look at
  hint: “Body colour” on 3 March 2027 goes over “Lay in”, which is not dry to
        the touch before 4 March 2027, one day later: on \`pears\`. The plan has
        no palette, so a usual paint is counted: three days in a film of 0.09
        mm.
    Try: Hold it on 6 March 2027 or later.
  hint: \`stalk\` is 0.2 % of the picture, and no sitting paints it.
    Try: Add it to what is worked on in “Lay in”.
  hint: “Look” works on nothing, and nothing is to be done in it.
    Try: Let it work on \`stalk\`, which no sitting paints.
  hint: “Look” has no day, so nothing tells whether what it lays is laid on dry
        paint.
    Try: Give it one, such as \`on 2027-03-06\`, when everything below it is dry.
`);
    expect([code, complaints]).toEqual([0, []]);
  });

  it('keeps to 80 columns, whatever is written', async () => {
    const long = PLAN.replaceAll('pears', 'pears-on-a-plate-of-blue-and-white').replace(
      'leave the lights',
      'leave the lights until the last hour of the day, and then only those that the window gives; 光をのこす 静物',
    );
    const { output } = await session(['schedule', '-'], long);
    for (const line of output.split('\n')) expect(cells(line)).toBeLessThanOrEqual(80);
  });

  it('says when as planned it is too late', async () => {
    const { output } = await session(['schedule', '-'], PLAN.replace('2027-03-20', '2027-03-11'));
    // Body colour on the 3rd is dry on the 13th. Its latest day is the 1st, and 3 days before that 26 February.
    expect(output).toContain('on Mon 1 Mar 2027 at the latest: two days too late');
    expect(output).toContain('  as planned three days too late; held by its latest days it is ready\n');
    expect(output).toContain('  start at the latest  Fri 26 February 2027\n');
  });

  it('tells nothing of a finding that the plan sets aside', async () => {
    const aside = `${PLAN}allow   over wet paint for pears because "wet in wet"\n`;
    expect((await session(['schedule', '-'], aside)).output).not.toContain('not dry to the touch before');
  });

  it('says so when there are none', async () => {
    const { code, output } = await session(['schedule', '-'], 'canvas  40 x 30 cm\n');
    expect([code, output]).toEqual([0, 'Untitled plan\nNo sittings are planned.\n']);
  });

  it('prints what its schema says', async () => {
    const { output } = await session(['schedule', '--json', '-'], PLAN);
    const document = v.parse(scheduleSchema, JSON.parse(output));
    expect(document).toMatchObject({
      title: 'Two pears',
      sittings: [
        {
          title: 'Lay in',
          date: '2027-03-01',
          weekday: 'Monday',
          works: ['wall', 'pears'],
          dryOn: '2027-03-04',
          slackDays: 6,
        },
        { title: 'Body colour', readyFrom: '2027-03-04', latest: '2027-03-10', filmMillimetres: 0.3 },
        { title: 'Look', idle: true },
      ],
      conflicts: [
        { kind: 'not dry', object: 'pears', below: 0, above: 1, missingDays: 1, from: '2027-03-06' },
      ],
      neverWorked: ['stalk'],
      due: { date: '2027-03-20', weekday: 'Saturday', latestStart: '2027-03-07', slackDays: 6 },
    });
  });

  it('writes a calendar to a file, or to the standard output', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-schedule-'));
    try {
      writeFileSync(path.join(folder, 'pears.mahl'), PLAN);
      const written = await session(['schedule', 'pears.mahl', '-o', 'pears.ics'], '', folder);
      expect(written).toEqual({ code: 0, output: '', complaints: [], errors: '' });
      const printed = await session(['schedule', 'pears.mahl', '-o', '-'], '', folder);
      expect(readFileSync(path.join(folder, 'pears.ics'), 'utf8')).toBe(printed.output);
      expect(printed.output).toContain('DTSTART;VALUE=DATE:20270303\r\n');
      expect(printed.output).toContain('DTSTAMP:20261130T080509Z\r\n');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('tells of what it can read of a plan with errors', async () => {
    const { code, output, complaints } = await session(
      ['schedule', '-'],
      PLAN.replace('2027-03-03', '2027-02-30'),
    );
    expect(code).toBe(1);
    expect(output).toContain('no day           Body colour');
    expect(complaints.join()).toContain("has 1 error; what can't be read is left out");
  });

  it.each([
    [['schedule', '-', '-o', 'plan.pdf'], 'plan.pdf ends in .pdf; a calendar is written as .ics.'],
    [['schedule', '-', '-o', 'plan'], 'plan has no ending; a calendar is written as .ics.'],
    [['schedule', '-', '--json', '-o', 'plan.ics'], 'give one of them'],
  ])('ends %j with 2', async (words, said) => {
    const { code, output, complaints } = await session(words, PLAN);
    expect([code, output]).toEqual([2, '']);
    expect(complaints.join('\n')).toContain(said);
  });

  it('has nothing to put into a calendar where no sitting has a day', async () => {
    const { code, complaints } = await session(['schedule', '-', '-o', '-'], 'sitting "Some day"\n');
    expect(code).toBe(2);
    expect(complaints.join()).toContain('plans nothing on any day');
  });
});
