import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import { standing } from '../check.js';
import type { Finding } from '../finding.js';

const THINGS = ['wall', 'jug', 'cloth', 'pear', 'knife', 'bowl'];

/** A picture of six things, with whatever comes after them in the text. */
function studio(...lines: readonly string[]): string {
  const objects = THINGS.map(
    (name, i) => `object  ${name}\n  shape   rectangle 8 x 8 at (${6 + 12 * i}, 20)\n  value   3`,
  );
  return ['plan    "Kitchen"', 'canvas  80 x 60 cm', ...objects, ...lines].join('\n');
}

function sitting(title: string, day: string | undefined, ...lines: readonly string[]): string {
  return [
    `sitting "${title}"${day === undefined ? '' : ` on 2027-${day}`}`,
    ...lines.map((line) => `  ${line}`),
  ].join('\n');
}

function found(rule: string, ...lines: readonly string[]): readonly Finding[] {
  return standing(checked(studio(...lines)).findings).filter((finding) => finding.rule === rule);
}

function messages(rule: string, ...lines: readonly string[]): readonly string[] {
  return found(rule, ...lines).map(({ message }) => message);
}

const ALL = `works ${THINGS.join(', ')}`;

describe('over wet paint', () => {
  const rule = 'over wet paint';
  const twice = [sitting('One', '03-01', ALL), sitting('Two', '03-04', ALL)];

  it('is told once for two sittings, with four of the objects named', () => {
    expect(messages(rule, ...twice)).toEqual([
      '“Two” on 4 March 2027 goes over “One”, which is not dry to the touch before 6 March 2027, two days later: on `wall`, `jug`, `cloth`, `pear` and two more. The plan has no palette, so a usual paint is counted: five days in a film of 0.15 mm.',
    ]);
  });

  it('is set aside for one object and still told of the others', () => {
    const aside = 'allow   over wet paint for jug because "wet in wet"';
    expect(messages(rule, ...twice, aside)).toEqual([
      expect.stringContaining('on `wall`, `cloth`, `pear`, `knife` and one more'),
    ]);
  });

  it('names the slowest paint and whose figure it is', () => {
    const glazed = studio(
      'palette',
      '  paint   white PW6',
      '  paint   magenta PR122',
      sitting('One', '03-01', 'works jug'),
      sitting('Two', '03-04', 'works jug'),
    ).replace('object  jug', 'object  jug\n  colour  #63303b');
    const [finding] = standing(checked(glazed).findings).filter((one) => one.rule === rule);
    // Quinacridones take more than 5 days by the guide, for which 12 count: 1 March and 12 days is the 13th.
    expect(finding?.message).toBe(
      '“Two” on 4 March 2027 goes over “One”, which is not dry to the touch before 13 March 2027, nine days later: on `jug`. `magenta` in it takes twelve days in 0.15 mm by a maker’s drying guide.',
    );
  });

  it('moves the sitting and those after it, past days that are taken', () => {
    const text = studio(...twice, sitting('Three', '03-12', 'works jug'), 'away    2027-03-06 to 2027-03-07');
    const [finding] = checked(text).findings.filter((one) => one.rule === rule);
    expect(finding?.advice).toBe('Hold it on 8 March 2027 or later, and the sitting after it as much later.');
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(after).toBe(text.replace('2027-03-04', '2027-03-08').replace('2027-03-12', '2027-03-16'));
  });

  it('asks for a thinner film or alkyd where there is no time before the due date', () => {
    const late = (second: string, due: string) =>
      found(
        rule,
        sitting('One', '03-01', 'works jug'),
        sitting('Two', second, 'works jug', 'layer detail'),
        `due     2027-${due}`,
      )[0];
    // Three days for a paint that takes 5 in 0.15 mm: a film of 0.15 x 3 / 5 = 0.09.
    expect(late('03-04', '03-08')).toMatchObject({
      advice:
        'Put off to 6 March 2027 it would be late for the due date, 8 March 2027. Lay “One” no thicker than 0.09 mm, `film 0.09 mm`.',
      fix: undefined,
    });
    // From the 6th three days of drying end on the 9th.
    expect(late('03-04', '03-09')?.fix?.title).toBe('Move “Two” to 6 March 2027');
    // Nothing dries on the same day.
    expect(late('03-01', '03-06')?.advice).toContain('Leave `jug` to one of the two sittings');
  });

  it('asks for alkyd where no film is thin enough', () => {
    const one = studio(
      'palette',
      '  paint   magenta PR122',
      sitting('One', '03-01', 'works jug'),
      sitting('Two', '03-02', 'works jug'),
      'due     2027-03-14',
    ).replace('object  jug', 'object  jug\n  colour  #63303b');
    const [finding] = checked(one).findings.filter((each) => each.rule === rule);
    expect(finding?.advice).toContain(
      'Lay “One” with an alkyd medium, which dries in a day: `medium alkyd`.',
    );
    const dry = one.replace('works jug', 'works jug\n  medium alkyd');
    expect(checked(dry).findings.filter((each) => each.rule === rule)).toEqual([]);
  });
});

describe('varnish too soon', () => {
  it('is told once for a varnish over everything', () => {
    const told = found(
      'varnish too soon',
      sitting('One', '01-04', 'works wall, jug'),
      sitting('Two', '02-01', 'works cloth'),
      sitting('Varnish', '05-01', 'layer varnish'),
    );
    expect(told.map(({ message }) => message)).toEqual([
      '“Varnish” on 1 May 2027 comes 92 days too soon for `wall`, `jug` and `cloth`: a final varnish waits six months for oil paint, and the last of it is laid in “Two” on 1 February 2027, so until 1 August 2027.',
    ]);
    expect(told[0]?.severity).toBe('warning');
  });

  it('of a retouch varnish waits for dry paint alone', () => {
    expect(
      messages(
        'varnish too soon',
        sitting('One', '03-01', 'works jug'),
        sitting('Shine', '03-05', 'layer varnish', 'task "retouch varnish"'),
      ),
    ).toEqual([
      expect.stringMatching(
        /^“Shine” on 5 March 2027 comes one day too soon for `jug`: it waits until “One” is dry to the touch, on 6 March 2027\./,
      ),
    ]);
  });
});

describe('lean over fat', () => {
  const rule = 'lean over fat';

  it('says what is the plan’s own and what is usual', () => {
    const under = sitting('Under', '03-01', 'works jug', 'fat 15%');
    expect(messages(rule, under, sitting('Over', '03-20', 'works jug', 'layer block-in, lean'))).toEqual([
      '“Over” goes leaner over “Under” on `jug`: 5 % of added oil or medium over 15 %. 5 % is usual of a lean block-in.',
    ]);
  });

  it('makes the upper layer as fat, or the lower as lean where others come after', () => {
    const plan = (...more: readonly string[]) =>
      studio(
        sitting('One', '03-01', 'works jug', 'fat 15%'),
        sitting('Two', '03-20', 'works jug', 'fat 5%'),
        ...more,
      );
    const fixed = (text: string) => {
      const [finding] = checked(text).findings.filter((each) => each.rule === rule);
      return mended(text, finding?.fix ?? { edits: [] });
    };
    expect(fixed(plan())).toContain('sitting "Two" on 2027-03-20\n  works jug\n  fat     15%');
    const third = sitting('Three', '04-20', 'works jug', 'fat 10%');
    const after = fixed(plan(third));
    expect(after).toContain('sitting "One" on 2027-03-01\n  works jug\n  fat     5%');
    expect(checked(after).findings.filter((each) => each.rule === rule)).toEqual([]);
  });
});

describe('never worked', () => {
  const rule = 'never worked';

  it('is told of what no sitting paints, and put into the first that paints', () => {
    const text = studio(
      sitting('Tone', '02-01', 'layer imprimatura'),
      sitting('One', '03-01', `works ${THINGS.slice(1).join(', ')}`),
    );
    const [finding, ...others] = checked(text).findings.filter((each) => each.rule === rule);
    expect(others).toEqual([]);
    expect(finding?.message).toBe('`wall` is 1.3 % of the picture, and no sitting paints it.');
    expect(mended(text, finding?.fix ?? { edits: [] })).toContain(
      'works jug, cloth, pear, knife, bowl, wall\n'.trimEnd(),
    );
  });

  it('is not asked of a plan whose sittings name nothing, or where a line of one is lost', () => {
    expect(found(rule, sitting('One', '03-01', 'task "paint"'))).toEqual([]);
    expect(found(rule, sitting('One', '03-01', 'works jug'), sitting('Two', '03-20', 'works walll'))).toEqual(
      [],
    );
  });
});

describe('days', () => {
  it('that are taken are left for the next free one, or where that is too late for the one before', () => {
    const taken = (due: string) =>
      found(
        'day taken',
        sitting('One', '03-01', 'works jug', 'layer block-in'),
        sitting('Two', '03-10', 'works jug'),
        'away    2027-03-10 to 2027-03-13',
        `due     2027-${due}`,
      )[0];
    expect(taken('03-19')).toMatchObject({
      message: '“Two” on 10 March 2027 is on a day that is taken: 10 March 2027 to 13 March 2027.',
      fix: { title: 'Move “Two” to 14 March 2027' },
    });
    // Five days from the 14th end on the 19th.
    expect(taken('03-18')).toMatchObject({ fix: { title: 'Move “Two” to 9 March 2027' } });
  });

  it('that are past the due date become the latest ones, of every sitting that is late', () => {
    const text = studio(
      sitting('One', '03-01', 'works jug', 'layer block-in'),
      sitting('Two', '03-15', 'works jug'),
      sitting('Three', '03-20', 'works jug', 'layer detail'),
      'due     2027-03-20',
    );
    const [finding] = checked(text).findings.filter(({ rule }) => rule === 'past the due date');
    // Detail takes 3 days: by the 17th. Body colour 5: by the 12th. The block-in has time until the 9th.
    expect(finding).toMatchObject({
      severity: 'warning',
      advice:
        'Hold “Two” on 12 March 2027 and “Three” on 17 March 2027 at the latest; or lay thinner films, or use an alkyd medium.',
    });
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(after).toBe(text.replace('2027-03-15', '2027-03-12').replace('2027-03-20', '2027-03-17'));
    expect(
      standing(checked(after).findings).filter(
        ({ rule }) => rule === 'past the due date' || rule === 'over wet paint',
      ),
    ).toEqual([]);
  });

  it('of sittings with nothing to dry are late from the day after the due date on', () => {
    const late = (day: string) =>
      messages('past the due date', sitting('Frame', day, 'task "frame it"'), 'due     2027-03-20');
    expect(late('03-20')).toEqual([]);
    expect(late('03-21')).toEqual([
      'The picture must be ready on 20 March 2027, and “Frame” is only on 21 March 2027: one day late.',
    ]);
  });

  it('are missing only where others have one, and are found between them', () => {
    const rule = 'sitting without a day';
    expect(
      found(rule, sitting('One', undefined, 'works jug'), sitting('Two', undefined, 'works jug')),
    ).toEqual([]);
    const between = (day: string) =>
      found(
        rule,
        sitting('One', '03-01', 'works jug'),
        sitting('Two', undefined, 'works jug'),
        sitting('Three', day, 'works jug'),
      )[0];
    // From the 6th to the 11th: two coats of body colour, five days each.
    expect(between('03-11')?.fix?.title).toBe('Hold “Two” on 6 March 2027');
    expect(between('03-10')).toMatchObject({
      advice:
        'Give it one; it goes over nothing wet from 6 March 2027 on, but what comes after it has to be put off then.',
      fix: undefined,
    });
    const before = found(
      rule,
      sitting('Zero', undefined, 'works jug'),
      sitting('One', '03-11', 'works jug'),
    )[0];
    expect(before?.fix?.title).toBe('Hold “Zero” on 6 March 2027');
  });

  it('out of order are told at the sitting that stands too low', () => {
    expect(
      messages(
        'sittings out of order',
        sitting('One', '03-01', 'works jug'),
        sitting('Two', '02-01', 'works wall'),
        sitting('Three', '03-02', 'works wall'),
      ),
    ).toEqual(['“Two” on 1 February 2027 stands behind “One” on 1 March 2027, and comes before it.']);
  });
});
