import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Layer, layers } from '../../../grammar/index.js';
import { planOf } from '../../../tests/support/plan.js';
import { dayOf, isoOf } from './days.js';
import type { LayerConflict, ScheduleMeasure } from './schedule.js';
import { scheduled, sitting, studio } from '../../../tests/support/schedules.js';

interface Session {
  /** Days after the first of 2027. */
  readonly after: number;
  readonly layer: Layer;
  readonly film: number;
  readonly fat: number;
  readonly works: readonly ('wall' | 'jug')[];
  readonly medium: string;
}

interface Stretch {
  readonly from: number;
  readonly days: number;
}

/** Those that paint objects. */
const painted: readonly Layer[] = layers.filter((layer) => layer !== 'imprimatura');

const session: fc.Arbitrary<Session> = fc.record({
  after: fc.integer({ min: 0, max: 400 }),
  layer: fc.constantFrom(...painted),
  film: fc.constantFrom(0.03, 0.1, 0.15, 0.4),
  fat: fc.constantFrom(0, 5, 10, 30),
  works: fc.constantFrom<readonly ('wall' | 'jug')[]>(['wall'], ['jug'], ['wall', 'jug']),
  medium: fc.constantFrom('linseed oil', 'alkyd', 'acrylic'),
});

/** Each on a day of its own. */
const sessions = fc.uniqueArray(session, { minLength: 1, maxLength: 8, selector: ({ after }) => after });
const stretches = fc.array(
  fc.record({ from: fc.integer({ min: 0, max: 400 }), days: fc.integer({ min: 0, max: 20 }) }),
  {
    maxLength: 4,
  },
);
const dueAfter = fc.integer({ min: 0, max: 900 });

const START = dayOf('2027-01-01') ?? 0;

function schedule(
  all: readonly (Session & { readonly title?: string })[],
  { due, away = [] }: { readonly due?: number; readonly away?: readonly Stretch[] } = {},
): ScheduleMeasure {
  const day = (after: number): string => isoOf(START + after);
  return scheduled(
    planOf(
      studio(
        ...all.map(({ after, layer, film, fat, works, medium, title }, index) =>
          sitting(
            title ?? `${index}`,
            day(after),
            `works ${works.join(', ')}`,
            `layer ${layer}`,
            `film ${film} mm`,
            `fat ${fat}%`,
            `medium ${medium}`,
          ),
        ),
        ...(due === undefined ? [] : [`due ${day(due)}`]),
        ...away.map(({ from, days }) => `away ${day(from)} to ${day(from + days)}`),
      ),
    ),
  );
}

/** Conflicts that time mends. */
function waiting({ conflicts }: ScheduleMeasure): readonly LayerConflict[] {
  return conflicts.filter(({ from }) => from !== undefined);
}

function latestOf({ sittings }: ScheduleMeasure): ReadonlyMap<number, number> {
  return new Map(
    sittings.flatMap(({ sitting: index, latest }) => (latest === undefined ? [] : [[index, latest]])),
  );
}

const RUNS = { numRuns: 150 };

describe('a schedule', () => {
  it('finds nothing new wet when the last sitting is put off', () => {
    fc.assert(
      fc.property(sessions, fc.integer({ min: 1, max: 300 }), (all, days) => {
        const inOrder = all.toSorted((one, other) => one.after - other.after);
        const later = inOrder.map((one, i) =>
          i === all.length - 1 ? { ...one, after: one.after + days } : one,
        );
        const before = waiting(schedule(inOrder)).map(
          ({ object, below, above }) => `${object} ${below} ${above}`,
        );
        for (const { object, below, above } of waiting(schedule(later))) {
          expect(before).toContain(`${object} ${below} ${above}`);
        }
      }),
      RUNS,
    );
  });

  it('finds nothing wet any more on the first day that it gives', () => {
    fc.assert(
      fc.property(sessions, stretches, (all, away) => {
        const inOrder = all.toSorted((one, other) => one.after - other.after);
        const last = inOrder.length - 1;
        const own = (found: ScheduleMeasure) => waiting(found).filter(({ above }) => above === last);
        const from = Math.max(...own(schedule(inOrder, { away })).map((conflict) => conflict.from ?? 0));
        if (from === -Infinity) return;
        const moved = inOrder.map((one, i) => (i === last ? { ...one, after: from - START } : one));
        expect(own(schedule(moved, { away }))).toEqual([]);
        expect(schedule(moved, { away }).sittings.at(-1)?.away).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('is the same in whatever order the sittings are written', () => {
    fc.assert(
      fc.property(
        sessions.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
        ),
        dueAfter,
        (orders, due) => {
          const [one, other] = orders.map((all) => {
            const titled = all.map((each) => ({ ...each, title: `day ${each.after}` }));
            const found = schedule(titled, { due });
            const titleOf = (index: number): string => titled[index]?.title ?? '';
            return {
              sittings: found.sittings.map((each) => ({ ...each, sitting: titleOf(each.sitting) })),
              conflicts: found.conflicts
                .map((each) => ({ ...each, below: titleOf(each.below), above: titleOf(each.above) }))
                .map((each) => JSON.stringify(each))
                .sort(),
              due: found.due,
              dryOn: found.dryOn,
            };
          });
          expect(other).toEqual(one);
        },
      ),
      RUNS,
    );
  });

  it('leaves no less time when the due date is put off', () => {
    fc.assert(
      fc.property(sessions, stretches, dueAfter, fc.integer({ min: 1, max: 60 }), (all, away, due, more) => {
        const later = latestOf(schedule(all, { due: due + more, away }));
        for (const [index, latest] of latestOf(schedule(all, { due, away }))) {
          expect(later.get(index)).toBeGreaterThanOrEqual(latest);
        }
      }),
      RUNS,
    );
  });

  it('leaves no more time when days are taken', () => {
    fc.assert(
      fc.property(sessions, stretches, dueAfter, (all, away, due) => {
        const free = latestOf(schedule(all, { due }));
        for (const [index, latest] of latestOf(schedule(all, { due, away }))) {
          expect(free.get(index)).toBeGreaterThanOrEqual(latest);
        }
      }),
      RUNS,
    );
  });

  it('is sound and ready on the due date when every sitting is held on its latest day', () => {
    fc.assert(
      fc.property(sessions, stretches, dueAfter, (all, away, due) => {
        const inOrder = all.toSorted((one, other) => one.after - other.after);
        const latest = latestOf(schedule(inOrder, { due, away }));
        const held = inOrder.map((one, index) => ({ ...one, after: (latest.get(index) ?? 0) - START }));
        const found = schedule(held, { due, away });
        expect(waiting(found)).toEqual([]);
        expect(found.due?.readyOn).toBeLessThanOrEqual(START + due);
        expect(found.sittings.map((each) => each.sitting)).toEqual(inOrder.map((_, index) => index));
        expect(found.sittings.filter((each) => each.away !== undefined)).toEqual([]);
      }),
      RUNS,
    );
  });
});
