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
type Stages = Readonly<Record<Stage, Taken>>;

/**
 * Objects of all the plans of a sample together, at least, so that small plans are sampled for about as long as large
 * ones.
 */
const SAMPLE_OBJECTS = 1_000;
/** Plans of a sample at least, as by chance some have a tone in one piece, which takes longer, and others have not. */
const SAMPLE_PLANS = 2;
/**
 * Objects of all the plans of a size that are computed before anything counts, as what is computed first is compiled.
 */
const WARMING_OBJECTS = 2_000;

/** What each stage costs as a plan grows, where as many objects overlap each other in the large as in the small. */
export async function measureGrowth({ rounds, quick }: Options): Promise<Finding> {
  const sizes = quick ? [20, 40] : [100, 200, 500, 1_000, 2_000];
  const ofSample = (size: number): number =>
    quick ? 1 : Math.max(SAMPLE_PLANS, Math.ceil(SAMPLE_OBJECTS / size));
  const ofWarming = (size: number): number => (quick ? 1 : Math.ceil(WARMING_OBJECTS / size));
  const samples = new Map(sizes.map((size): [number, Stages[]] => [size, []]));
  for (const size of sizes) computed(size, ofWarming(size), 0);
  await inTurn(
    sizes.map((size) => ({
      name: String(size),
      sample: (round) => {
        const taken = computed(size, ofSample(size), round + 1);
        samples.get(size)?.push(taken);
        return taken['all of it'];
      },
    })),
    quick ? rounds : Math.max(3, Math.round(rounds / 3)),
  );
  const growth = stages.map((stage) => {
    const bySize = sizes.map((size) => (samples.get(size) ?? []).map((taken) => taken[stage].worked));
    const medians = bySize.map((times) => spreadOf(times).median);
    const ofRounds = (bySize[0] ?? []).map((_, round) =>
      growthOf(
        sizes,
        bySize.map((times) => times[round] ?? NaN),
      ),
    );
    return {
      stage,
      bySize: bySize.map(spreadOf),
      ...growthOf(sizes, medians),
      exponents: spreadOf(ofRounds.map(({ exponent }) => exponent)),
    };
  });
  return {
    part: 'growth',
    data: { samples: Object.fromEntries(samples), growth },
    tables: [
      {
        title: 'Growth: milliseconds worked on a full computation at constant overlap',
        columns: [
          'stage',
          ...sizes.map((size) => `${size} objects`),
          'exponent',
          'n log n has',
          'off n',
          'off n log n',
        ],
        rows: growth.map(({ stage, bySize, exponent, exponents, ofNLogN, offN, offNLogN }) => [
          stage,
          ...bySize.map((spread) => written(spread)),
          written({ ...exponents, median: exponent }, 2),
          ofNLogN.toFixed(2),
          percent(offN),
          percent(offNLogN),
        ]),
        notes: [
          'The exponent is of the power of the number of objects n, fitted to the medians by least squares, with the quartiles of those of each round; the last two columns tell how far the medians lie from the nearest multiple of n and of n log n, in the mean of squares.',
          `A sample is the mean of ${sizes.map(ofSample).join(', ')} plans from the smallest size to the largest. Before anything counts, ${sizes.map((size) => `${ofWarming(size)} plans of ${size}`).join(', ')} objects are computed.`,
        ],
      },
    ],
  };
}

function percent(part: number): string {
  if (!Number.isFinite(part)) return '';
  return `${(100 * part).toFixed(0)} %`;
}

/** The mean of so many plans of a size, computed from scratch one after the other; each seed gives others. */
function computed(size: number, plans: number, seed: number): Stages {
  const texts = Array.from(
    { length: plans },
    (_, index) => planOf(size * 5 + linesAround, size, seed * plans + index + 1).text,
  );
  // What the sample before has left is no part of this one.
  globalThis.gc?.();
  const all = texts.map(stagesOf);
  const meanOf = (stage: Stage, how: keyof Taken): number =>
    all.reduce((sum, taken) => sum + taken[stage][how], 0) / plans;
  return recordOf((stage) => ({ elapsed: meanOf(stage, 'elapsed'), worked: meanOf(stage, 'worked') }));
}

function stagesOf(text: string): Stages {
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
  return recordOf((stage) => {
    const index = stages.indexOf(stage);
    const [from, to] = stage === 'all of it' ? [0, 4] : [index, index + 1];
    return { elapsed: between(from, to, 'elapsed'), worked: between(from, to, 'worked') };
  });
}

function recordOf(of: (stage: Stage) => Taken): Stages {
  return Object.fromEntries(stages.map((stage) => [stage, of(stage)])) as Stages;
}
