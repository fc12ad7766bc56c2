import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { dayOf, isoOf } from './days.js';
import { mixedFrom, scheduled, scheduleOf, sitting, studio } from '../../../tests/support/schedules.js';

/** Which conflicts there are, in words. */
function conflicts(...lines: readonly string[]): readonly string[] {
  return scheduleOf(...lines).conflicts.map(({ kind }) => kind);
}

/** A conflict of each kind that waits, with its first day and the days that are missing. */
function waits(...lines: readonly string[]) {
  return scheduleOf(...lines).conflicts.map(({ kind, from, missing }) => [
    kind,
    from === undefined ? undefined : isoOf(from),
    missing,
  ]);
}

describe('a layer over one that is wet', () => {
  const first = sitting('Paint', '2027-01-04', 'works jug');

  it('waits until the one below is dry to the touch, to the day', () => {
    // Body colour of 0.15 mm, without a palette: 5 days, so 9 January.
    expect(waits(first, sitting('Again', '2027-01-08', 'works jug'))).toEqual([['not dry', '2027-01-09', 1]]);
    expect(waits(first, sitting('Again', '2027-01-09', 'works jug'))).toEqual([]);
  });

  it('waits past the days that are taken', () => {
    const again = sitting('Again', '2027-01-08', 'works jug');
    expect(waits(first, again, 'away 2027-01-09 to 2027-01-12')).toEqual([['not dry', '2027-01-13', 1]]);
  });

  it('is found over the end of February in a leap year', () => {
    // 27 February and 5 days: 4 March in 2027, a day earlier in 2028.
    const over = (year: number, day: string) =>
      conflicts(
        sitting('Paint', `${year}-02-27`, 'works jug'),
        sitting('Again', `${year}-${day}`, 'works jug'),
      );
    expect([over(2027, '03-03'), over(2027, '03-04')]).toEqual([['not dry'], []]);
    expect([over(2028, '03-02'), over(2028, '03-03')]).toEqual([['not dry'], []]);
  });

  it('is one of the same object', () => {
    expect(waits(first, sitting('Wall', '2027-01-05', 'works wall'))).toEqual([]);
  });

  it('is painted wet in wet on the same day, which is told too', () => {
    expect(conflicts(first, sitting('Again', '2027-01-04', 'works jug'))).toEqual(['not dry']);
  });

  it('is looked for below a sitting without a day', () => {
    const between = sitting('Some day', undefined, 'works jug');
    expect(conflicts(first, between, sitting('Again', '2027-01-05', 'works jug'))).toEqual(['not dry']);
  });

  it('is no matter of paint that dries within the hour, and of alkyd after a day', () => {
    const next = (medium: string, date: string) =>
      conflicts(
        sitting('Paint', '2027-01-04', 'works jug', `medium ${medium}`),
        sitting('Again', date, 'works jug', `medium ${medium}`),
      );
    expect(next('acrylic', '2027-01-04')).toEqual([]);
    expect(next('egg tempera', '2027-01-04')).toEqual([]);
    expect(next('alkyd', '2027-01-04')).toEqual(['not dry']);
    expect(next('alkyd', '2027-01-05')).toEqual([]);
    expect(next('marmalade', '2027-01-08')).toEqual(['not dry']);
    expect(next('water-mixable oil', '2027-01-08')).toEqual(['not dry']);
  });

  it('is told as such when it is a glaze, which waits for the paint of the glaze when that is below', () => {
    const plan = planOf(
      studio(
        'palette',
        '  paint   white PW1',
        '  paint   rose PV19',
        sitting('Paint', '2027-01-04', 'works jug'),
        sitting('Glaze', '2027-01-05', 'works jug', 'layer glaze'),
        sitting('Glaze again', '2027-01-07', 'works jug', 'layer glaze'),
      ),
    );
    const palette = mixedFrom(plan, { objects: { jug: ['white'] }, glazes: { jug: ['rose'] } });
    const { conflicts: found, objects } = scheduled(plan, palette);
    // Lead white 2 days; quinacridone 12 in a film of a fifth, 2.4, so 3.
    expect(objects[1]?.coats.map(({ days }) => days)).toEqual([2, 3, 3]);
    expect(found).toMatchObject([
      { kind: 'glaze over wet', below: 0, above: 1, missing: 1 },
      { kind: 'glaze over wet', below: 1, above: 2, missing: 1 },
    ]);
  });
});

describe('a leaner layer over a fatter one', () => {
  const under = sitting('Under', '2027-01-04', 'works jug', 'fat 15%');
  const over = (...lines: readonly string[]) =>
    conflicts(under, sitting('Over', '2027-02-04', 'works jug', ...lines));

  it('is found by the shares that the plan gives', () => {
    expect([over('fat 10%'), over('fat 15%'), over('fat 20%')]).toEqual([['leaner over fatter'], [], []]);
  });

  it('is found by lean and fat, and by what is usual of the layer', () => {
    expect([over('layer body colour, lean'), over('layer detail, fat')]).toEqual([
      ['leaner over fatter'],
      [],
    ]);
    expect([over('layer block-in'), over('layer glaze')]).toEqual([['leaner over fatter'], []]);
  });

  it('is a matter of drying oils alone', () => {
    expect([over('medium acrylic', 'fat 0%'), over('layer varnish', 'task "retouch"')]).toEqual([[], []]);
  });

  it('is found without any date, in the order of the text', () => {
    expect(
      conflicts(
        sitting('Under', undefined, 'works jug', 'fat 15%'),
        sitting('Over', undefined, 'works jug', 'fat 10%'),
      ),
    ).toEqual(['leaner over fatter']);
  });

  it('does not come of a usual plan in the usual order', () => {
    const layers = ['imprimatura', 'underpainting', 'block-in', 'body colour', 'scumble', 'glaze', 'detail'];
    const day = (index: number) => isoOf((dayOf('2027-01-01') ?? 0) + 20 * index);
    expect(
      conflicts(...layers.map((layer, i) => sitting(layer, day(i), 'works jug', `layer ${layer}`))),
    ).toEqual([]);
    const leanFirst = layers.map((layer, i) =>
      sitting(layer, day(i), 'works jug', `layer ${layer}, ${i < 3 ? 'lean' : 'fat'}`),
    );
    expect(conflicts(...leanFirst)).toEqual([]);
  });
});

describe('paint that dries faster over paint that dries slower', () => {
  it('is found by the slowest paint of each', () => {
    const plan = planOf(
      studio(
        'palette',
        '  paint   rose PV19',
        '  paint   cobalt PB28',
        sitting('Paint', '2027-01-04', 'works jug'),
        sitting('Glaze', '2027-02-05', 'works jug', 'layer glaze'),
      ),
    );
    const between = (below: string, above: string) =>
      scheduled(plan, mixedFrom(plan, { objects: { jug: [below] }, glazes: { jug: [above] } })).conflicts;
    expect(between('rose', 'cobalt')).toMatchObject([{ kind: 'faster over slower', thinFilmDays: [12, 2] }]);
    expect(between('cobalt', 'rose')).toEqual([]);
    expect(between('rose', 'rose')).toEqual([]);
  });

  it('is let pass over a toned ground, in which nothing is left to move', () => {
    const plan = planOf(
      studio(
        'palette',
        '  paint   rose PV19',
        '  paint   cobalt PB28',
        sitting('Ground', '2027-01-04', 'works jug', 'layer imprimatura'),
        sitting('Paint', '2027-02-05', 'works jug'),
      ),
    );
    const measured = mixedFrom(plan, { objects: { jug: ['cobalt'] }, ground: ['rose'] });
    expect(scheduled(plan, measured).conflicts).toEqual([]);
  });

  it('is alkyd over oil, and not oil over alkyd', () => {
    const painted = (below: string, above: string) =>
      conflicts(
        sitting('Under', '2027-01-04', 'works jug', `medium ${below}`),
        sitting('Over', '2027-02-04', 'works jug', `medium ${above}`),
      );
    expect([painted('linseed oil', 'alkyd'), painted('alkyd', 'linseed oil')]).toEqual([
      ['faster over slower'],
      [],
    ]);
  });
});

describe('a varnish', () => {
  const oil = sitting('Paint', '2027-01-11', 'works jug');

  it('is laid half a year after the last oil paint', () => {
    const varnished = (date: string) => waits(oil, sitting('Varnish', date, 'layer varnish'));
    // 11 July is 181 days after 11 January.
    expect(varnished('2027-07-10')).toEqual([['varnish too soon', '2027-07-11', 1]]);
    expect(varnished('2027-07-11')).toEqual([]);
    expect(isoOf(scheduleOf(oil).varnishFrom ?? 0)).toBe('2027-07-11');
  });

  it('for retouching goes on as soon as all is dry to the touch', () => {
    const retouched = (date: string) =>
      waits(
        sitting('Thick', '2027-01-04', 'works jug', 'film 0.6 mm'),
        sitting('Thin', '2027-01-30', 'works jug', 'film 0.03 mm'),
        sitting('Retouch varnish', date, 'works jug', 'layer varnish'),
      );
    // 5 x 4 = 20 days: 24 January; the thin one takes 5 / 5 = 1 day: 31 January.
    expect(retouched('2027-01-30')).toEqual([['varnish too soon', '2027-01-31', 1]]);
    expect(retouched('2027-01-31')).toEqual([]);
  });

  it('waits for a thick layer below a thin one', () => {
    const found = scheduleOf(
      sitting('Thick', '2027-01-04', 'works jug', 'film 0.6 mm'),
      sitting('Thin', '2027-01-05', 'works jug', 'film 0.03 mm'),
      sitting('Gloss', '2027-01-20', 'works jug', 'layer varnish', 'task "retouching varnish, thinly"'),
    ).conflicts;
    expect(found).toMatchObject([
      { kind: 'not dry', below: 0, above: 1 },
      { kind: 'varnish too soon', below: 0, above: 2, missing: 4 },
    ]);
  });

  it('over acrylic waits until that is dry', () => {
    const acrylic = sitting('Paint', '2027-01-11', 'works jug', 'medium acrylic');
    expect(waits(acrylic, sitting('Varnish', '2027-01-12', 'works jug', 'layer varnish'))).toEqual([]);
    expect(isoOf(scheduleOf(acrylic).varnishFrom ?? 0)).toBe('2027-01-11');
  });
});
