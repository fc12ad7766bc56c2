import { describe, expect, it } from 'vitest';
import { checked, planOf } from '../../../tests/support/plan.js';
import { isoOf } from './days.js';
import {
  mixedFrom,
  scheduled,
  scheduleOf,
  sitting,
  studio,
  unmixed,
} from '../../../tests/support/schedules.js';

function iso(day: number | undefined): string | undefined {
  return day === undefined ? undefined : isoOf(day);
}

describe('the order of sittings', () => {
  it('is that of their days, and those of one day or without one stay as the text has them', () => {
    const { sittings } = scheduleOf(
      sitting('third', '2027-02-10', 'works jug'),
      sitting('after third', undefined, 'works jug'),
      sitting('first', '2027-01-04', 'works jug'),
      sitting('second', '2027-01-09', 'works wall'),
      sitting('also second', '2027-01-09', 'works jug'),
    );
    expect(sittings.map(({ sitting: index }) => index)).toEqual([2, 3, 4, 0, 1]);
  });

  it('of sittings without any day is that of the text', () => {
    const { sittings, dryOn } = scheduleOf(
      sitting('a', undefined, 'works jug'),
      sitting('b', undefined, 'works jug'),
    );
    expect(sittings.map(({ sitting: index }) => index)).toEqual([0, 1]);
    expect(dryOn).toBeUndefined();
  });
});

describe('the coats of an object', () => {
  it('are what its sittings lay, an object that is named twice getting one', () => {
    const { objects } = scheduleOf(
      sitting('Block in', '2027-01-04', 'works wall, jug', 'layer block-in'),
      sitting('Paint', '2027-01-11', 'works jug, jug'),
    );
    expect(objects.map(({ coats }) => coats.map(({ layer }) => layer))).toEqual([
      ['block-in'],
      ['block-in', 'body colour'],
    ]);
  });

  it('of a toned ground and of a varnish that name nothing go over everything', () => {
    const { objects, sittings } = scheduleOf(
      sitting('Tone', '2027-01-04', 'layer imprimatura'),
      sitting('Paint', '2027-01-11', 'works jug'),
      sitting('Varnish', '2027-08-01', 'layer varnish'),
    );
    expect(objects.map(({ coats }) => coats.map(({ layer }) => layer))).toEqual([
      ['imprimatura', 'varnish'],
      ['imprimatura', 'body colour', 'varnish'],
    ]);
    expect(sittings.map(({ isIdle }) => isIdle)).toEqual([false, false, false]);
  });
});

describe('what a sitting leaves', () => {
  it('dries by its film: without a palette five days in a film of 0.15 mm', () => {
    // 5 x 0.06 / 0.15 = 2; 5 x 0.3 / 0.15 = 10; body colour is taken to be 0.15 mm, a block-in 0.6 of that: 3.
    const { sittings } = scheduleOf(
      sitting('thin', '2027-01-04', 'works jug', 'film 0.06 mm'),
      sitting('thick', '2027-02-01', 'works jug', 'film 0.3 mm'),
      sitting('usual', '2027-03-01', 'works jug'),
      sitting('block-in', '2027-04-01', 'works jug', 'layer block-in'),
    );
    expect(sittings.map(({ dryOn }) => iso(dryOn))).toEqual([
      '2027-01-06',
      '2027-02-11',
      '2027-03-06',
      '2027-04-04',
    ]);
  });

  it('is found idle when it works on nothing and nothing is to be done', () => {
    const { sittings } = scheduleOf(
      sitting('Look', '2027-01-04'),
      sitting('Frame', '2027-01-05', 'task "cut the slips"'),
      sitting('Paint', '2027-01-06', 'works jug'),
    );
    expect(sittings.map(({ isIdle }) => isIdle)).toEqual([true, false, false]);
    expect(sittings.map(({ dryOn }) => dryOn === undefined)).toEqual([true, true, false]);
  });

  it('falls on a day that is taken', () => {
    const { sittings } = scheduleOf(
      sitting('a', '2027-01-24', 'works jug'),
      sitting('b', '2027-01-25', 'works jug'),
      sitting('c', '2027-01-29', 'works jug'),
      sitting('d', '2027-01-30', 'works jug'),
      'away 2027-03-01',
      'away 2027-01-25 to 2027-01-29',
    );
    expect(sittings.map(({ away }) => away)).toEqual([undefined, 1, 1, undefined]);
  });
});

describe('drying between layers', () => {
  it('goes by the slowest paint in the mixture of the object', () => {
    const plan = planOf(
      studio(
        'palette',
        '  paint   white PW1',
        '  paint   crimson PR83',
        '  paint   raw-umber PBr7',
        sitting('First', '2027-01-04', 'works wall, jug'),
        sitting('Second', '2027-01-11', 'works wall, jug'),
      ),
    );
    const schedule = scheduled(
      plan,
      mixedFrom(plan, { objects: { wall: ['raw-umber', 'white'], jug: ['white', 'crimson'] } }),
    );
    // By the maker’s guide alizarin takes more than 5 days, for which 12 count, and lead white and umber 2.
    expect(schedule.objects[1]?.coats[0]).toMatchObject({
      days: 12,
      restsOn: 'paint',
      slowest: { paint: 1, days: 12, source: 'maker’s drying guide' },
    });
    expect(schedule.objects[0]?.coats[0]).toMatchObject({ days: 2 });
    expect(schedule.conflicts).toMatchObject([
      // 4 January and 12 days: the 16th, 5 days after the second sitting.
      { kind: 'not dry', object: 1, below: 0, above: 1, missing: 5 },
    ]);
    expect(iso(schedule.conflicts[0]?.from)).toBe('2027-01-16');
  });

  it('says nothing while mixtures are being worked out, and knows the rest', () => {
    const plan = planOf(
      studio(
        'palette',
        '  paint   white PW6',
        sitting('First', '2027-01-04', 'works jug', 'fat 20%'),
        sitting('Second', '2027-01-05', 'works jug', 'fat 10%'),
        'due 2027-01-06',
      ),
    );
    const schedule = scheduled(plan, unmixed(plan));
    expect(schedule.isSettled).toBe(false);
    expect(schedule.due).not.toHaveProperty('latestStart');
    expect(schedule.dryOn).toBeUndefined();
    expect(schedule.conflicts).toMatchObject([{ kind: 'leaner over fatter', fat: [0.2, 0.1] }]);
  });

  it('does not wait for mixtures where paint dries whatever is in it', () => {
    const plan = planOf(
      `${studio('palette', '  paint   white PW6', sitting('One', '2027-01-04', 'works jug'))}`.replace(
        'object  wall',
        '  medium  acrylic\nobject  wall',
      ),
    );
    const { isSettled, dryOn } = scheduled(plan, unmixed(plan));
    expect([isSettled, iso(dryOn)]).toEqual([true, '2027-01-04']);
  });
});

describe('the due date', () => {
  const lines = [
    sitting('Block in', '2027-01-04', 'works wall, jug', 'layer block-in'),
    sitting('Paint', '2027-01-11', 'works wall, jug'),
    sitting('Finish', '2027-01-20', 'works jug', 'layer detail'),
    'due 2027-02-01',
  ];

  it('is worked back from, through what has to dry', () => {
    // Detail takes 5 x 0.6 = 3 days: 29 January. Body colour 5: the 24th. The block-in 3: the 21st.
    const { sittings, due } = scheduleOf(...lines);
    expect(sittings.map(({ latest, slack }) => [iso(latest), slack])).toEqual([
      ['2027-01-21', 17],
      ['2027-01-24', 13],
      ['2027-01-29', 9],
    ]);
    expect(iso(due?.latestStart)).toBe('2027-01-21');
    expect(due).toMatchObject({ slack: 17 });
    expect(iso(due?.readyOn)).toBe('2027-01-23');
  });

  it('leaves less when days are taken', () => {
    // 29 January is taken, so the last is held by the 27th, body colour by the 22nd, the block-in by the 19th.
    const { sittings } = scheduleOf(...lines, 'away 2027-01-28 to 2027-01-30');
    expect(sittings.map(({ latest }) => iso(latest))).toEqual(['2027-01-19', '2027-01-22', '2027-01-27']);
  });

  it('is too near when even the latest days lie in front of those planned', () => {
    const { due } = scheduleOf(...lines.slice(0, 3), 'due 2027-01-10');
    // Finish by the 7th, paint by the 2nd, block in by 30 December.
    expect(iso(due?.latestStart)).toBe('2026-12-30');
    expect(due?.slack).toBe(-5);
  });

  it('of a plan with a final varnish lies half a year behind the last paint', () => {
    // A varnish dries in a day: 31 August. Half a year before is the last of February.
    const { sittings } = scheduleOf(
      sitting('Paint', '2027-01-11', 'works jug'),
      sitting('Varnish', '2027-08-15', 'layer varnish'),
      'due 2027-09-01',
    );
    expect(sittings.map(({ latest }) => iso(latest))).toEqual(['2027-02-28', '2027-08-31']);
  });
});

describe('what is never worked', () => {
  it('is what is seen and only toned or varnished', () => {
    const { neverWorked } = scheduleOf(
      sitting('Tone', '2027-01-04', 'layer imprimatura'),
      sitting('Paint', '2027-01-11', 'works wall'),
    );
    expect(neverWorked).toEqual([1]);
  });

  it('is nothing that nothing is seen of', () => {
    const { measures } = checked(
      `${studio(sitting('Paint', '2027-01-11', 'works wall'))}\nobject  screen\n  shape   rectangle upper left corner to lower right corner`,
    );
    // The screen hides wall and jug.
    expect(measures.schedule?.neverWorked).toEqual([2]);
  });
});

it('is missing from a plan without sittings', () => {
  expect(checked(studio('due 2027-01-01')).measures.schedule).toBeUndefined();
});
