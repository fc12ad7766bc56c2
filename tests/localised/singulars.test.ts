import { describe, expect, it } from 'vitest';
import { speaking } from '../../grammar/index.js';
import { german } from '../../server/entry/german.js';
import { againstDoubt, doubtInWords } from '../../server/findings/words/photographs.js';
import { checked } from '../support/plan.js';

const { plan } = checked('canvas 40 x 30 cm');

function exposure(stops: number): string {
  const doubt = { about: 'exposure', stops, isGrave: true } as const;
  return `${doubtInWords(plan, doubt)} ${againstDoubt(doubt)}`;
}

/** The last that is told of one rule, with how many there are besides. */
function lastTold(rule: string, text: string): string {
  return (
    checked(text)
      .findings.filter((finding) => finding.rule === rule)
      .at(-1)?.message ?? ''
  );
}

/** Jars that merge with the wall behind them, one finding each. */
function jars(count: number): string {
  const objects = Array.from(
    { length: count },
    (_, n) =>
      `object  jar-${n}, secondary\n  shape   rectangle (${7 * n + 3}, 4) to (${7 * n + 7}, 9)\n  value   4\n  edges   hard`,
  );
  return `canvas  60 x 40 cm\nobject  wall\n  plane   background\n  shape   rectangle (0, 0) to (60, 40)\n  value   4\n${objects.join('\n')}`;
}

const late = (sittings: number): string =>
  `canvas  40 x 30 cm\nobject  jug\n  shape   circle 8 at (20, 15)\n  value   4\n${Array.from(
    { length: sittings },
    (_, n) => `sitting "S${n + 1}" on 2027-03-0${n + 1}\n  works   jug`,
  ).join('\n')}\ndue     2027-03-02`;

function adviceOf(rule: string, text: string): string {
  const found = checked(text).findings.find((finding) => finding.rule === rule);
  return `${found?.advice ?? ''} ${found?.fix?.title ?? ''}`;
}

describe.each([
  [
    'English',
    undefined,
    {
      stop: 'darker than planned by about one stop:',
      again: 'again about one stop lighter',
      stops: 'by about 1.2 stops:',
      more: 'So it is with one more: ',
      moreOf: 'So it is with two more: ',
      day: 'one more on its latest day',
      days: 'two more on their latest days',
    },
  ],
  [
    'German',
    german,
    {
      stop: 'um etwa eine Blende dunkler als geplant:',
      again: 'um etwa eine Blende heller fotografieren',
      stops: 'um etwa 1.2 Blenden ',
      more: 'So ist es noch bei einem weiteren: ',
      moreOf: 'So ist es noch bei zwei weiteren: ',
      day: 'eine weitere an ihrem letzten Tag',
      days: 'zwei weitere an ihren letzten Tagen',
    },
  ],
] as const)('one thing and several are told apart in %s', (_, language, told) => {
  const said = (work: () => string): string => speaking(language, work);

  it('a stop of light', () => {
    expect(said(() => exposure(-1))).toContain(told.stop);
    expect(said(() => exposure(-0.96))).toContain(told.again);
    expect(said(() => exposure(1.2))).toContain(told.stops);
  });

  it('a finding that is left over', () => {
    expect(said(() => lastTold('merged neighbours', jars(4)))).toContain(told.more);
    expect(said(() => lastTold('merged neighbours', jars(5)))).toContain(told.moreOf);
  });

  it('a sitting that is late', () => {
    expect(said(() => adviceOf('past the due date', late(4)))).toContain(told.day);
    expect(said(() => adviceOf('past the due date', late(5)))).toContain(told.days);
  });
});
