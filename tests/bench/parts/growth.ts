import { parse } from '../../../grammar/index.js';
import { compose } from '../../../server/drawing/compose.js';
import { check } from '../../../server/findings/check.js';
import { measure } from '../../../server/measure/measure.js';
import { resolvePlan } from '../../../server/plan/resolve.js';
import { linesAround, planOf } from '../documents/plan.js';
import { growthOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { inTurn } from '../rounds.js';
import { stopwatch, type Taken } from '../taken.js';

const stages = ['parse and resolve', 'measure', 'check', 'draw', 'all of it'] as const;
type Stage = (typeof stages)[number];

/** What each stage costs as a plan grows, where as many objects overlap each other in the large as in the small. */
export async function measureGrowth({ rounds, quick }: Options): Promise<Finding> {
  const sizes = quick ? [20, 40] : [100, 200, 500, 1_000, 2_000];
  const samples = new Map(
    stages.map((stage) => [stage, new Map(sizes.map((size) => [size, [] as Taken[]]))]),
  );
  const sample = (size: number, seed: number): Taken => {
    const taken = computed(planOf(size * 5 + linesAround, size, seed).text);
    for (const [stage, time] of taken) samples.get(stage)?.get(size)?.push(time);
    return taken.get('all of it') ?? { elapsed: NaN, worked: NaN };
  };
  // What is computed first is compiled while it is.
  const most = sizes.at(-1) ?? 0;
  for (let seed = 1; seed <= (quick ? 1 : 3); seed += 1)
    computed(planOf(most * 5 + linesAround, most, seed).text);
  await inTurn(
    sizes.map((size) => ({ name: String(size), sample: (round) => sample(size, round + 1) })),
    quick ? rounds : Math.max(3, Math.round(rounds / 3)),
  );
  const spreads = stages.map((stage) => ({
    stage,
    bySize: sizes.map((size) => spreadOf((samples.get(stage)?.get(size) ?? []).map(({ worked }) => worked))),
  }));
  const growth = spreads.map(({ stage, bySize }) => ({
    stage,
    bySize,
    ...growthOf(
      sizes,
      bySize.map(({ median }) => median),
    ),
  }));
  const data = Object.fromEntries([...samples].map(([stage, of]) => [stage, Object.fromEntries(of)]));
  return {
    part: 'growth',
    data: { samples: data, growth },
    tables: [
      {
        title: 'Growth: milliseconds worked on a full computation at constant overlap',
        columns: ['stage', ...sizes.map((size) => `${size} objects`), 'exponent', 'n log n has'],
        rows: growth.map(({ stage, bySize, exponent, ofNLogN }) => [
          stage,
          ...bySize.map((spread) => written(spread)),
          exponent.toFixed(2),
          ofNLogN.toFixed(2),
        ]),
        notes: [
          'The exponent is of the power of the number of objects, fitted to the medians by least squares.',
        ],
      },
    ],
  };
}

function computed(text: string): ReadonlyMap<Stage, Taken> {
  const taken = stopwatch();
  const times: Taken[] = [{ elapsed: 0, worked: 0 }];
  const next = <T>(result: T): T => {
    times.push(taken());
    return result;
  };
  const plan = next(resolvePlan(parse(text)));
  const measures = next(measure(plan));
  const findings = next(check(plan, measures));
  next(compose(plan, measures, findings, 'drawing'));
  const between = (from: number, to: number, how: keyof Taken): number =>
    (times[to]?.[how] ?? NaN) - (times[from]?.[how] ?? NaN);
  return new Map(
    stages.map((stage, index) => {
      const [from, to] = index < 4 ? [index, index + 1] : [0, 4];
      return [stage, { elapsed: between(from, to, 'elapsed'), worked: between(from, to, 'worked') }];
    }),
  );
}
